using System.Reflection.Emit;
using System.Reflection.Metadata;

namespace ZoneControl.Logic.Tests;

/// <summary>One IL instruction.</summary>
/// <param name="Code">What it does.</param>
/// <param name="Token">The method, field or type that it names, if it does.</param>
/// <param name="Offset">Where it stands in its method.</param>
/// <param name="Number">Its constant, its argument's or local's number, or the offset that it branches to.</param>
/// <param name="Targets">The offsets of a switch.</param>
internal readonly record struct Instruction(OpCode Code, int? Token, int Offset, long Number, int[]? Targets)
{
    private static readonly Dictionary<short, OpCode> _codes = typeof(OpCodes).GetFields()
        .Where(field => field.FieldType == typeof(OpCode))
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(code => code.Value);

    public string Name => Code.Name!;

    public static IReadOnlyList<Instruction> Read(BlobReader il)
    {
        var read = new List<Instruction>();
        while (il.RemainingBytes > 0)
        {
            int offset = il.Offset;
            byte first = il.ReadByte();
            OpCode code = _codes[first == 0xFE ? (short)(0xFE00 | il.ReadByte()) : first];
            read.Add(ReadOperand(code, offset, ref il));
        }

        return read;
    }

    /// <summary>Reads the operand, whose form ECMA-335 partition III gives for each kind.</summary>
    private static Instruction ReadOperand(OpCode code, int offset, ref BlobReader il)
    {
        switch (code.OperandType)
        {
            case OperandType.InlineNone:
                return new Instruction(code, null, offset, 0, null);
            case OperandType.ShortInlineBrTarget:
                int near = il.ReadSByte();
                return new Instruction(code, null, offset, il.Offset + near, null);
            case OperandType.InlineBrTarget:
                int far = il.ReadInt32();
                return new Instruction(code, null, offset, il.Offset + far, null);
            case OperandType.ShortInlineI:
                return new Instruction(code, null, offset, il.ReadSByte(), null);
            case OperandType.ShortInlineVar:
                return new Instruction(code, null, offset, il.ReadByte(), null);
            case OperandType.InlineVar:
                return new Instruction(code, null, offset, il.ReadUInt16(), null);
            case OperandType.InlineI8 or OperandType.InlineR:
                return new Instruction(code, null, offset, il.ReadInt64(), null);
            case OperandType.InlineSwitch:
                int[] targets = new int[il.ReadInt32()];
                for (int i = 0; i < targets.Length; i++)
                    targets[i] = il.ReadInt32();
                int end = il.Offset;
                return new Instruction(code, null, offset, 0, [.. targets.Select(target => target + end)]);
            case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                return new Instruction(code, il.ReadInt32(), offset, 0, null);
            default:
                return new Instruction(code, null, offset, il.ReadInt32(), null);
        }
    }
}
