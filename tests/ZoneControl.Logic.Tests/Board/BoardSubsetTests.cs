using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace ZoneControl.Logic.Tests;

/// <summary>What the board's runtime lacks or does badly is not in the controller that is compiled for it.</summary>
public sealed class BoardSubsetTests : IDisposable
{
    private readonly BoardAssembly _board = new();

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
        Assert.DoesNotContain(_board.Methods, m => _board.Body(m).Any(IsFloat));
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

    [Theory]
    [InlineData("ZoneController.Scan")]
    [InlineData("ZoneController.ScanWhole")]
    [InlineData("ZoneController.Save")]
    [InlineData("ZoneController.Load")]
    public void Nothing_that_a_scan_reaches_allocates_boxes_throws_or_calls_through_a_table(string root)
    {
        HashSet<MethodDefinitionHandle> reached = _board.ReachableFrom(root);
        Assert.True(reached.Count > 2, "the walk from the scan found nothing");
        foreach (MethodDefinitionHandle method in reached)
        {
            string[] forbidden = ["newobj", "newarr", "box", "throw", "rethrow", "ldstr", "calli", "ldftn", "localloc"];
            Assert.DoesNotContain(_board.Body(method).Select(i => i.Code.Name), code => forbidden.Contains(code));
            Assert.Empty(_board.OutsideUses(method));
        }
    }

    [Fact]
    public void The_walk_from_the_scan_reaches_every_mechanism()
    {
        IEnumerable<string> names = _board.ReachableFrom("ZoneController.Scan").Select(_board.NameOf);
        string[] mechanisms =
        [
            "ContactFilter.Step", "ValveProof.Step", "LateValves.Step", "Asking.Step", "Asking.CountDemand", "ZonePlan.Step", "PumpSequence.Step",
            "ValveDrive.Step", "HeatDemand.Step", "HoldReasons.FirstUnmet",
        ];

        Assert.Equal([], mechanisms.Except(names));
    }

    [Fact]
    public void The_search_sees_allocation_where_there_is_some()
    {
        IEnumerable<string?> built = _board.ReachableFrom("ZoneController..ctor").SelectMany(_board.Body).Select(i => i.Code.Name);

        Assert.Superset(new HashSet<string?> { "newobj", "newarr", "throw" }, built.ToHashSet());
    }

    private static bool IsFloat(Instruction instruction) =>
        instruction.Code.Name is { } name && (name.Contains(".r4", StringComparison.Ordinal) || name.Contains(".r8", StringComparison.Ordinal)
            || name.Contains("conv.r", StringComparison.Ordinal) || name == "ckfinite");
}
