using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>Something to buy for a protection.</summary>
/// <param name="Part">Its name, as prices call it: "bypass".</param>
/// <param name="Count">How many.</param>
public sealed record PartCount(string Part, int Count);

/// <summary>One way to keep a pump from deadheading, or none.</summary>
/// <param name="Name">Name for tables, short.</param>
/// <param name="Explains">What it is, in a sentence.</param>
/// <param name="House">The house with what it needs built in, or taken out.</param>
/// <param name="Build">Builds what drives valves, pump and heat.</param>
/// <param name="Parts">What has to be bought for it.</param>
public sealed record Protection(
    string Name, string Explains, House House, Func<ControllerSettings, IController> Build, IReadOnlyList<PartCount> Parts)
{
    /// <summary>Why the pump may still get too little under it in this house, as a sentence; "" where nothing is known beforehand.</summary>
    public string Remark { get; init; } = "";

    /// <summary>Zones whose valves stand open day and night, one bit each.</summary>
    public int HeldOpen { get; init; }

    /// <summary>Whether events can break anything here: a valve that is held open by hand stays so.</summary>
    public bool FeltBy(IReadOnlyList<ScriptEvent> events) =>
        !events.Any(e => e.Action is FaultChange fault && (HeldOpen & (1 << fault.Zone)) != 0);

    /// <summary>
    /// Events of a run as they come about under this protection: a valve that is held open by hand stays so once it is open,
    /// whatever becomes of its actuator or the power.
    /// </summary>
    public IReadOnlyList<ScriptEvent> Under(IReadOnlyList<ScriptEvent> events)
    {
        ArgumentNullException.ThrowIfNull(events);
        if (HeldOpen == 0)
            return events;
        int[] held = [.. Enumerable.Range(0, House.Zones.Count).Where(zone => (HeldOpen & (1 << zone)) != 0)];
        return
        [
            .. held.Select(zone => new ScriptEvent(
                (long)House.Zones[zone].ProofTime.Value.TotalMilliseconds, new FaultChange(zone, new ActuatorFault { Stuck = true }, "is held open")))
            .Concat(events.Select(e => e.Action is FaultChange fault && held.Contains(fault.Zone)
                ? e with { Action = fault with { Fault = fault.Fault with { Stuck = true } } }
                : e))
            .OrderBy(e => e.AtMs),
        ];
    }
}
