using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>
/// The compiled firmware on virtual pins: contacts go in through the pins and chains that the plan names, and its outputs are
/// what the relays at the other end do.
/// </summary>
public sealed class FirmwareController : IController
{
    // Between scans AC contacts are sampled; what was longer ago than this bears on nothing.
    private const int SampledUs = 60_000;
    private const int SampleUs = 5_000;

    private readonly FirmwareImage _image;
    private readonly BoardPlan _plan;
    private readonly int[] _words;
    private readonly string[] _names;
    private readonly string _stated;
    private readonly int _periodMs;
    private readonly InputImage _before = new();
    private readonly List<string> _log = [];
    private FirmwareProgram _program;
    private long? _lastMs;

    /// <summary>Loads the firmware and powers its board up.</summary>
    /// <param name="house">The house.</param>
    /// <param name="plan">The pin plan; the house's own unless another is to be tried.</param>
    /// <param name="stated">The fingerprint that is stated beside the settings; null for the right one.</param>
    /// <exception cref="FileNotFoundException">The program's folder lacks the firmware.</exception>
    public FirmwareController(House house, BoardPlan? plan = null, string? stated = null)
    {
        _image = new FirmwareImage(FirmwareImage.Folder);
        _plan = plan ?? PinPlanner.Of(house);
        ControllerSettings settings = house.ToSettings();
        _words = SettingsWords.Of(settings, _plan);
        _names = [.. house.Zones.Select(zone => zone.Name)];
        FingerprintText = Board.Fingerprint.Text(Board.Fingerprint.Of(_words, _names));
        _stated = stated ?? FingerprintText;
        _periodMs = settings.ScanPeriodMs;
        (Hardware, _program) = Boot();
    }

    /// <inheritdoc/>
    public string Name => "with the firmware";

    /// <summary>The fingerprint of settings, plan and names.</summary>
    public string FingerprintText { get; }

    /// <summary>The hardware around the chip.</summary>
    public VirtualHardware Hardware { get; private set; }

    /// <summary>The program that runs on it.</summary>
    public FirmwareProgram Program => _program;

    /// <summary>Lines that it has logged so far, those before a power cut included.</summary>
    public IReadOnlyList<string> Log => _log;

    /// <summary>Every scan is made, so that the heartbeat is seen as it is; else it is taken to have gone on between scans.</summary>
    public bool EveryScan { get; init; }

    /// <inheritdoc/>
    public void PowerUp()
    {
        _lastMs = null;
        (Hardware, _program) = Boot();
    }

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        if (_plan.AcKinds != 0 && _lastMs is { } last)
            SampleUpTo(nowMs * 1000, last * 1000);
        Hardware.NowUs = nowMs * 1000;
        if (!EveryScan)
            Hardware.KeepBeating();
        Hardware.SetContacts(inputs);
        _program.Scan();
        _program.CopyPublished(outputs);
        Hardware.ShowOutputs(outputs, _periodMs);
        while (_program.NextLine() is { } line)
            _log.Add(line);
        Copy(inputs, _before);
        _lastMs = nowMs;
    }

    private void SampleUpTo(long nowUs, long lastUs)
    {
        Hardware.SetContacts(_before);
        for (long us = Math.Max(lastUs + SampleUs, nowUs - SampledUs); us < nowUs; us += SampleUs)
        {
            Hardware.NowUs = us;
            _program.Sample();
        }
    }

    private (VirtualHardware, FirmwareProgram) Boot()
    {
        VirtualHardware hardware = VirtualHardware.Of(_plan);
        FirmwareProgram program = _image.PowerUp(_words, _names, _stated, hardware, () => hardware.NowUs);
        program.Start();
        return (hardware, program);
    }

    private static void Copy(InputImage from, InputImage to)
    {
        to.Calls = from.Calls;
        to.EndSwitches = from.EndSwitches;
        to.Senses = from.Senses;
        to.ServiceValves = from.ServiceValves;
        to.Contacts = from.Contacts;
    }
}
