using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Web.Live;

/// <summary>Something that happens on a bench. A fault of an actuator holds only what it adds; a repair clears all.</summary>
/// <param name="Event">What and when.</param>
/// <param name="ByHand">Whether a hand did it here, or a script planned it.</param>
internal sealed record LiveEvent(ScriptEvent Event, bool ByHand);

/// <summary>
/// Faults of one zone add up until it is repaired, as in script files: between what each adds, which stays true when events
/// come and go before it, and what the zone suffers then, which is what a session is told.
/// </summary>
internal static class FaultSums
{
    /// <summary>Events with all that a zone suffers, made from events with what each adds.</summary>
    public static List<ScriptEvent> AddUp(IEnumerable<ScriptEvent> events) =>
        Walk(events, (before, fault) => fault == ActuatorFault.None ? fault : Both(before, fault), (_, now) => now);

    /// <summary>Events with what each adds, made from events with all that a zone suffers.</summary>
    public static List<ScriptEvent> TakeApart(IEnumerable<ScriptEvent> events) =>
        Walk(events, (_, fault) => fault, (before, now) => now == ActuatorFault.None ? now : Added(before, now));

    private static List<ScriptEvent> Walk(
        IEnumerable<ScriptEvent> events,
        Func<ActuatorFault, ActuatorFault, ActuatorFault> suffered,
        Func<ActuatorFault, ActuatorFault, ActuatorFault> told)
    {
        var faults = new Dictionary<int, ActuatorFault>();
        var result = new List<ScriptEvent>();
        foreach (ScriptEvent happened in events)
        {
            if (happened.Action is not FaultChange change)
            {
                result.Add(happened);
                continue;
            }

            ActuatorFault before = faults.GetValueOrDefault(change.Zone, ActuatorFault.None);
            ActuatorFault now = suffered(before, change.Fault);
            faults[change.Zone] = now;
            result.Add(happened with { Action = change with { Fault = told(before, now) } });
        }

        return result;
    }

    private static ActuatorFault Both(ActuatorFault before, ActuatorFault added) => new()
    {
        Stuck = before.Stuck || added.Stuck,
        Dead = before.Dead || added.Dead,
        Slowness = added.Slowness != 1 ? added.Slowness : before.Slowness,
        Switch = added.Switch != SwitchFault.None ? added.Switch : before.Switch,
    };

    private static ActuatorFault Added(ActuatorFault before, ActuatorFault now) => new()
    {
        Stuck = now.Stuck && !before.Stuck,
        Dead = now.Dead && !before.Dead,
        Slowness = now.Slowness,
        Switch = now.Switch == before.Switch ? SwitchFault.None : now.Switch,
    };
}
