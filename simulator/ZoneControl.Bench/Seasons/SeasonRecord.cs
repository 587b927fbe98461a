namespace ZoneControl.Bench.Seasons;

/// <summary>
/// What was measured and found at one start or stop of a season: by a commissioning run, or written down by a person. It is
/// kept as a plain JSON file. Times are in seconds, so that a person can read and write them.
/// </summary>
public sealed record SeasonRecord
{
    /// <summary>Name and number of this layout.</summary>
    public const string SchemaName = "zonecontrol.record.1";

    /// <summary>The source of a run on virtual pins.</summary>
    public const string Virtual = "virtual pins";

    /// <summary>The source of a person's notes.</summary>
    public const string ByHand = "by hand";

    /// <summary>Name and number of the layout it was written in.</summary>
    public string Schema { get; init; } = SchemaName;

    /// <summary>The house's name.</summary>
    public required string House { get; init; }

    /// <summary>The day, yyyy-MM-dd.</summary>
    public required string Date { get; init; }

    /// <summary>"start" or "stop".</summary>
    public required string Season { get; init; }

    /// <summary>Where the numbers come from: <see cref="Virtual"/> or <see cref="ByHand"/>.</summary>
    public required string Source { get; init; }

    /// <summary>What drove the valves; "" for a person.</summary>
    public string Controller { get; init; } = "";

    /// <summary>Pressure of the cold circuit, bar; null when not written down.</summary>
    public double? PressureBar { get; init; }

    /// <summary>Each zone's measurements, in the house file's order.</summary>
    public IReadOnlyList<ZoneRecord> Zones { get; init; } = [];

    /// <summary>Runs of the pump.</summary>
    public IReadOnlyList<TrialRecord> Trials { get; init; } = [];

    /// <summary>What was found to be wrong.</summary>
    public IReadOnlyList<FaultRecord> Faults { get; init; } = [];

    /// <summary>What nothing has shown.</summary>
    public IReadOnlyList<string> Unknown { get; init; } = [];

    /// <summary>A person's notes; possibly "".</summary>
    public string Notes { get; init; } = "";
}

/// <summary>One zone's measurements. Null is not measured.</summary>
public sealed record ZoneRecord
{
    /// <summary>The zone's name in the house file.</summary>
    public required string Zone { get; init; }

    /// <summary>Its actuator's name in the house file; "" when not known.</summary>
    public string Actuator { get; init; } = "";

    /// <summary>From energised to its end switch, s.</summary>
    public double? SwitchMadeS { get; init; }

    /// <summary>Names of other zones whose end switches made meanwhile; null when none did.</summary>
    public IReadOnlyList<string>? OtherSwitches { get; init; }

    /// <summary>From energised to the first of those, s.</summary>
    public double? OtherSwitchMadeS { get; init; }

    /// <summary>From released to its end switch breaking, s.</summary>
    public double? SwitchBrokeS { get; init; }

    /// <summary>From energised to fully open, by a watch, s.</summary>
    public double? OpenedS { get; init; }

    /// <summary>From released to shut, by a watch, s.</summary>
    public double? ClosedS { get; init; }

    /// <summary>Names of the zones whose stems were seen to move; null when nobody looked.</summary>
    public IReadOnlyList<string>? Moved { get; init; }

    /// <summary>Names of the zones whose actuators got warm or were heard; null when nobody felt.</summary>
    public IReadOnlyList<string>? Warmed { get; init; }

    /// <summary>Why it was not tried; "" when it was.</summary>
    public string NotTried { get; init; } = "";
}

/// <summary>One run of the pump.</summary>
/// <param name="Zones">Names of the open zones.</param>
/// <param name="NotRun">Why it did not get to run; "" when it was told to.</param>
/// <param name="FlowSwitch">Whether the flow switch saw flow; null without one.</param>
/// <param name="FlowAfterS">When, s after the start.</param>
/// <param name="PumpHeard">Whether the pump was heard; null when nobody listened.</param>
/// <param name="Passing">Names of the zones that passed water; null when nobody looked.</param>
public sealed record TrialRecord(
    IReadOnlyList<string> Zones, string NotRun, bool? FlowSwitch, double? FlowAfterS, bool? PumpHeard, IReadOnlyList<string>? Passing);

/// <summary>Something found to be wrong.</summary>
/// <param name="Fault">A word for programs, the name of <see cref="Seasons.Fault"/> in camel case.</param>
/// <param name="Zones">Names of the zones it is about; possibly none.</param>
/// <param name="Says">It in words.</param>
/// <param name="Change">What to do.</param>
public sealed record FaultRecord(string Fault, IReadOnlyList<string> Zones, string Says, string Change);
