using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Web.Live;

/// <summary>One plant with one controller, moved on scan by scan along a list of events.</summary>
public sealed class Rig
{
    private readonly BenchSession _session;
    private readonly LibraryController? _library;
    private readonly WarmWay _warm;
    private int _next;

    /// <summary>Builds it and makes the first scan, at time 0.</summary>
    /// <param name="house">The house.</param>
    /// <param name="conditions">Conditions of the run.</param>
    /// <param name="build">Builds what drives it.</param>
    /// <param name="events">Events in order of time; those of time 0 happen before the first scan.</param>
    public Rig(House house, ScriptConditions conditions, Func<ControllerSettings, IController> build, IReadOnlyList<ScriptEvent> events)
    {
        ArgumentNullException.ThrowIfNull(house);
        ControllerSettings settings = house.ToSettings();
        Plant = new PlantModel(house.ToPlant(conditions));
        ArgumentNullException.ThrowIfNull(build);
        IController controller = build(house.ToSettings());
        _library = controller as LibraryController;
        Name = controller.Name;
        _session = new BenchSession(settings, Plant, controller, house.Pump.FlowSwitchAtM3s.Value);
        _session.SetLockout(false); // runs begin in the heating season
        _warm = new WarmWay(Plant);
        Step(events, 0);
    }

    /// <summary>What drives it, in words.</summary>
    public string Name { get; }

    /// <summary>The water side.</summary>
    public PlantModel Plant { get; }

    /// <summary>Time of the last scan, ms.</summary>
    public long NowMs => _session.NowMs;

    /// <summary>Time between scans, ms.</summary>
    public long PeriodMs => _session.PeriodMs;

    /// <summary>What the controller showed at the last scan.</summary>
    public Frame Shown => _session.Shown;

    /// <summary>Everything recorded so far. It goes on growing.</summary>
    public Trace Trace => _session.Finish(_session.NowMs);

    /// <summary>How far warm water has come in a zone's loops, 0 to 1; for drawings only.</summary>
    public double WarmShare(int zone) => _warm.Zone(zone);

    /// <summary>How far warm water has come in the mains, 0 to 1; for drawings only.</summary>
    public double WarmMains => _warm.Mains;

    /// <summary>The conditions between "wanted" and "on"; false, and the lists untouched, where nothing is asked.</summary>
    public bool Explain(ConditionList pump, ConditionList heat)
    {
        if (_library is null || Shown.Unpowered)
            return false;
        _library.Explain(pump, heat);
        return true;
    }

    /// <summary>Moves on to the next scan at which anything could change, at most to <paramref name="limitMs"/>.</summary>
    /// <returns>Whether the controller shows something else than before.</returns>
    public bool Step(IReadOnlyList<ScriptEvent> events, long limitMs)
    {
        ArgumentNullException.ThrowIfNull(events);
        Frame before = Shown;
        long due = Math.Min(Runner.NextEventMs(events, _next, _session), limitMs);
        _session.AdvanceTo(_session.NextScanMs(due));
        for (; _next < events.Count && events[_next].AtMs <= _session.PlantMs; _next++)
            Runner.Do(events[_next].Action, _session);
        _warm.Step(_session.PlantMs);
        _session.Scan();
        _warm.Heat = Shown.Heat;
        return !Shown.ShowsTheSameAs(before);
    }
}
