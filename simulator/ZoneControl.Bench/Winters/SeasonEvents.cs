using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Winters;

/// <summary>Carries out what happens during a season.</summary>
internal static class SeasonEvents
{
    /// <summary>Refuses what has no meaning in a season.</summary>
    /// <exception cref="ArgumentException">Something else than contacts, hands, power and faults happens, or not in order.</exception>
    public static void Demand(IReadOnlyList<ScriptEvent> events)
    {
        for (int i = 0; i < events.Count; i++)
        {
            if (events[i].Action is CallChange or ClockJump or ClockStop)
            {
                throw new ArgumentException($"event {i + 1} is a {events[i].Action.GetType().Name}; expected anything but calls,"
                    + " which are the thermostats', and clock faults", nameof(events));
            }

            if (i > 0 && events[i].AtMs < events[i - 1].AtMs)
                throw new ArgumentException($"event {i + 1} comes before the one ahead of it", nameof(events));
        }
    }

    public static void Do(ScriptAction action, SeasonSession session, HeatedHouse house)
    {
        switch (action)
        {
            case SeasonChange season:
                session.Wiring.Assert(Contact.Lockout, season.Lockout);
                break;
            case ContactChange contact:
                session.Wiring.Assert(contact.Kind.Contact & ~Contact.Flow, contact.Asserted);
                break;
            case ServiceChange service:
                session.Wiring.Hands = service.Zones;
                session.Wiring.Assert(Contact.ServicePump, service.Pump);
                break;
            case FaultChange fault:
                house.Water.SetFault(fault.Zone, fault.Fault);
                house.Follow();
                break;
            case PumpFaultChange fault:
                session.Wiring.PumpFault = fault.Fault;
                break;
            case FlowSwitchFaultChange fault:
                session.Wiring.FlowSwitchFault = fault.Fault;
                break;
            case PowerChange power:
                session.SetPower(power.On);
                break;
            default:
                throw new NotSupportedException($"A season knows no action {action.GetType().Name}.");
        }

        session.Moved();
    }
}
