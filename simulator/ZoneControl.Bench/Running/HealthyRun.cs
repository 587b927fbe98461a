using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>
/// Counting capacity does not show that water moves. So as long as no equipment is broken a run owes its pump zero deadhead
/// seconds, seen from the water side, whatever the rules say. From the first planted fault on the script says what it expects.
/// </summary>
internal static class HealthyRun
{
    public static IEnumerable<ExpectationVerdict> Owes(Script script, Trace trace, PlantModel plant)
    {
        ScriptEvent? broken = script.Events.FirstOrDefault(e => Breaks(e.Action));
        double deadheadS = broken is null
            ? plant.DeadheadS
            : trace.Samples.LastOrDefault(sample => sample.Ms <= broken.AtMs)?.DeadheadS ?? 0;
        bool met = deadheadS <= 0;
        if (broken is not null && met)
            yield break;
        yield return new ExpectationVerdict(
            broken is null ? "healthy equipment: no deadhead at all" : "healthy equipment: no deadhead before the first fault",
            0,
            met,
            null,
            met ? "" : $"the pump was energised for {deadheadS:0.#} s with less than its minimum flow");
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
