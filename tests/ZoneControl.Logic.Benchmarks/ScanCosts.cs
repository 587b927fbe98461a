using BenchmarkDotNet.Attributes;
using ZoneControl.Logic.Tests;

namespace ZoneControl.Logic.Benchmarks;

/// <summary>A thousand scans as a ratio to an empty loop of a thousand turns with one integer add.</summary>
[MemoryDiagnoser]
public class ScanCosts
{
    private const int Scans = 1000;

    private readonly InputImage _contacts = new();
    private readonly OutputImage _outputs = new();
    private ControllerSettings _settings = null!;
    private ZoneController _controller = null!;
    private long _now;
    private int _turn;

    /// <summary>Zones of the house.</summary>
    [Params(1, 6, 16)]
    public int Zones { get; set; }

    /// <summary>A house at rest.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        _settings = ScanCost.Settings(Zones);
        _controller = new ZoneController(_settings);
        Quiet.Fill(_settings, _contacts);
        Idle();
    }

    /// <summary>What all is measured by.</summary>
    [Benchmark(Baseline = true)]
    public int EmptyLoop()
    {
        int sum = 0;
        for (int i = 0; i < Scans; i++)
            sum += _turn;
        return sum;
    }

    /// <summary>Nothing changes and nothing is due: nearly all scans.</summary>
    [Benchmark]
    public bool Idle()
    {
        for (int i = 0; i < Scans; i++)
            _controller.Scan(_now += _settings.ScanPeriodMs, _contacts, _outputs);
        return _outputs.Pump;
    }

    /// <summary>Every scan decides; a call comes or goes in every third, and switches and flow follow.</summary>
    [Benchmark]
    public bool Busy()
    {
        for (int i = 0; i < Scans; i++)
        {
            if (++_turn % 3 == 0)
                _contacts.Calls ^= 1 << _turn * 7 % Zones;
            _contacts.EndSwitches = _outputs.Valves & _settings.SwitchedZones;
            _contacts.Set(Contact.Flow, _outputs.Pump);
            _controller.ScanWhole(_now += _settings.ScanPeriodMs, _contacts, _outputs);
        }

        return _outputs.Pump;
    }
}
