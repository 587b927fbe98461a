using ZoneControl.Logic;

namespace ZoneControl.Bench.Running;

/// <summary>
/// The pump wired straight to the calls, as most houses have it (common practice): a thermostat energises its valves and,
/// through a common relay, pump and heat source at the same moment. It knows nothing of seasons or end switches.
/// </summary>
public sealed class StraightWiring : IController
{
    private readonly int _zones;
    private bool _scanned;

    /// <summary>Builds it for as many zones as the settings name.</summary>
    public StraightWiring(ControllerSettings settings) => _zones = (1 << settings.ZoneCount) - 1;

    /// <inheritdoc/>
    public string Name => "pump straight to the calls";

    /// <inheritdoc/>
    public void PowerUp() => _scanned = false;

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        int calls = inputs.Calls & _zones;
        outputs.PowerUp = !_scanned;
        _scanned = true;
        outputs.AcceptedCalls = calls;
        outputs.AcceptedSwitches = inputs.EndSwitches & _zones;
        outputs.AcceptedLockout = inputs.Lockout;
        outputs.Valves = calls;
        outputs.Pump = calls != 0;
        outputs.Heat = calls != 0;
        outputs.Hold = HoldReason.None;
        outputs.ScanMs = nowMs;
        outputs.NextDeadlineMs = ZoneController.Never;
    }
}
