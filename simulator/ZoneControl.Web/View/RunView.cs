using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Web.View;

/// <summary>A stretch of time, ms from the start of the run; the end is outside it.</summary>
public readonly record struct Stretch(long FromMs, long ToMs)
{
    /// <summary>How long it lasts, ms.</summary>
    public long LengthMs => ToMs - FromMs;

    /// <summary>True when the moment lies inside.</summary>
    public bool Holds(long ms) => ms >= FromMs && ms < ToMs;
}

/// <summary>A value at a moment (ms from the start of the run); its unit is the curve's.</summary>
public readonly record struct TimedValue(long Ms, double Value);

/// <summary>Units that a person reads.</summary>
public enum UnitSystem
{
    /// <summary>°C, L/min, kWh.</summary>
    Metric,

    /// <summary>°F, US gallons a minute, kWh.</summary>
    UsCustomary,
}

/// <summary>A zone as it is named in pictures.</summary>
/// <param name="Name">Its name, as the house file gives it.</param>
/// <param name="Kind">How its valves are proven and how many loops they open, in a few words: "timed, 2 loops".</param>
public sealed record ZoneView(string Name, string Kind);

/// <summary>What one zone did.</summary>
/// <param name="Zone">Which zone.</param>
/// <param name="Calls">Its thermostat's accepted call.</param>
/// <param name="Energised">Its valves energised.</param>
/// <param name="Proven">Its valves counted as open by the controller; empty when the controller proves nothing.</param>
/// <param name="Late">Alarm: not proven within the limit, latched ones included.</param>
/// <param name="Latched">Alarm: given up until reset.</param>
/// <param name="Early">Alarm: its end switch made too soon to be believed.</param>
/// <param name="Travel">Stem travel, 0 shut to 1 open.</param>
public sealed record ZoneLane(
    ZoneView Zone,
    IReadOnlyList<Stretch> Calls,
    IReadOnlyList<Stretch> Energised,
    IReadOnlyList<Stretch> Proven,
    IReadOnlyList<Stretch> Late,
    IReadOnlyList<Stretch> Latched,
    IReadOnlyList<Stretch> Early,
    IReadOnlyList<TimedValue> Travel)
{
    /// <summary>Alarm: its end switch stays made though the valve is released.</summary>
    public IReadOnlyList<Stretch> Stuck { get; init; } = [];
}

/// <summary>A contact of the house or one of its alarms over time.</summary>
/// <param name="Name">What it is, in a few words.</param>
/// <param name="When">When it was so.</param>
/// <param name="IsAlarm">True for an alarm.</param>
public sealed record HouseLane(string Name, IReadOnlyList<Stretch> When, bool IsAlarm);

/// <summary>A run as lanes over time.</summary>
/// <param name="EndMs">End of the run, ms.</param>
/// <param name="Zones">One lane a zone, in the house file's order.</param>
/// <param name="Pump">Pump on.</param>
/// <param name="Heat">Heat demand on.</param>
/// <param name="Lockout">Season lockout, as accepted.</param>
/// <param name="Unpowered">The controller has no supply.</param>
/// <param name="Deadhead">Pump energised with less than its minimum flow, seen from the water side.</param>
/// <param name="PumpFlowM3s">Flow through the pump, m³/s.</param>
/// <param name="TrappedWaterC">Temperature of the water in the pump's casing, °C.</param>
public sealed record RunLanes(
    long EndMs,
    IReadOnlyList<ZoneLane> Zones,
    IReadOnlyList<Stretch> Pump,
    IReadOnlyList<Stretch> Heat,
    IReadOnlyList<Stretch> Lockout,
    IReadOnlyList<Stretch> Unpowered,
    IReadOnlyList<Stretch> Deadhead,
    IReadOnlyList<TimedValue> PumpFlowM3s,
    IReadOnlyList<TimedValue> TrappedWaterC)
{
    /// <summary>Start of the stretch that is drawn, ms; 0 for a whole run.</summary>
    public long StartMs { get; init; }

    /// <summary>Contacts of the house that were ever asserted, and alarms of the house that were ever raised.</summary>
    public IReadOnlyList<HouseLane> House { get; init; } = [];
}

/// <summary>A stretch in which the pump was wanted and held, with the reason.</summary>
public sealed record HoldView(Stretch When, HoldReason Reason);

/// <summary>Something that happened and is worth a line.</summary>
/// <param name="Ms">When, ms from the start.</param>
/// <param name="Text">What, in words.</param>
/// <param name="IsAlarm">True when the controller raised it as an alarm.</param>
public sealed record Happening(long Ms, string Text, bool IsAlarm);

/// <summary>A rule, its sentence and its verdict.</summary>
/// <param name="Sentence">The rule in one sentence; empty when the verdict's rule is not in the rule table given.</param>
/// <param name="Verdict">How it came out.</param>
public sealed record RuleView(string Sentence, RuleVerdict Verdict);

/// <summary>One run of one controller, ready to be drawn.</summary>
/// <param name="ControllerName">What drove the pump: "controller", "pump straight to the calls".</param>
/// <param name="Lanes">The picture.</param>
/// <param name="Holds">When and why the pump was held; neighbours with one reason are one.</param>
/// <param name="Happenings">Events and alarms in order of time.</param>
/// <param name="Rules">The rule table.</param>
/// <param name="Expectations">The script's expectations.</param>
/// <param name="Totals">What it adds up to.</param>
/// <param name="Passed">The verdict.</param>
public sealed record RunView(
    string ControllerName,
    RunLanes Lanes,
    IReadOnlyList<HoldView> Holds,
    IReadOnlyList<Happening> Happenings,
    IReadOnlyList<RuleView> Rules,
    IReadOnlyList<ExpectationVerdict> Expectations,
    RunTotals Totals,
    bool Passed);

/// <summary>Everything that terminal and report show: one house, one script, the judged run and maybe one to compare with.</summary>
/// <param name="HouseName">The house.</param>
/// <param name="HouseSummary">What it is made of, in a line: "6 zones, 10 loops, 2 manifolds".</param>
/// <param name="ScriptTitle">The script's title.</param>
/// <param name="ScriptText">What the script is about; may be empty.</param>
/// <param name="StartClock">Time of day at the start; null shows time since the start instead.</param>
/// <param name="Units">Units to show.</param>
/// <param name="Judged">The run whose verdict counts.</param>
/// <param name="Compared">The same house and script with another controller; null without one.</param>
public sealed record ReportView(
    string HouseName,
    string HouseSummary,
    string ScriptTitle,
    string ScriptText,
    TimeOnly? StartClock,
    UnitSystem Units,
    RunView Judged,
    RunView? Compared)
{
    /// <summary>For a capture from elsewhere: what was read of it; null for a run.</summary>
    public CaptureView? Capture { get; init; }
}
