using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace ZoneControl.Logic.Tests;

/// <summary>An instruction made ready to be carried out.</summary>
/// <param name="Name">What it does, without its operand's length or number.</param>
/// <param name="Number">Its constant, its argument's or local's number, or its target's place in the method.</param>
/// <param name="Token">What it names.</param>
/// <param name="Targets">Places that a switch goes to.</param>
/// <param name="Branches">It may go on elsewhere.</param>
internal readonly record struct IlStep(string Name, long Number, int Token, int[]? Targets, bool Branches);

/// <summary>A method made ready to be carried out.</summary>
/// <param name="Name">Type and name.</param>
/// <param name="Code">Its instructions.</param>
/// <param name="Arguments">How many it takes, the object itself included.</param>
/// <param name="Locals">How many locals it has.</param>
/// <param name="Returns">It leaves a value.</param>
internal sealed record IlMethod(string Name, IlStep[] Code, int Arguments, int Locals, bool Returns);

/// <summary>A compiled assembly's methods and fields by their tokens, and objects of its types for a machine to work on.</summary>
internal sealed class IlProgram
{
    private readonly LogicAssembly _assembly;
    private readonly Dictionary<int, IlMethod> _methods = [];
    private readonly Dictionary<int, int> _places = []; // of fields in their objects
    private readonly Dictionary<int, int> _sizes = []; // of objects by type

    public IlProgram(LogicAssembly assembly)
    {
        _assembly = assembly;
        foreach (TypeDefinitionHandle handle in assembly.Reader.TypeDefinitions)
        {
            int size = 0;
            foreach (FieldDefinitionHandle field in assembly.Reader.GetTypeDefinition(handle).GetFields())
                _places[MetadataTokens.GetToken(field)] = size++;
            _sizes[MetadataTokens.GetToken(handle)] = size;
        }
    }

    public int PlaceOf(int field) => _places[field];

    public IlMethod Method(int token)
    {
        if (!_methods.TryGetValue(token, out IlMethod? method))
            _methods[token] = method = Prepare((MethodDefinitionHandle)MetadataTokens.EntityHandle(token));
        return method;
    }

    /// <summary>The token of a method, by type and name.</summary>
    public int Find(string name) =>
        MetadataTokens.GetToken(_assembly.Methods.Single(method => _assembly.NameOf(method) == name));

    /// <summary>A method of the core library: of all those only constructors of plain objects are called.</summary>
    public static bool IsOutside(int token) => MetadataTokens.EntityHandle(token).Kind == HandleKind.MemberReference;

    /// <summary>A new object of the type whose constructor it is.</summary>
    public IlObject NewBy(int constructor)
    {
        MethodDefinition method = _assembly.Reader.GetMethodDefinition((MethodDefinitionHandle)MetadataTokens.EntityHandle(constructor));
        return new IlObject(_sizes[MetadataTokens.GetToken(method.GetDeclaringType())]);
    }

    /// <summary>The place of a field in its object, by names.</summary>
    public int PlaceOf(string type, string field) => _places[MetadataTokens.GetToken(Fields(type).Single(f => NameOf(f) == field))];

    /// <summary>The number of fields of a type.</summary>
    public int SizeOf(string type) => Fields(type).Count;

    private FieldDefinitionHandleCollection Fields(string type) =>
        _assembly.Reader.TypeDefinitions.Select(_assembly.Reader.GetTypeDefinition)
            .Single(t => _assembly.Reader.GetString(t.Name) == type).GetFields();

    private string NameOf(FieldDefinitionHandle field) => _assembly.Reader.GetString(_assembly.Reader.GetFieldDefinition(field).Name);

    private IlMethod Prepare(MethodDefinitionHandle handle)
    {
        MethodSignature<string> signature = _assembly.Reader.GetMethodDefinition(handle).DecodeSignature(new SignatureTypes(), null);
        Instruction[] code = [.. _assembly.Body(handle)];
        Dictionary<int, int> places = code.Select((instruction, place) => (instruction.Offset, place)).ToDictionary();
        int arguments = signature.RequiredParameterCount + (signature.Header.IsInstance ? 1 : 0);
        return new IlMethod(
            _assembly.NameOf(handle), [.. code.Select(instruction => Prepare(instruction, places))], arguments, _assembly.Locals(handle).Count(), signature.ReturnType != "Void");
    }

    private static IlStep Prepare(Instruction instruction, Dictionary<int, int> places)
    {
        string name = instruction.Name;
        long number = instruction.Number;
        bool branches = instruction.Code.OperandType is OperandType.ShortInlineBrTarget or OperandType.InlineBrTarget;
        if (branches)
            number = places[(int)number];
        if (name.EndsWith(".s", StringComparison.Ordinal))
            name = name[..^2];
        string[] parts = name.Split('.');
        if (parts[0] is "ldarg" or "ldloc" or "stloc" or "ldc")
        {
            name = parts[0];
            number = parts[^1] == "m1" ? -1 : int.TryParse(parts[^1], out int small) ? small : number;
        }

        int[]? targets = instruction.Targets is { } offsets ? [.. offsets.Select(offset => places[offset])] : null;
        return new IlStep(name, number, instruction.Token ?? 0, targets, branches);
    }
}

/// <summary>An object that a machine works on: its fields in order.</summary>
internal sealed class IlObject(int fields)
{
    public IlValue[] Fields { get; } = new IlValue[fields];
}

/// <summary>An int, a long or a reference. Ints are kept as longs of the same value.</summary>
internal readonly record struct IlValue(long Number, object? Reference)
{
    public static IlValue Of(long number) => new(number, null);

    /// <summary>A reference: something is more than nothing, which is all that is ever asked of two.</summary>
    public static IlValue To(object? reference) => new(reference == null ? 0 : 1, reference);
}

/// <summary>The address of an array's element.</summary>
internal sealed record IlAddress(int[] Array, int At);
