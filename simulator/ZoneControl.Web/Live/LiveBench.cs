using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Web.Live;

/// <summary>
/// One person's bench: a house, what was done to it so far, and one or two rigs that live through it in step. Whatever a
/// hand does becomes an event, so that going back is a replay and the whole can be saved as a script.
/// </summary>
/// <remarks>Not for several threads at once: whoever shows it moves it on.</remarks>
public sealed class LiveBench
{
    /// <summary>The longest run, ms: what a script may last.</summary>
    public const long LongestMs = 7L * 24 * 3_600_000;

    private readonly List<LiveEvent> _parts;
    private List<ScriptEvent> _events;
    private bool _beside;

    /// <summary>A bench with a house on it.</summary>
    /// <param name="house">The house.</param>
    /// <param name="script">What will happen without a hand; null for nothing.</param>
    /// <param name="beside">Whether the same house without protection runs beside it.</param>
    /// <param name="build">Builds another controller than the compiled one; null for that.</param>
    public LiveBench(House house, Script? script, bool beside = false, Func<ControllerSettings, IController>? build = null)
    {
        Controller = build ?? (settings => new LibraryController(settings));
        ArgumentNullException.ThrowIfNull(house);
        House = house;
        Script = script;
        _beside = beside;
        _events = [.. script?.Events ?? []];
        _parts = [.. FaultSums.TakeApart(_events).Select(happened => new LiveEvent(happened, ByHand: false))];
        (Guarded, Plain) = Build();
    }

    /// <summary>The house.</summary>
    public House House { get; }

    /// <summary>What was opened; null for a bench that began with nothing planned.</summary>
    public Script? Script { get; }

    /// <summary>Builds the controller whose verdict counts.</summary>
    public Func<ControllerSettings, IController> Controller { get; }

    /// <summary>Conditions of the run.</summary>
    public ScriptConditions Conditions => Script?.Conditions ?? new ScriptConditions(30, 20, new TimeOnly(6, 0));

    /// <summary>The rig with the controller.</summary>
    public Rig Guarded { get; private set; }

    /// <summary>The rig without protection; null unless it was asked for.</summary>
    public Rig? Plain { get; private set; }

    /// <summary>The rigs, the one with the controller first.</summary>
    public IReadOnlyList<Rig> Rigs => Plain is { } plain ? [Guarded, plain] : [Guarded];

    /// <summary>Time reached, ms.</summary>
    public long NowMs => Guarded.NowMs;

    /// <summary>The latest time reached so far, ms; going back does not lower it, an act does.</summary>
    public long FurthestMs { get; private set; }

    /// <summary>End of the run, ms.</summary>
    public long EndMs => Script is { } script && !HasHand ? script.DurationMs : LongestMs;

    /// <summary>Events, past and planned, in order of time.</summary>
    public IReadOnlyList<ScriptEvent> Events => _events;

    /// <summary>Whether anything was done by hand.</summary>
    public bool HasHand => _parts.Exists(part => part.ByHand);

    /// <summary>How everything stands now.</summary>
    public Situation Situation => Situation.Of(_events, NowMs + Guarded.PeriodMs);

    /// <summary>Whether the unprotected house runs beside it. Switching it on replays up to now.</summary>
    public bool Beside
    {
        get => _beside;
        set
        {
            _beside = value;
            if (!value)
                Plain = null;
            else if (Plain is null)
                Plain = Replayed(NowMs);
        }
    }

    /// <summary>Whether the event at a place of <see cref="Events"/> was made by hand here.</summary>
    public bool IsByHand(int place) => _parts[place].ByHand;

    /// <summary>
    /// Does something now: it happens at the next scan. Hand-made events of the future are given up. A fault of an actuator
    /// is what comes to what is broken already.
    /// </summary>
    public void Do(ScriptAction action)
    {
        ArgumentNullException.ThrowIfNull(action);
        long at = NowMs + Guarded.PeriodMs;
        if (at > LongestMs)
            return;
        _parts.RemoveAll(part => part.ByHand && part.Event.AtMs > at);
        int place = _parts.FindIndex(part => part.Event.AtMs > at);
        _parts.Insert(place < 0 ? _parts.Count : place, new LiveEvent(new ScriptEvent(at, action), ByHand: true));
        _events = FaultSums.AddUp(_parts.Select(part => part.Event));
        FurthestMs = NowMs;
        AdvanceTo(at);
    }

    /// <summary>Moves every rig on to a time, ms, or to the end of the run.</summary>
    /// <param name="ms">The time.</param>
    /// <param name="enough">Asked now and then; true ends it early, with the rigs in step.</param>
    public void AdvanceTo(long ms, Func<bool>? enough = null)
    {
        long target = Math.Min(ms, EndMs);
        const long StrideMs = 60_000;
        while (NowMs < target)
        {
            long stride = Math.Min(target, NowMs + StrideMs);
            stride = Math.Min(EndMs, (stride + Guarded.PeriodMs - 1) / Guarded.PeriodMs * Guarded.PeriodMs);
            foreach (Rig rig in Rigs)
            {
                while (rig.NowMs < stride)
                    rig.Step(_events, stride);
            }

            if (enough?.Invoke() == true)
                break;
        }

        FurthestMs = Math.Max(FurthestMs, NowMs);
    }

    /// <summary>Moves on until a controller shows something new, an event is due, or a limit is reached.</summary>
    /// <param name="limitMs">The limit, ms.</param>
    public void AdvanceToNext(long limitMs)
    {
        long target = Math.Min(limitMs, EndMs);
        bool news = false;
        while (!news && NowMs < target)
        {
            int before = _events.TakeWhile(e => e.AtMs <= NowMs).Count();
            news = Guarded.Step(_events, target);
            while (Plain is { } plain && plain.NowMs < NowMs)
                news |= plain.Step(_events, NowMs);
            news |= _events.TakeWhile(e => e.AtMs <= NowMs).Count() > before;
        }

        FurthestMs = Math.Max(FurthestMs, NowMs);
    }

    /// <summary>As <see cref="AdvanceToNext"/>, at most a day ahead.</summary>
    public void AdvanceToNextEvent() => AdvanceToNext(NowMs + 24L * 3_600_000);

    /// <summary>Goes to a time, ms: forward by running, back by replaying from the start.</summary>
    public void GoTo(long ms)
    {
        long target = Math.Clamp(ms, 0, EndMs);
        if (target < NowMs)
            (Guarded, Plain) = Build();
        AdvanceTo(target);
    }

    /// <summary>The latest moment before now at which something was done or planned, or at which something new was shown, ms.</summary>
    public long PreviousMs()
    {
        long shown = 0;
        foreach (Frame frame in Guarded.Trace.Frames)
        {
            if (frame.Ms < NowMs)
                shown = frame.Ms;
        }

        long planned = _events.LastOrDefault(e => e.AtMs < NowMs)?.AtMs ?? 0;
        return Math.Max(shown, planned);
    }

    /// <summary>
    /// What happened up to now as a script. Without a hand's doing, and at its end, it is the script that was opened.
    /// </summary>
    public Script Recorded()
    {
        if (Script is { } whole && !HasHand && NowMs >= whole.DurationMs)
            return whole;
        return new Script
        {
            Title = Shortened(Script is { } script ? $"{script.Title}, by hand" : $"By hand in {House.Name}"),
            Text = Script?.Text ?? "",
            DurationMs = Math.Max(NowMs, 1000),
            Conditions = Conditions,
            Events = [.. _events.Where(e => e.AtMs <= NowMs)],
        };
    }

    private (Rig Guarded, Rig? Plain) Build() =>
        (new Rig(House, Conditions, Controller, _events), _beside ? PlainRig() : null);

    private Rig PlainRig() => new(House, Conditions, settings => new StraightWiring(settings), _events);

    private Rig Replayed(long ms)
    {
        Rig rig = PlainRig();
        while (rig.NowMs < ms)
            rig.Step(_events, ms);
        return rig;
    }

    private static string Shortened(string title) => title.Length <= 60 ? title : title[..59] + "…";
}
