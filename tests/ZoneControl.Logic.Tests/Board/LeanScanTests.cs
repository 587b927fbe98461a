using System.Reflection;
using System.Reflection.Metadata;

namespace ZoneControl.Logic.Tests;

/// <summary>What may not be in anything that a scan reaches, as compiled for the board and for the desktop.</summary>
public sealed class LeanScanTests : IDisposable
{
    private static readonly string[] _forbidden =
    [
        "newobj", "newarr", "box", "unbox", "unbox.any", "castclass", "isinst", "initobj", "mkrefany", "localloc", // memory
        "throw", "rethrow", "leave", "leave.s", "endfinally", "endfilter", // exceptions
        "ldstr", "ldtoken", "ldsfld", "stsfld", "ldsflda", // text and statics
        "calli", "ldftn", "ldvirtftn", "constrained.", "jmp", "tail.", "volatile.", // calls through tables
    ];

    private readonly LogicAssembly _board = LogicAssembly.OfBoard();
    private readonly LogicAssembly _desktop = LogicAssembly.OfDesktop();

    public void Dispose()
    {
        _board.Dispose();
        _desktop.Dispose();
    }

    public static TheoryData<string, bool> Roots
    {
        get
        {
            var roots = new TheoryData<string, bool>();
            foreach (string root in (string[])["Scan", "ScanWhole", "Save", "Load"])
            {
                roots.Add($"ZoneController.{root}", true);
                roots.Add($"ZoneController.{root}", false);
            }

            return roots;
        }
    }

    [Theory]
    [MemberData(nameof(Roots))]
    public void Nothing_that_a_scan_reaches_allocates_boxes_throws_or_uses_anything_from_outside(string root, bool board)
    {
        foreach (MethodDefinitionHandle method in Reached(root, board, out LogicAssembly logic))
        {
            string name = logic.NameOf(method);
            Assert.Equal((name, ""), (name, string.Join(' ', logic.Body(method).Select(i => i.Name).Intersect(_forbidden))));
            Assert.Equal((name, ""), (name, string.Join(' ', logic.OutsideUses(method))));
            Assert.True(logic.Block(method)!.ExceptionRegions.Length == 0, $"{name} has a protected region");
        }
    }

    [Theory]
    [MemberData(nameof(Roots))]
    public void Nothing_that_a_scan_reaches_uses_floating_point_or_checked_arithmetic(string root, bool board)
    {
        foreach (MethodDefinitionHandle method in Reached(root, board, out LogicAssembly logic))
        {
            string name = logic.NameOf(method);
            Assert.Equal((name, ""), (name, string.Join(' ', logic.Body(method).Where(i => IsFloat(i) || IsChecked(i)).Select(i => i.Name))));
            Assert.DoesNotContain("float", string.Join(' ', logic.Locals(method)), StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Roots))]
    public void What_a_scan_calls_is_known_when_it_is_compiled(string root, bool board)
    {
        foreach (MethodDefinitionHandle method in Reached(root, board, out LogicAssembly logic))
        {
            MethodAttributes attributes = logic.Reader.GetMethodDefinition(method).Attributes;
            Assert.True((attributes & (MethodAttributes.Virtual | MethodAttributes.Abstract)) == 0, logic.NameOf(method));
        }
    }

    [Theory]
    [MemberData(nameof(Roots))]
    public void A_scan_divides_by_constants_only(string root, bool board)
    {
        foreach (MethodDefinitionHandle method in Reached(root, board, out LogicAssembly logic))
        {
            IReadOnlyList<Instruction> body = logic.Body(method);
            for (int i = 0; i < body.Count; i++)
            {
                if (body[i].Name is "div" or "rem" or "div.un" or "rem.un")
                    Assert.True(body[i - 1].Name == "ldc.i4" && body[i - 1].Number > 0, $"{logic.NameOf(method)} divides by {body[i - 1].Name}");
            }
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_walk_from_the_scan_reaches_every_mechanism(bool board)
    {
        LogicAssembly logic = board ? _board : _desktop;
        string[] mechanisms =
        [
            "ContactFilter.Step", "Latches.Step", "ClockWatch.Step", "ClockWatch.Fault", "ValveProof.Step", "LateValves.Step",
            "FlowWatch.Step", "Asking.Govern", "Asking.Step", "Asking.CountDemand", "Exercise.Step", "ZonePlan.Step",
            "PumpSequence.Step", "ValveDrive.Step", "HeatDemand.Step", "HoldReasons.FirstUnmet", "Alarms.Of", "WholeSeconds.Pass",
            "AlarmBook.Note", "ControllerState.Changed",
        ];

        Assert.Equal([], mechanisms.Except(logic.ReachableFrom("ZoneController.Scan").Select(logic.NameOf)));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_search_sees_what_is_forbidden_where_there_is_some(bool board)
    {
        LogicAssembly logic = board ? _board : _desktop;
        IEnumerable<string> built = logic.ReachableFrom("ZoneController..ctor").SelectMany(logic.Body).Select(i => i.Name);

        Assert.Superset(new HashSet<string> { "newobj", "newarr", "throw", "ldstr" }, built.ToHashSet());
        Assert.NotEmpty(logic.ReachableFrom("ZoneController..ctor").SelectMany(logic.OutsideUses));
    }

    internal static bool IsFloat(Instruction instruction) =>
        instruction.Name.Contains(".r4", StringComparison.Ordinal) || instruction.Name.Contains(".r8", StringComparison.Ordinal)
        || instruction.Name.Contains("conv.r", StringComparison.Ordinal) || instruction.Name == "ckfinite";

    internal static bool IsChecked(Instruction instruction) => instruction.Name.Contains(".ovf", StringComparison.Ordinal);

    private HashSet<MethodDefinitionHandle> Reached(string root, bool board, out LogicAssembly logic)
    {
        logic = board ? _board : _desktop;
        HashSet<MethodDefinitionHandle> reached = logic.ReachableFrom(root);
        Assert.True(reached.Count > 2, "the walk from the scan found nothing");
        return reached;
    }
}
