using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>
/// A made-up house with made-up contacts, and the controller run on it scan by scan: for asking whether whatever it does is
/// lawful. Everything follows from the seed.
/// </summary>
internal sealed class RandomHouse
{
    private readonly Random _random;
    private readonly int[] _strokeMs;
    private readonly int[] _travelMs;

    // Shows which numbers are the same in every run of one seed; nothing here is secret.
#pragma warning disable CA5394
    public RandomHouse(int seed)
    {
        _random = new Random(seed);
        Settings = RandomSettings();
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
        int period = Settings.ScanPeriodMs;
        int darkScans = 0;
        controller.PowerUp();
        for (int scan = 0; scan < scans; scan++)
        {
            long now = (long)scan * period;
            Disturb(inputs);
            if (darkScans == 0 && Odds(3_000))
                darkScans = _random.Next(1, 200);
            Frame frame;
            if (darkScans > 0)
            {
                frame = new Frame { Ms = now, Unpowered = true };
                if (--darkScans == 0)
                    controller.PowerUp();
            }
            else
            {
                controller.Scan(now, inputs, outputs);
                frame = Frame.From(outputs) with { Ms = now };
            }

            if (frames.Count == 0 || frame.PowerUp || !frame.ShowsTheSameAs(frames[^1]))
                frames.Add(frame);
            Move(frame.Valves, inputs);
        }

        return new Trace(frames, [], (long)scans * period);
    }

    private bool Odds(int one) => _random.Next(one) == 0;

    // Quiet spells and busy ones: a contact changes every few scans or every few thousand.
    private void Disturb(InputImage inputs)
    {
        if (Odds(400))
            inputs.Calls ^= 1 << _random.Next(Settings.ZoneCount);
        if (Odds(1_500))
            inputs.Calls = _random.Next(1 << Settings.ZoneCount);
        if (Odds(4_000))
            inputs.Lockout = !inputs.Lockout;
        if (inputs.Lockout && Odds(300))
            inputs.Lockout = false;
        if (Odds(1_500))
        {
            int zone = _random.Next(Settings.ZoneCount);
            _strokeMs[zone] = RandomStroke(zone);
        }

        if (Odds(2_000))
            inputs.Calls = 0;
    }

    private void Move(int valves, InputImage inputs)
    {
        int made = 0;
        for (int zone = 0; zone < Settings.ZoneCount; zone++)
        {
            int step = (valves & (1 << zone)) != 0 ? Settings.ScanPeriodMs : -Settings.ScanPeriodMs;
            _travelMs[zone] = Math.Clamp(_travelMs[zone] + step, 0, Math.Min(_strokeMs[zone], 100_000));
            if (_travelMs[zone] >= _strokeMs[zone])
                made |= 1 << zone;
        }

        // A loose contact flickers for a scan.
        inputs.EndSwitches = Odds(300) ? made ^ (1 << _random.Next(Settings.ZoneCount)) : made;
    }

    private int RandomStroke(int zone) => _random.Next(10) switch
    {
        0 => 0,
        1 => Settings.SwitchMinMs[zone] / 2,
        2 => 1_000_000,
        3 => Settings.SwitchLimitMs[zone] + _random.Next(-300, 300),
        _ => Settings.SwitchMinMs[zone] + _random.Next(Math.Max(1, Settings.SwitchLimitMs[zone] - Settings.SwitchMinMs[zone])),
    };

    private ControllerSettings RandomSettings()
    {
        while (true)
        {
            ControllerSettings s = OneGuess();
            if (SettingsCheck.FirstMistake(s) is null)
                return s;
        }
    }

    private ControllerSettings OneGuess()
    {
        int zones = _random.Next(1, 6);
        int[] order = [.. Enumerable.Range(0, zones).OrderBy(_ => _random.Next())];
        int[] opening = Each(zones, 300, 8_000);
        int lead = _random.Next(100, 2_000);
        return new ControllerSettings
        {
            ZoneCount = zones,
            ScanPeriodMs = 100,
            Capacity = Each(zones, 1, 4),
            StandingCapacity = _random.Next(3),
            MinimumOpen = _random.Next(1, 6),
            SwitchedZones = _random.Next(1 << zones),
            OpeningMs = opening,
            ClosingMs = Each(zones, 300, 8_000),
            SwitchMinMs = Each(zones, 0, 2_000),
            SwitchLimitMs = [.. opening.Select(ms => ms + _random.Next(0, 6_000))],
            ValveRetries = _random.Next(4),
            CompanionOrder = [.. order.Take(_random.Next(zones + 1))],
            PumpStartDelayMs = _random.Next(2) * _random.Next(10_000),
            PumpOverrunMs = lead + (_random.Next(2) * _random.Next(10_000)),
            PumpRundownMs = 100 + (_random.Next(2) * _random.Next(6_000)),
            HeatLeadMs = lead,
            CallDebounceMs = _random.Next(2) * _random.Next(1_000),
            SwitchDebounceMs = _random.Next(2) * _random.Next(500),
            SeasonDebounceMs = _random.Next(2) * _random.Next(1_000),
        };
    }

    private int[] Each(int zones, int least, int below)
    {
        int[] values = new int[zones];
        for (int zone = 0; zone < zones; zone++)
            values[zone] = _random.Next(least, below);
        return values;
    }
#pragma warning restore CA5394
}
