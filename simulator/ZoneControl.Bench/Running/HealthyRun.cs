using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>
/// Counting capacity does not show that water moves. So a run in which no equipment is broken owes its pump zero deadhead
/// seconds, seen from the water side, whatever the rules say. With planted faults the script says what it expects.
/// </summary>
internal static class HealthyRun
{
    public static IEnumerable<ExpectationVerdict> Owes(Script script, PlantModel plant)
    {
        if (script.Events.Any(e => Breaks(e.Action)))
            yield break;
        bool met = plant.DeadheadS <= 0;
        yield return new ExpectationVerdict(
            "healthy equipment: no deadhead at all",
            0,
            met,
            null,
            met ? "" : $"the pump was energised for {plant.DeadheadS:0.#} s with less than its minimum flow");
    }

    private static bool Breaks(ScriptAction action) => action switch
    {
        FaultChange change => change.Fault != ActuatorFault.None,
        PumpFaultChange change => change.Fault != PumpFault.None,
        FlowSwitchFaultChange change => change.Fault != FlowSwitchFault.None,
        ContactChange { Kind.Contact: Contact.Supply, Asserted: false } => true,
        _ => false,
    };
}
