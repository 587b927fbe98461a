using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace ZoneControl.Logic.Tests;

/// <summary>What the board's runtime lacks or does badly is not in the controller that is compiled for it.</summary>
public sealed class BoardSubsetTests : IDisposable
{
    private readonly LogicAssembly _board = LogicAssembly.OfBoard();

    public void Dispose() => _board.Dispose();

    [Fact]
    public void It_refers_to_the_core_library_and_nothing_else()
    {
        MetadataReader reader = _board.Reader;

        Assert.Equal(["mscorlib"], reader.AssemblyReferences.Select(r => reader.GetString(reader.GetAssemblyReference(r).Name)));
    }

    [Fact]
    public void It_has_the_same_public_types_as_the_desktops()
    {
        MetadataReader reader = _board.Reader;
        IEnumerable<string> types = reader.TypeDefinitions.Select(reader.GetTypeDefinition)
            .Where(t => (t.Attributes & TypeAttributes.VisibilityMask) == TypeAttributes.Public)
            .Select(t => reader.GetString(t.Name));

        Assert.Equal(typeof(ZoneController).Assembly.GetExportedTypes().Select(t => t.Name).Order(), types.Order());
    }

    [Fact]
    public void It_has_no_generic_types_methods_or_instances()
    {
        MetadataReader reader = _board.Reader;

        Assert.DoesNotContain(reader.TypeDefinitions, t => reader.GetTypeDefinition(t).GetGenericParameters().Count != 0);
        Assert.DoesNotContain(_board.Methods, m => reader.GetMethodDefinition(m).GetGenericParameters().Count != 0);
        Assert.Equal(0, reader.GetTableRowCount(TableIndex.TypeSpec));
        Assert.Equal(0, reader.GetTableRowCount(TableIndex.MethodSpec));
    }

    [Fact]
    public void It_has_no_floating_point()
    {
        Assert.DoesNotContain(_board.Methods, m => _board.Body(m).Any(LeanScanTests.IsFloat));
        var signatures = new SignatureTypes();
        MetadataReader reader = _board.Reader;
        foreach (FieldDefinitionHandle field in reader.FieldDefinitions)
            Assert.DoesNotContain("float", reader.GetFieldDefinition(field).DecodeSignature(signatures, null), StringComparison.Ordinal);
        foreach (MethodDefinitionHandle method in _board.Methods)
        {
            MethodSignature<string> signature = reader.GetMethodDefinition(method).DecodeSignature(signatures, null);
            Assert.DoesNotContain(signature.ParameterTypes.Append(signature.ReturnType), t => t.Contains("float", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void No_static_initialiser_can_read_another_class_before_it_is_ready()
    {
        Assert.DoesNotContain(_board.Methods, m => _board.NameOf(m).EndsWith("..cctor", StringComparison.Ordinal));
    }

    [Fact]
    public void It_has_no_checked_arithmetic_which_wraps_silently_there()
    {
        Assert.Equal([], _board.Methods.Where(m => _board.Body(m).Any(LeanScanTests.IsChecked)).Select(_board.NameOf));
    }

    [Fact]
    public void It_has_no_arrays_of_more_than_one_dimension()
    {
        var signatures = new SignatureTypes();
        IEnumerable<string> fields = _board.Reader.FieldDefinitions.Select(f => _board.Reader.GetFieldDefinition(f).DecodeSignature(signatures, null));
        IEnumerable<string> locals = _board.Methods.SelectMany(m => _board.Locals(m));

        Assert.DoesNotContain(fields.Concat(locals), type => type.Contains("matrix", StringComparison.Ordinal));
    }

    [Fact]
    public void It_makes_no_text_of_enums_or_numbers()
    {
        IEnumerable<string> used = _board.Methods.SelectMany(_board.OutsideUses).Distinct();

        Assert.Equal([".ctor"], used); // of objects, of exceptions and of attributes
        Assert.DoesNotContain(_board.Methods, m => _board.Body(m).Any(i => i.Name is "constrained." or "box"));
    }

    [Fact]
    public void It_has_no_interfaces_so_none_with_a_default_method()
    {
        Assert.DoesNotContain(Types(), type => (type.Attributes & TypeAttributes.Interface) != 0);
    }

    [Fact]
    public void It_has_no_structs_but_enums()
    {
        MetadataReader reader = _board.Reader;
        IEnumerable<string> bases = Types().Where(type => !type.BaseType.IsNil).Select(type => type.BaseType.Kind == HandleKind.TypeReference
            ? reader.GetString(reader.GetTypeReference((TypeReferenceHandle)type.BaseType).Name)
            : reader.GetString(reader.GetTypeDefinition((TypeDefinitionHandle)type.BaseType).Name));

        Assert.Equal(["Attribute", "Enum", "Object"], bases.Distinct().Order());
    }

    [Fact]
    public void It_has_no_delegates_handlers_or_lambdas()
    {
        Assert.DoesNotContain(_board.Methods, m => _board.Body(m).Any(i => i.Name is "ldftn" or "ldvirtftn" or "calli"));
        Assert.DoesNotContain(_board.Methods, m => _board.Block(m) is { ExceptionRegions.Length: > 0 });
    }

    private IEnumerable<TypeDefinition> Types() => _board.Reader.TypeDefinitions.Select(_board.Reader.GetTypeDefinition);
}
