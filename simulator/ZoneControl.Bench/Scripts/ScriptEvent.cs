using System.Numerics;
using ZoneControl.Bench.Houses;
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

/// <summary>The controller's supply goes or comes back. Runs begin with it on.</summary>
/// <param name="On">Whether it is there from now on.</param>
public sealed record PowerChange(bool On) : ScriptAction
{
    /// <inheritdoc/>
    public override string InWords(House house) => On ? "power returns" : "power cut";
}
