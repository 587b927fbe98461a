using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Web.Live;

/// <summary>How every switch stands and what is broken, as the events so far left it.</summary>
public sealed class Situation
{
    private readonly ActuatorFault[] _faults = [.. Enumerable.Repeat(ActuatorFault.None, ControllerSettings.MostZones)];

    /// <summary>Thermostats asking, one bit a zone.</summary>
    public int Calls { get; private set; }

    /// <summary>Contacts of <see cref="Contact"/> asserted.</summary>
    public int Contacts { get; private set; } = Contact.Supply;

    /// <summary>Hand switches of the zones, one bit each.</summary>
    public int Hands { get; private set; }

    /// <summary>The pump's hand switch.</summary>
    public bool HandPump { get; private set; }

    /// <summary>What is wrong with the pump.</summary>
    public PumpFault Pump { get; private set; }

    /// <summary>What is wrong with the flow switch.</summary>
    public FlowSwitchFault FlowSwitch { get; private set; }

    /// <summary>The house has power.</summary>
    public bool Power { get; private set; } = true;

    /// <summary>What is wrong with a zone's actuator and end switch.</summary>
    public ActuatorFault Fault(int zone) => _faults[zone];

    /// <summary>The situation that events up to a moment made.</summary>
    public static Situation Of(IEnumerable<ScriptEvent> events, long untilMs)
    {
        ArgumentNullException.ThrowIfNull(events);
        var situation = new Situation();
        foreach (ScriptEvent happened in events.TakeWhile(e => e.AtMs <= untilMs))
            situation.Take(happened.Action);
        return situation;
    }

    private void Take(ScriptAction action)
    {
        switch (action)
        {
            case CallChange call:
                Calls = call.Asks ? Calls | call.Zones : Calls & ~call.Zones;
                break;
            case SeasonChange season:
                Set(Contact.Lockout, season.Lockout);
                break;
            case ContactChange contact:
                Set(contact.Kind.Contact, contact.Asserted);
                break;
            case ServiceChange hands:
                (Hands, HandPump) = (hands.Zones, hands.Pump);
                break;
            case FaultChange fault:
                _faults[fault.Zone] = fault.Fault;
                break;
            case PumpFaultChange pump:
                Pump = pump.Fault;
                break;
            case FlowSwitchFaultChange flow:
                FlowSwitch = flow.Fault;
                break;
            case PowerChange power:
                Power = power.On;
                break;
        }
    }

    private void Set(int contact, bool asserted) => Contacts = asserted ? Contacts | contact : Contacts & ~contact;
}
