using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>Faults of the pump itself.</summary>
public enum PumpFault
{
    /// <summary>None.</summary>
    None,

    /// <summary>It does not turn whatever it is told: seized, or a broken wire.</summary>
    Dead,

    /// <summary>It runs whatever it is told: its relay is welded.</summary>
    RunsOn,
}

/// <summary>Faults of a flow switch.</summary>
public enum FlowSwitchFault
{
    /// <summary>None.</summary>
    None,

    /// <summary>It says flow whatever the water does.</summary>
    StuckOn,

    /// <summary>It says no flow whatever the water does.</summary>
    StuckOff,
}

/// <summary>
/// What lies between plant and controller: contacts with their polarity, the panel of gated zones, the supplies, and what is
/// broken in pump and flow switch.
/// </summary>
internal sealed class BenchWiring(ControllerSettings settings, PlantModel plant)
{
    private readonly int _inverted = (settings.InvertedContacts | Contact.AssertedOpen) & settings.FittedContacts;
    private readonly int _zones = (1 << settings.ZoneCount) - 1;
    private int _asserted = Contact.Supply;

    /// <summary>Flow at which the flow switch makes, m³/s.</summary>
    public double FlowSwitchAtM3s { get; init; } = plant.Description.Pump.MinimumFlowM3s;

    /// <summary>Thermostats asking for heat, one bit a zone.</summary>
    public int Calls { get; set; }

    /// <summary>Hand switches that ask for a zone's valves, one bit a zone.</summary>
    public int Hands { get; set; }

    public PumpFault PumpFault { get; set; }

    public FlowSwitchFault FlowSwitchFault { get; set; }

    /// <summary>The house has power: controller, panel and pump.</summary>
    public bool Powered { get; set; } = true;

    /// <summary>The flow switch has to be watched closely while flow may change.</summary>
    public bool WatchesFlow => settings.Has(Contact.Flow);

    /// <summary>Contacts of <see cref="Contact"/> asserted before debounce, fitted ones only.</summary>
    public int Contacts => (_asserted | (SeesFlow ? Contact.Flow : 0)) & settings.FittedContacts;

    /// <summary>Gated valves that the panel energises, one bit a zone.</summary>
    public int Senses => Calls & settings.GatedZones & Supplied;

    /// <summary>End switches made, one bit a zone.</summary>
    public int Switches => plant.EndSwitches & _zones;

    private int Supplied => Powered && (_asserted & Contact.Supply) != 0 ? _zones : 0;

    private bool SeesFlow => FlowSwitchFault switch
    {
        FlowSwitchFault.StuckOn => true,
        FlowSwitchFault.StuckOff => false,
        _ => plant.PumpFlowM3s >= FlowSwitchAtM3s,
    };

    /// <summary>Asserts or releases contacts; those of a house that lacks them move nothing but what hangs on them.</summary>
    public void Assert(int contacts, bool asserted) => _asserted = asserted ? _asserted | contacts : _asserted & ~contacts;

    /// <summary>The contacts as the controller's terminals see them.</summary>
    public void Read(InputImage image)
    {
        image.Calls = (Calls ^ settings.InvertedCalls) & settings.DrivenZones;
        image.EndSwitches = (Switches ^ settings.InvertedSwitches) & settings.SwitchedZones;
        image.Senses = (Senses ^ settings.InvertedSenses) & settings.GatedZones;
        image.ServiceValves = Hands & settings.DrivenZones;
        image.Contacts = (Contacts ^ _inverted) & settings.FittedContacts;
    }

    /// <summary>Drives the plant with what a controller wants, as far as supplies, panel and pump let it.</summary>
    public void Drive(in Frame wanted)
    {
        int valves = ((wanted.Valves & settings.DrivenZones) | Senses) & Supplied;
        bool pump = PumpFault switch
        {
            PumpFault.Dead => false,
            PumpFault.RunsOn => Powered,
            _ => wanted.Pump,
        };
        plant.Drive(valves, pump, wanted.Heat);
    }
}
