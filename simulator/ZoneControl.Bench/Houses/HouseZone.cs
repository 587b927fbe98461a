using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>One thermostat and the loops it opens.</summary>
public sealed record HouseZone
{
    /// <summary>Name in files: a lower-case word such as "throwing-room".</summary>
    public required string Name { get; init; }

    /// <summary>Name for people.</summary>
    public required string Label { get; init; }

    /// <summary>Line of the house file where the zone begins; 0 when made in code.</summary>
    public int Line { get; init; }

    /// <summary>The kind of actuator on its valves.</summary>
    public required HouseActuator Actuator { get; init; }

    /// <summary>An existing panel drives its valves; ZoneControl senses them and gates pump and heat demand.</summary>
    public bool Gated { get; init; }

    /// <summary>Its thermostat asks with an open contact.</summary>
    public bool CallBreaks { get; init; }

    /// <summary>Its sense contact is open while its valves are energised; only for a gated zone.</summary>
    public bool SenseBreaks { get; init; }

    /// <summary>How many actuators it has; 1 to 40.</summary>
    public required Setting<int> Actuators { get; init; }

    /// <summary>Load of its open valves, VA.</summary>
    public double HoldVa => Actuators.Value * Actuator.HoldVa.Value;

    /// <summary>Load of its valves while they start to open, VA.</summary>
    public double InrushVa => Actuators.Value * Actuator.InrushVa.Value;

    /// <summary>Its loops; at least one.</summary>
    public required IReadOnlyList<HouseLoop> Loops { get; init; }

    /// <summary>What it can pass when open: a whole number, by default its number of loops; 1 to 1,000.</summary>
    public required Setting<int> Capacity { get; init; }

    /// <summary>From energised to surely open: the time that proves a valve without a believed end switch.</summary>
    public required Setting<TimeSpan> ProofTime { get; init; }

    /// <summary>From released to surely shut.</summary>
    public required Setting<TimeSpan> ClosingTime { get; init; }

    /// <summary>An end switch that makes sooner is not believed. Without an end switch it has no effect.</summary>
    public required Setting<TimeSpan> SwitchMinTime { get; init; }

    /// <summary>A switched valve not proven by then is late. Without an end switch it has no effect.</summary>
    public required Setting<TimeSpan> SwitchLimit { get; init; }
}

/// <summary>One run of tube between a manifold's supply and return.</summary>
/// <param name="Manifold">Manifold it hangs on, from 0.</param>
/// <param name="Tube">The tube; its K holds the bends.</param>
/// <param name="TubeSize">Size as the file says it: "1/2 in", or the inside diameter.</param>
/// <param name="ValveKvs">Kv of its valve fully open, m³/h at 1 bar.</param>
/// <param name="Label">Name for people; possibly "".</param>
public sealed record HouseLoop(int Manifold, PipeDescription Tube, string TubeSize, Setting<double> ValveKvs, string Label = "")
{
    /// <summary>Kv of its balancing valve as it is set, m³/h at 1 bar; null without one.</summary>
    public double? BalancingKv { get; init; }
}

/// <summary>A manifold.</summary>
/// <param name="Name">Name in files.</param>
/// <param name="Label">Name for people.</param>
/// <param name="Branch">Piping that feeds it, supply and return together; null when it sits on the mains.</param>
public sealed record HouseManifold(string Name, string Label, PipeDescription? Branch)
{
    /// <summary>Kv of the balancing valve in its branch as it is set, m³/h at 1 bar; null without one.</summary>
    public double? BalancingKv { get; init; }
}

/// <summary>How an actuator is wired and moves.</summary>
public enum ActuatorKind
{
    /// <summary>Thermal, two wires: opens slowly and says nothing about it.</summary>
    TwoWire,

    /// <summary>Thermal, four wires: the other two are an end switch.</summary>
    FourWire,

    /// <summary>Motor with spring return, with or without an end switch.</summary>
    Motorised,
}

/// <summary>A kind of actuator, described once and used by any number of zones. Normally closed, returned by spring or wax.</summary>
public sealed record HouseActuator
{
    /// <summary>Name in files.</summary>
    public required string Name { get; init; }

    /// <summary>How it is wired and moves.</summary>
    public required ActuatorKind Kind { get; init; }

    /// <summary>From energised to fully open at worst, dead time included.</summary>
    public required TimeSpan OpeningTime { get; init; }

    /// <summary>From energised to the first movement; shorter than <see cref="OpeningTime"/>.</summary>
    public required Setting<TimeSpan> DeadTime { get; init; }

    /// <summary>From released to fully shut at worst, its dead time included.</summary>
    public required Setting<TimeSpan> ClosingTime { get; init; }

    /// <summary>From released to the first movement; shorter than <see cref="ClosingTime"/>.</summary>
    public required Setting<TimeSpan> ClosingDeadTime { get; init; }

    /// <summary>Travel at which the end switch makes, above 0 to 1; null without an end switch.</summary>
    public Setting<double>? SwitchAt { get; init; }

    /// <summary>Its end switch is open when its valve is open.</summary>
    public bool SwitchBreaks { get; init; }

    /// <summary>Load of one while it holds its valve open, VA.</summary>
    public required Setting<double> HoldVa { get; init; }

    /// <summary>Load of one while it starts to open, VA; at least <see cref="HoldVa"/>.</summary>
    public required Setting<double> InrushVa { get; init; }

    /// <summary>How long that start lasts; at most <see cref="OpeningTime"/>.</summary>
    public required Setting<TimeSpan> InrushTime { get; init; }

    /// <summary>Supply that it is made for, V.</summary>
    public required Setting<double> SupplyV { get; init; }

    /// <summary>Whether it has an end switch.</summary>
    public bool HasSwitch => SwitchAt is not null;
}
