using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Seasons;

/// <summary>Who looks at the manifold while a run on virtual pins goes on.</summary>
public enum Onlooker
{
    /// <summary>Nobody: only contacts speak.</summary>
    Nobody,

    /// <summary>A person who sees stems and flow glasses, feels warmth and hears the pump.</summary>
    Person,
}

/// <summary>
/// The commissioning run: strokes each zone with the pump off, then lets the pump run with sets of zones that reach minimum
/// open and between them cover every zone. It uses nothing but the controller's hand switches and what the controller shows,
/// so any controller can be put through it.
/// </summary>
public static class Commissioner
{
    private const double StrokesShare = 0.7; // of the work, for progress

    /// <summary>Makes the run on virtual pins.</summary>
    /// <param name="house">The house; where it has no hand switches it is taken to have them for the run (<see cref="WithHands"/>).</param>
    /// <param name="installation">How the house is wired, mistakes included.</param>
    /// <param name="build">Builds the controller for the house as it is taken to be: the library or the compiled firmware.</param>
    /// <param name="onlooker">Who looks at the manifold.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="asked">A person who is asked instead of <paramref name="onlooker"/>; null for none.</param>
    /// <param name="cancel">Stops the run.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static CommissioningRun Run(
        House house,
        Installation installation,
        Func<House, IController> build,
        Onlooker onlooker = Onlooker.Person,
        IProgress<double>? progress = null,
        IWitness? asked = null,
        CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(installation);
        ArgumentNullException.ThrowIfNull(build);
        House handed = WithHands(house);
        ControllerSettings settings = handed.ToSettings();
        var plant = new PlantModel(handed.ToPlant(new ScriptConditions(20, 20)));
        foreach ((int zone, ActuatorFault fault) in installation.Actuators)
            plant.SetFault(zone, fault);
        var controller = new InstalledController(build(handed), installation);
        var session = new BenchSession(settings, plant, controller, handed.Pump.FlowSwitchAtM3s.Value);
        session.SetLockout(settings.Has(Contact.Lockout));
        IWitness witness = asked ?? (onlooker == Onlooker.Person ? new VirtualPerson(plant, installation) : new NobodyThere());
        return Run(handed, new HandDesk(settings, session, controller, witness, cancel), progress);
    }

    /// <summary>
    /// The house with hand switches, and with time enough for a stroke by hand: what a board is given for a commissioning run
    /// where no switches are fitted for good and jumpers stand in for them.
    /// </summary>
    public static House WithHands(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        if (house.Contacts.Service)
            return house;
        TimeSpan slowest = house.Zones.Max(zone => zone.SwitchLimit.Value + zone.ProofTime.Value);
        long ticks = Math.Clamp(3 * slowest.Ticks, house.Controller.ServiceLimit.Value.Ticks, TimeSpan.FromDays(1).Ticks);
        return house with
        {
            Contacts = house.Contacts with { Service = true },
            Controller = house.Controller with
            {
                ServiceLimit = Setting.Derived(TimeSpan.FromTicks(ticks), "long enough for a stroke by hand"),
            },
        };
    }

    private static CommissioningRun Run(House house, HandDesk desk, IProgress<double>? progress)
    {
        // At power-up the controller takes every valve as just released; only then can it say which switch is stuck.
        desk.Wait(desk.SlowestClosingMs + (2 * desk.Settings.SwitchDebounceMs) + 1000);
        bool? heard = desk.Witness.PumpHeard();
        bool flow = desk.SeesFlow;
        if (heard == true)
            return AtRest(house, desk, flow);
        var strokes = new List<Stroke>();
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            strokes.Add(StrokeTest.Of(desk, zone));
            progress?.Report(StrokesShare * (zone + 1) / house.Zones.Count);
        }

        // A pump that runs with a valve's output, or by itself, is not told to run as well: its wire comes first.
        bool unasked = strokes.Exists(stroke => stroke.BrokenOff);
        IReadOnlyList<int> sets = unasked ? [] : TrialSets.Of(house, strokes);
        var test = new FlowTest(house, desk);
        var trials = new List<FlowTrial>();
        foreach (int set in sets)
        {
            trials.Add(test.Of(set));
            progress?.Report(StrokesShare + ((1 - StrokesShare) * trials.Count / sets.Count));
        }

        return new CommissioningRun(strokes, trials, heard, flow, desk.Settings.Has(Contact.Flow), desk.NowMs / 60_000.0)
        {
            BrokenOff = unasked ? HandDesk.WaterMoves : "",
        };
    }

    /// <summary>
    /// The pump runs with every valve shut: the run is broken off. One thing is still tried, with all valves open at once so that
    /// water has somewhere to go: whether it stops when it is told to run.
    /// </summary>
    private static CommissioningRun AtRest(House house, HandDesk desk, bool flow)
    {
        const string Why = "the pump ran before anything was told to";
        int all = house.Zones.Select((zone, i) => zone.Gated ? 0 : 1 << i).Sum();
        List<FlowTrial> trials = all == 0 ? [] : [new FlowTest(house, desk).Of(all)];
        return new CommissioningRun(
            [.. house.Zones.Select((_, i) => new Stroke { Zone = i, NotTried = Why })], trials, true, flow, desk.Settings.Has(Contact.Flow),
            desk.NowMs / 60_000.0)
        {
            BrokenOff = Why,
        };
    }
}
