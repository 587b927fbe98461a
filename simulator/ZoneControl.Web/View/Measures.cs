using ZoneControl.Bench.Running;

namespace ZoneControl.Web.View;

/// <summary>One line of the table that sets runs side by side.</summary>
/// <param name="Name">What is measured.</param>
/// <param name="Values">One text a run, in the runs' order.</param>
/// <param name="Meaning">What the number says, in a few words.</param>
public sealed record Measure(string Name, IReadOnlyList<string> Values, string Meaning);

/// <summary>The numbers by which runs are compared.</summary>
public static class Measures
{
    /// <summary>The lines, for one run or several.</summary>
    public static IReadOnlyList<Measure> Of(IReadOnlyList<RunTotals> runs, UnitSystem units)
    {
        Measure Line(string name, string meaning, Func<RunTotals, string> text) => new(name, [.. runs.Select(text)], meaning);
        return
        [
            Line("Deadhead", "pump on with less than its minimum flow", t => Quantity.Duration(t.DeadheadS)),
            Line("Of that, no flow at all", "with every valve shut", t => Quantity.Duration(t.ShutS)),
            Line("Deadhead events", "separate stretches of it", t => $"{t.DeadheadEvents}"),
            Line("Hottest trapped water", "in the pump's casing", t => Quantity.Temperature(t.HottestTrappedC, units)),
            Line("First warm flow", "after the first call", t => t.FirstWarmFlowS is { } s ? Quantity.Duration(s) : "never came"),
            Line("Pump starts", "each one wears", t => $"{t.PumpStarts}"),
            Line("Pump run time", "", t => Quantity.Duration(t.PumpRunS)),
            Line("Pump energy", "", t => Quantity.Energy(t.PumpEnergyWh)),
            Line("Valve strokes", "times a zone was opened", t => $"{t.ValveStrokes}"),
        ];
    }

    /// <summary>The runs of a report in the order in which they are set side by side: the one to compare with comes first.</summary>
    public static IReadOnlyList<RunView> Runs(ReportView report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Compared is { } compared ? [compared, report.Judged] : [report.Judged];
    }
}
