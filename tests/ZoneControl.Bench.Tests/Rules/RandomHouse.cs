using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>
/// A made-up house with made-up contacts, and the controller run on it scan by scan: for asking whether whatever it does is
/// lawful. Everything follows from the seed. One house in three has thermostats, end switches and a season contact and no
/// more; half of the others fail in their clock as well, and keep every scan for that.
/// </summary>
internal sealed class RandomHouse
{
    private readonly Random _random;
    private readonly RandomContacts _contacts;
    private readonly int[] _strokeMs;
    private readonly int[] _travelMs;
    private readonly bool _clockFails;

    // Shows which numbers are the same in every run of one seed; nothing here is secret.
#pragma warning disable CA5394
    public RandomHouse(int seed)
    {
        _random = new Random(seed);
        _clockFails = seed % 3 == 1;
        Settings = RandomSettings.For(_random, plain: seed % 3 == 0);
        _contacts = new RandomContacts(_random, Settings);
        _strokeMs = new int[Settings.ZoneCount];
        _travelMs = new int[Settings.ZoneCount];
        for (int zone = 0; zone < Settings.ZoneCount; zone++)
            _strokeMs[zone] = RandomStroke(zone);
    }

    public ControllerSettings Settings { get; }

    /// <summary>The frames of a run of so many scans.</summary>
    public Trace Run(Func<ControllerSettings, IController> build, int scans)
    {
        IController controller = build(Settings);
        var inputs = new InputImage();
        var outputs = new OutputImage();
        var frames = new List<Frame>();
        int darkScans = 0;
        long now = 0;
        controller.PowerUp();
        for (int scan = 0; scan < scans; scan++)
        {
            _contacts.Disturb(inputs, outputs.Pump);
            if (Odds(1_500))
            {
                int zone = _random.Next(Settings.ZoneCount);
                _strokeMs[zone] = RandomStroke(zone);
            }

            if (darkScans == 0 && Odds(3_000))
                darkScans = _random.Next(1, 200);
            Frame frame;
            if (darkScans > 0)
            {
                frame = new Frame { Ms = now, Unpowered = true };
                outputs.Pump = false;
                if (--darkScans == 0)
                    controller.PowerUp();
            }
            else
            {
                controller.Scan(now, inputs, outputs);
                frame = Frame.From(outputs) with { Ms = now };
            }

            if (_clockFails || frames.Count == 0 || frame.PowerUp || !frame.ShowsTheSameAs(frames[^1]))
                frames.Add(frame);
            Move(frame.Open(Settings), inputs);
            now = Next(now, outputs.NextDeadlineMs);
        }

        return new Trace(frames, [], now) { EveryScan = _clockFails };
    }

    private int _standsStill;

    // The next scan's time: mostly a period later.
    private long Next(long now, long deadlineMs)
    {
        if (_standsStill > 0)
        {
            _standsStill--;
            return now;
        }

        if (_clockFails && Odds(2_000))
        {
            switch (_random.Next(3))
            {
                case 0:
                    return Math.Max(0, now - _random.Next(1, 30_000));
                case 1:
                    _standsStill = _random.Next(2 * Settings.StallScans);
                    return now;
                default:
                    if (deadlineMs != ZoneController.Never)
                        return Math.Max(now, deadlineMs) + Settings.StallLimitMs + _random.Next(1, 20_000);
                    break;
            }
        }

        return now + Settings.ScanPeriodMs;
    }

    private bool Odds(int one) => _random.Next(one) == 0;

    private void Move(int open, InputImage inputs)
    {
        int made = 0;
        for (int zone = 0; zone < Settings.ZoneCount; zone++)
        {
            int step = (open & (1 << zone)) != 0 ? Settings.ScanPeriodMs : -Settings.ScanPeriodMs;
            _travelMs[zone] = Math.Clamp(_travelMs[zone] + step, 0, Math.Min(_strokeMs[zone], 100_000));
            if (_travelMs[zone] >= _strokeMs[zone])
                made |= 1 << zone;
        }

        // A loose contact flickers for a scan.
        made = Odds(300) ? made ^ (1 << _random.Next(Settings.ZoneCount)) : made;
        inputs.EndSwitches = made ^ Settings.InvertedSwitches;
    }

    private int RandomStroke(int zone) => _random.Next(10) switch
    {
        0 => 0,
        1 => Settings.SwitchMinMs[zone] / 2,
        2 => 1_000_000,
        3 => Settings.SwitchLimitMs[zone] + _random.Next(-300, 300),
        _ => Settings.SwitchMinMs[zone] + _random.Next(Math.Max(1, Settings.SwitchLimitMs[zone] - Settings.SwitchMinMs[zone])),
    };
#pragma warning restore CA5394
}

/// <summary>What a frame means for the valves of a house.</summary>
internal static class FrameValves
{
    /// <summary>Valves that are energised, by the controller or by a panel.</summary>
    public static int Open(this Frame frame, ControllerSettings house) =>
        (frame.Valves & house.DrivenZones) | (frame.Senses & house.GatedZones);
}
