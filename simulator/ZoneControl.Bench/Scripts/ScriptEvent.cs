using System.Numerics;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Scripts;

/// <summary>Something that happens during a run.</summary>
/// <param name="AtMs">When, ms from the start.</param>
/// <param name="Action">What.</param>
/// <param name="Note">Remark for people; possibly "".</param>
/// <param name="Line">Line of the script file; 0 when made in code.</param>
public sealed record ScriptEvent(long AtMs, ScriptAction Action, string Note = "", int Line = 0);

/// <summary>What happens.</summary>
public abstract record ScriptAction
{
    /// <summary>The action in words, with the house's own labels.</summary>
    public abstract string InWords(House house);
}

/// <summary>Thermostats begin or cease to ask for heat.</summary>
/// <param name="Zones">Their zones, one bit each.</param>
/// <param name="Asks">Whether they ask from now on.</param>
public sealed record CallChange(int Zones, bool Asks) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house)
    {
        bool one = BitOperations.IsPow2(Zones);
        string verb = Asks ? (one ? "calls" : "call") : (one ? "stops calling" : "stop calling");
        return $"{house.ZoneLabels(Zones)} {verb}";
    }
}

/// <summary>The season contact moves. Runs begin in the heating season.</summary>
/// <param name="Lockout">Whether it says lockout from now on.</param>
public sealed record SeasonChange(bool Lockout) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => Lockout ? "season switch to lockout" : "season switch to heating";
}

/// <summary>A zone's actuator or end switch breaks or is repaired.</summary>
/// <param name="Zone">The zone, from 0.</param>
/// <param name="Fault">Everything that is wrong with it from now on, earlier faults included.</param>
/// <param name="Words">What changed, in words: "sticks".</param>
public sealed record FaultChange(int Zone, ActuatorFault Fault, string Words) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => $"{house.Zones[Zone].Label}: {Words}";
}

/// <summary>A contact of the house moves. Runs begin with the actuators' supply on and everything else at rest.</summary>
/// <param name="Kind">Which contact; never the flow switch, which follows the water.</param>
/// <param name="Asserted">Whether it is asserted from now on.</param>
public sealed record ContactChange(ContactKind Kind, bool Asserted) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => $"{Kind.Label}: {(Asserted ? Kind.Asserted : Kind.Resting)}";
}

/// <summary>Hand switches, all of them. Runs begin with none on.</summary>
/// <param name="Zones">Zones whose valves a hand asks for, one bit each.</param>
/// <param name="Pump">Whether a hand asks for the pump.</param>
public sealed record ServiceChange(int Zones, bool Pump) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house)
    {
        if (Zones == 0)
            return Pump ? "hand switches: pump" : "hand switches all off";
        return $"hand switches: {house.ZoneLabels(Zones)}{(Pump ? ", pump" : "")}";
    }
}

/// <summary>The pump breaks or is repaired.</summary>
/// <param name="Fault">What is wrong with it from now on.</param>
public sealed record PumpFaultChange(PumpFault Fault) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => Fault switch
    {
        PumpFault.Dead => "the pump no longer turns",
        PumpFault.RunsOn => "the pump's relay is welded: it runs on",
        _ => "the pump is sound again",
    };
}

/// <summary>The flow switch breaks or is repaired.</summary>
/// <param name="Fault">What is wrong with it from now on.</param>
public sealed record FlowSwitchFaultChange(FlowSwitchFault Fault) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => Fault switch
    {
        FlowSwitchFault.StuckOn => "the flow switch sticks at flow",
        FlowSwitchFault.StuckOff => "the flow switch sticks at no flow",
        _ => "the flow switch is sound again",
    };
}

/// <summary>The controller's clock jumps.</summary>
/// <param name="Ms">How far ahead, ms; negative for back.</param>
public sealed record ClockJump(long Ms) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) =>
        $"the controller's clock jumps {(Ms < 0 ? "back" : "ahead")} {Durations.InWords(Math.Abs(Ms))}";
}

/// <summary>The controller's clock stands still.</summary>
/// <param name="Ms">How long, ms.</param>
public sealed record ClockStop(long Ms) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => $"the controller's clock stands still for {Durations.InWords(Ms)}";
}

/// <summary>The power of the whole house goes or comes back. Runs begin with it on.</summary>
/// <param name="On">Whether it is there from now on.</param>
public sealed record PowerChange(bool On) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => On ? "power returns" : "power cut";
}
