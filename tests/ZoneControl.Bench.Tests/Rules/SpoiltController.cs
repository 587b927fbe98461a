using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>
/// The controller with one thing broken: built from other settings than it is judged by, fed other contacts, or with its
/// outputs changed on the way; or given the time by a clock that never fails.
/// </summary>
internal sealed class SpoiltController(
    ControllerSettings settings,
    Action<InputImage>? contacts = null,
    Action<OutputImage, OutputImage>? outputs = null,
    bool forgetsPowerUp = false,
    bool trustsClock = false) : IController
{
    private readonly LibraryController _sound = new(settings);
    private readonly InputImage _fed = new();
    private readonly OutputImage _before = new();
    private bool _started;
    private long _scans;

    public string Name => "spoilt";

    public void PowerUp()
    {
        if (!forgetsPowerUp || !_started)
            _sound.PowerUp();
        _started = true;
    }

    public void Scan(long nowMs, InputImage inputs, OutputImage image)
    {
        _fed.Calls = inputs.Calls;
        _fed.EndSwitches = inputs.EndSwitches;
        _fed.Senses = inputs.Senses;
        _fed.ServiceValves = inputs.ServiceValves;
        _fed.Contacts = inputs.Contacts;
        contacts?.Invoke(_fed);
        _sound.Scan(trustsClock ? _scans++ * settings.ScanPeriodMs : nowMs, _fed, image);
        if (!image.PowerUp)
            outputs?.Invoke(image, _before);
        _before.Valves = image.Valves;
        _before.Pump = image.Pump;
        _before.Heat = image.Heat;
        _before.AcceptedCalls = image.AcceptedCalls;
        _before.AcceptedContacts = image.AcceptedContacts;
        _before.AcceptedHands = image.AcceptedHands;
        _before.AcceptedSenses = image.AcceptedSenses;
        _before.LatchedValves = image.LatchedValves;
        _before.Alarms = image.Alarms;
        _before.ProvenValves = image.ProvenValves;
    }
}
