using System.Reflection.Emit;
using System.Reflection.Metadata;

namespace ZoneControl.Logic.Tests;

/// <summary>One IL instruction; <paramref name="Token"/> where it names a method, field or type.</summary>
internal readonly record struct Instruction(OpCode Code, int? Token)
{
    private static readonly Dictionary<short, OpCode> _codes = typeof(OpCodes).GetFields()
        .Where(field => field.FieldType == typeof(OpCode))
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(code => code.Value);

    public static IReadOnlyList<Instruction> Read(BlobReader il)
    {
        var read = new List<Instruction>();
        while (il.RemainingBytes > 0)
        {
            byte first = il.ReadByte();
            OpCode code = _codes[first == 0xFE ? (short)(0xFE00 | il.ReadByte()) : first];
            read.Add(new Instruction(code, Operand(code.OperandType, ref il)));
        }

        return read;
    }

    /// <summary>Steps over the operand, whose length ECMA-335 partition III gives for each kind.</summary>
    private static int? Operand(OperandType kind, ref BlobReader il)
    {
        switch (kind)
        {
            case OperandType.InlineNone:
                return null;
            case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                il.ReadByte();
                return null;
            case OperandType.InlineVar:
                il.ReadInt16();
                return null;
            case OperandType.InlineI8 or OperandType.InlineR:
                il.ReadInt64();
                return null;
            case OperandType.InlineSwitch:
                il.Offset += 4 * il.ReadInt32();
                return null;
            case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                return il.ReadInt32();
            default:
                il.ReadInt32();
                return null;
        }
    }
}
