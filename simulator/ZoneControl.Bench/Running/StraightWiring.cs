using ZoneControl.Logic;

namespace ZoneControl.Bench.Running;

/// <summary>
/// The pump wired straight to the calls, as most houses have it (common practice): a thermostat energises its valves and,
/// through a common relay, pump and heat source at the same moment. It knows nothing of seasons, end switches or
/// any other contact; a house panel's gated valves start the pump as well.
/// </summary>
public sealed class StraightWiring : IController
{
    private readonly ControllerSettings _settings;
    private readonly int _zones;
    private readonly int _inverted;
    private bool _scanned;

    /// <summary>Builds it for as many zones as the settings name.</summary>
    public StraightWiring(ControllerSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        _settings = settings;
        _zones = (1 << settings.ZoneCount) - 1;
        _inverted = (settings.InvertedContacts | Contact.AssertedOpen) & settings.FittedContacts;
    }

    /// <inheritdoc/>
    public string Name => "pump straight to the calls";

    /// <inheritdoc/>
    public bool Debounces => false;

    /// <inheritdoc/>
    public void PowerUp() => _scanned = false;

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        int thermostats = (inputs.Calls ^ _settings.InvertedCalls) & _settings.DrivenZones;
        int senses = (inputs.Senses ^ _settings.InvertedSenses) & _settings.GatedZones;
        int calls = thermostats | senses;
        outputs.PowerUp = !_scanned;
        _scanned = true;
        outputs.AcceptedCalls = thermostats;
        outputs.AcceptedSwitches = (inputs.EndSwitches ^ _settings.InvertedSwitches) & _settings.SwitchedZones & _zones;
        outputs.AcceptedSenses = senses;
        outputs.AcceptedContacts = (inputs.Contacts ^ _inverted) & _settings.FittedContacts;
        outputs.Valves = thermostats;
        outputs.Pump = calls != 0;
        outputs.Heat = calls != 0;
        outputs.Hold = HoldReason.None;
        outputs.ScanMs = nowMs;
        outputs.NextDeadlineMs = ZoneController.Never;
    }
}
