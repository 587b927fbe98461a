namespace ZoneControl.Logic.Tests;

/// <summary>Instructions that scans of a house with every contact take, some of whose zones are switched.</summary>
internal sealed class ScanCost
{
    private const int Scans = 5000;

    private readonly ControllerSettings _settings;
    private readonly BoardController _controller;
    private readonly InputImage _contacts = new();
    private readonly OutputImage _outputs = new();
    private long _now;

    public ScanCost(LogicAssembly assembly, int zones)
    {
        _settings = Settings(zones);
        _controller = new BoardController(assembly, _settings);
        Quiet();
        for (int i = 0; i < 100; i++)
            Scan();
    }

    /// <summary>All contacts, every other zone switched, a transformer, exercises: everything that a scan could have to look at.</summary>
    public static ControllerSettings Settings(int zones) => House.OfZones(zones)
        .Switched([.. Enumerable.Range(0, zones).Where(zone => zone % 2 == 1)])
        .Minimum(Math.Min(3, zones))
        .Fit((1 << Contact.Count) - 1)
        .Transformer(deciVa: 60 + 10 * zones, hold: 10, inrush: 60, inrushMs: 500)
        .Exercised(intervalS: 14 * 24 * 3600, retryS: 3600, runMs: 60_000, limitMs: 900_000)
        .Settings();

    /// <summary>A scan in which nothing has changed and nothing is due: nearly all are.</summary>
    public int Idle() => Scan();

    /// <summary>A scan that decides although nothing has changed.</summary>
    public int Whole() => Scan(whole: true);

    /// <summary>
    /// Mean and most of the scans of a busy day: every one decides, a call comes or goes in every third, valves open and shut
    /// all the time, and their switches and the flow switch follow.
    /// </summary>
    public (int Mean, int Most) Busy() => Many(Day);

    /// <summary>The same with everything else moving as well: switches of their own accord, frost, limits, hands, faults.</summary>
    public (int Mean, int Most) Frantic() => Many(random =>
    {
        Day(random);
        if (random.Next(20) == 0)
            _contacts.EndSwitches = random.Next(1 << _settings.ZoneCount);
        switch (random.Next(200))
        {
            case 0: _contacts.Contacts ^= 1 << random.Next(Contact.Count); break;
            case 1: _contacts.ServiceValves ^= 1 << random.Next(_settings.ZoneCount); break;
            case < 10: Quiet(); break;
        }
    });

    /// <summary>Where the instructions of busy scans stand: the mean of each method, dearest first.</summary>
    public IEnumerable<(string Method, int Mean)> ByMethod() =>
        _controller.ByMethod.Select(pair => (pair.Key, (int)(pair.Value / Scans))).OrderByDescending(pair => pair.Item2);

    private (int Mean, int Most) Many(Action<Random> move)
    {
        var random = new Random(5);
        long sum = 0;
        int most = 0;
        _controller.ByMethod.Clear();
        for (int i = 0; i < Scans; i++)
        {
            move(random);
            int took = Scan(whole: true);
            sum += took;
            most = Math.Max(most, took);
        }

        return ((int)(sum / Scans), most);
    }

    private void Day(Random random)
    {
        _contacts.Calls ^= random.Next(3) == 0 ? 1 << random.Next(_settings.ZoneCount) : 0;
        _contacts.EndSwitches = _outputs.Valves & _settings.SwitchedZones;
        _contacts.Set(Contact.Flow, _outputs.Pump);
    }

    private void Quiet()
    {
        Tests.Quiet.Fill(_settings, _contacts);
        _contacts.ServiceValves = 0;
    }

    private int Scan(bool whole = false)
    {
        _now += _settings.ScanPeriodMs;
        return _controller.Scan(_now, _contacts, _outputs, whole);
    }
}
