using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using ZoneControl.Logic.Tests;

namespace ZoneControl.Firmware.Tests;

/// <summary>
/// The firmware holds nothing that compiles and then misbehaves on the board's runtime. What that is was found by running
/// small programs on the runtime's host build: generics, floating point of which we want none, checked arithmetic,
/// static constructors (they run before Main, in the order of names), arrays of several dimensions, default interface
/// methods, text of enums, and a division of the smallest int by -1.
/// </summary>
public class BoardConstructTests
{
    public static TheoryData<string> Files => [.. BoardAssemblies.Files];

    public static TheoryData<string> WithStandIns => [.. BoardAssemblies.Files, .. BoardAssemblies.StandIns];

    [Theory]
    [MemberData(nameof(WithStandIns))]
    public void Nothing_is_generic(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);
        MetadataReader reader = assembly.Reader;

        Assert.Equal((0, 0, 0), (reader.GetTableRowCount(TableIndex.TypeSpec), reader.GetTableRowCount(TableIndex.MethodSpec), reader.GetTableRowCount(TableIndex.GenericParam)));
    }

    [Theory]
    [MemberData(nameof(WithStandIns))]
    public void Nothing_is_static_that_needs_a_constructor(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);

        Assert.Equal([], assembly.Methods.Select(assembly.NameOf).Where(name => name.EndsWith("..cctor", StringComparison.Ordinal)));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void No_field_is_static_but_constants(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);
        MetadataReader reader = assembly.Reader;
        IEnumerable<string> found =
            from type in reader.TypeDefinitions.Select(reader.GetTypeDefinition)
            where reader.GetString(type.Name) != "<PrivateImplementationDetails>" // contents of arrays
            from field in type.GetFields().Select(reader.GetFieldDefinition)
            where (field.Attributes & (FieldAttributes.Static | FieldAttributes.Literal)) == FieldAttributes.Static
            select $"{reader.GetString(type.Name)}.{reader.GetString(field.Name)}";

        Assert.Equal([], found);
    }

    [Theory]
    [MemberData(nameof(WithStandIns))]
    public void No_arithmetic_is_checked_or_floating(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);

        Assert.Equal([], Instructions(assembly).Where(use => IsChecked(use.Name) || IsFloat(use.Name)));
        Assert.DoesNotContain(Signatures(assembly), type => type.Contains("float", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(WithStandIns))]
    public void No_array_has_two_dimensions(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);

        Assert.DoesNotContain(Signatures(assembly), type => type.Contains("matrix", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Nothing_is_boxed_so_no_enum_becomes_text(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);

        Assert.Equal([], Instructions(assembly).Where(use => use.Name is "box" or "constrained."));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_division_is_by_a_positive_constant(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);
        foreach (MethodDefinitionHandle method in assembly.Methods)
        {
            IReadOnlyList<Instruction> body = assembly.Body(method);
            for (int i = 0; i < body.Count; i++)
            {
                if (body[i].Name is not ("div" or "rem" or "div.un" or "rem.un"))
                    continue;
                Instruction divisor = body[i - 1].Name == "conv.i8" ? body[i - 2] : body[i - 1];
                Assert.True(divisor.Name.StartsWith("ldc.i", StringComparison.Ordinal) && divisor.Number > 0, $"{assembly.NameOf(method)} divides by {divisor.Name}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Interfaces_have_no_methods_with_a_body(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);
        MetadataReader reader = assembly.Reader;
        IEnumerable<MethodDefinition> methods = reader.TypeDefinitions.Select(reader.GetTypeDefinition)
            .Where(type => (type.Attributes & TypeAttributes.Interface) != 0)
            .SelectMany(type => type.GetMethods()).Select(reader.GetMethodDefinition);

        Assert.All(methods, method => Assert.Equal(0, method.RelativeVirtualAddress));
    }

    [Fact]
    public void The_only_delegate_is_the_logs_thread()
    {
        using LogicAssembly firmware = BoardAssemblies.Open("ZoneControl.Firmware.exe");

        Assert.Equal([("Program.Main", "ldftn")], Instructions(firmware).Where(use => use.Name is "ldftn" or "ldvirtftn" or "calli"));
    }

    [Fact]
    public void The_search_sees_what_is_forbidden_where_there_is_some()
    {
        using var desktop = new LogicAssembly(typeof(ZoneControl.Bench.Houses.House).Assembly.Location);
        IEnumerable<string> names = Instructions(desktop).Select(use => use.Name).Distinct();

        Assert.NotEqual(0, desktop.Reader.GetTableRowCount(TableIndex.MethodSpec));
        Assert.Contains(desktop.Methods, m => desktop.NameOf(m).EndsWith("..cctor", StringComparison.Ordinal));
        Assert.Superset(new HashSet<string> { "box", "constrained.", "ldftn", "ldc.r8" }, names.ToHashSet());
        Assert.Contains(Signatures(desktop), type => type.Contains("float", StringComparison.Ordinal));
    }

    private static IEnumerable<(string Method, string Name)> Instructions(LogicAssembly assembly) =>
        assembly.Methods.SelectMany(method => assembly.Body(method).Select(i => (assembly.NameOf(method), i.Name)));

    private static IEnumerable<string> Signatures(LogicAssembly assembly)
    {
        MetadataReader reader = assembly.Reader;
        var types = new SignatureTypes();
        IEnumerable<string> fields = reader.FieldDefinitions.Select(f => reader.GetFieldDefinition(f).DecodeSignature(types, null));
        IEnumerable<string> methods = assembly.Methods.Select(m => reader.GetMethodDefinition(m).DecodeSignature(types, null))
            .SelectMany(signature => signature.ParameterTypes.Append(signature.ReturnType));
        return fields.Concat(methods).Concat(assembly.Methods.SelectMany(assembly.Locals));
    }

    private static bool IsChecked(string name) => name.Contains(".ovf", StringComparison.Ordinal);

    private static bool IsFloat(string name) =>
        name.Contains(".r4", StringComparison.Ordinal) || name.Contains(".r8", StringComparison.Ordinal)
        || name.Contains("conv.r", StringComparison.Ordinal) || name == "ckfinite";
}
