using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>
/// The controller, the monitors of all rules and the world's contacts, moved on together by one scan at a time. Everything
/// that any of them remembers is ints here; that is the state which the search visits. One worker's; not shared.
/// </summary>
internal sealed class Product : IFindings
{
    /// <summary>Any time will do: nothing but differences of time is looked at.</summary>
    private const long NowMs = 1_000_000_000;

    private readonly ControllerSettings _house;
    private readonly IProvable _subject;
    private readonly MonitorSet _monitors;
    private readonly InputImage _inputs = new();
    private readonly OutputImage _outputs = new();
    private readonly int[] _fresh;
    private readonly int _idle;
    private readonly int _deadline;
    private readonly bool _clocksStand;
    private readonly bool _exercises;
    private readonly bool[] _judged;
    private readonly string[] _rules;
    private readonly long[] _occasions;

    /// <summary>Of the state that <see cref="Step"/> begins from.</summary>
    public readonly int[] WorldBefore = new int[World.Length];
    public readonly int[] SubjectBefore;
    public readonly int[] MonitorsBefore;

    /// <summary>Of the state that <see cref="Step"/> led to.</summary>
    public readonly int[] WorldAfter = new int[World.Length];
    public readonly int[] SubjectAfter;
    public readonly int[] MonitorsAfter;

    public Product(ProductPlan plan)
    {
        _house = plan.Scaled;
        _subject = plan.Build();
        _monitors = new MonitorSet(plan.Scaled, plan.NameOf, this, plan.Rules);
        _idle = _subject.IdlePlace;
        _clocksStand = plan.Moves.Any(move => move.Kind is MoveKind.ClockStill or MoveKind.ClockLate);
        _exercises = plan.Scaled.ExerciseIntervalS > 0;
        _fresh = new int[_subject.StateLength];
        _deadline = _fresh.Length - 1;
        _subject.PowerUp();
        _subject.Save(_fresh);
        SubjectBefore = new int[_subject.StateLength];
        SubjectAfter = new int[_subject.StateLength];
        MonitorsBefore = new int[_monitors.StateInts];
        MonitorsAfter = new int[_monitors.StateInts];
        _rules = [.. RuleBook.Rules.Select(rule => rule.Id)];
        _judged = [.. _rules.Select(rule => plan.Rules is null || plan.Rules.Contains(rule))];
        _occasions = new long[_rules.Length];
    }

    /// <summary>The first rule that the last step broke, by its place in the rule book; -1 when it broke none.</summary>
    public int BrokenRule { get; private set; } = -1;

    /// <summary>Why, in words.</summary>
    public string Why { get; private set; } = "";

    /// <summary>How often each rule was given something to judge, in the rule book's order.</summary>
    public IReadOnlyList<long> Occasions => _occasions;

    /// <summary>What the last scan showed.</summary>
    public Frame Shown { get; private set; }

    /// <summary>Ints of a state.</summary>
    public int Length => World.Length + SubjectBefore.Length + MonitorsBefore.Length;

    /// <summary>Ms until time alone could change what the monitors look at, in the state that the last step led to.</summary>
    public int MonitorsWaitMs => _monitors.MsToNextChange;

    /// <summary>The state after the first scan of all, in the places of the state after a step.</summary>
    public void Begin()
    {
        World world = World.AtRest(_house);
        BrokenRule = -1;
        _monitors.NowMs = 0;
        PowerUp(ref world, 0);
        Keep(world);
    }

    /// <summary>The state that the last step led to is where the next one begins.</summary>
    public void Continue()
    {
        WorldAfter.CopyTo(WorldBefore, 0);
        SubjectAfter.CopyTo(SubjectBefore, 0);
        MonitorsAfter.CopyTo(MonitorsBefore, 0);
    }

    /// <summary>Makes a move from the state before; false when it is not possible there.</summary>
    public bool Step(Move move)
    {
        BrokenRule = -1;
        World world = World.Load(WorldBefore);
        _monitors.Load(MonitorsBefore);
        _monitors.NowMs = 0;
        if (!Possible(move))
            return false;
        world.Make(move);
        if (move.Kind == MoveKind.Power)
        {
            _monitors.Step(_house.ScanPeriodMs, new Frame { Ms = 0, Unpowered = true });
            PowerUp(ref world, _house.ScanPeriodMs);
            Keep(world);
            return true;
        }

        _subject.Load(SubjectBefore, NowMs);
        if (move.Kind == MoveKind.ExerciseDue)
            LetExerciseFallDue();
        (long scanMs, int passedMs, ClockSign sign) = Clock(move, ref world);
        world.Show(_house, _inputs);
        _subject.Scan(scanMs, _inputs, _outputs);
        Shown = Frame.From(_outputs);
        _monitors.Step(passedMs, Shown, sign);
        if (_clocksStand)
            world.Stood = (world.Stood & ~1) | (_outputs.Pump ? 1 : 0);
        if (_exercises)
            world.RanLately = _outputs.Pump || (world.RanLately != 0 && _monitors.PumpRests) ? 1 : 0;
        Keep(world);
        return true;
    }

    void IFindings.Occasion(string rule) => _occasions[Place(rule)]++;

    void IFindings.Broken(string rule, long ms, string why)
    {
        int place = Place(rule);
        if (!_judged[place] || (BrokenRule >= 0 && BrokenRule <= place))
            return;
        BrokenRule = place;
        Why = why;
    }

    private bool Possible(Move move) => move.Kind switch
    {
        MoveKind.ExerciseDue => SubjectBefore[_idle] < _house.ExerciseIntervalS && WorldBefore[World.Length - 1] == 0,
        MoveKind.ClockLate => SubjectBefore[_deadline] != 0,
        _ => true,
    };

    private void PowerUp(ref World world, int passedMs)
    {
        _subject.Load(_fresh, NowMs);
        world.Show(_house, _inputs);
        _subject.Scan(NowMs, _inputs, _outputs);
        Shown = Frame.From(_outputs);
        _monitors.Step(passedMs, Shown);
        world.RanLately = _exercises ? 1 : 0;
    }

    private void LetExerciseFallDue()
    {
        SubjectBefore[_idle] = _house.ExerciseIntervalS;
        int part = SubjectBefore[_idle + 1];
        SubjectBefore[_idle + 1] = 0;
        _subject.Load(SubjectBefore, NowMs);
        SubjectBefore[_idle] = 0;
        SubjectBefore[_idle + 1] = part;
        _monitors.SetIdle(true);
    }

    private (long ScanMs, int PassedMs, ClockSign Sign) Clock(Move move, ref World world)
    {
        int period = _house.ScanPeriodMs;
        int stood = world.Stood >> 1;
        bool pump = (world.Stood & 1) != 0;
        world.Stood = 0;
        switch (move.Kind)
        {
            case MoveKind.ClockBack:
                return (NowMs - period, 0, ClockSign.RunsBack);
            case MoveKind.ClockLate:
                return (NowMs + SubjectBefore[_deadline] + _house.StallLimitMs + period, 0, ClockSign.ComesLate);
            case MoveKind.ClockStill:
                stood = pump ? stood + 1 : 0;
                if (stood >= _house.StallScans)
                    return (NowMs, 0, ClockSign.StandsStill);
                world.Stood = stood << 1;
                return (NowMs, 0, ClockSign.Stands);
            default:
                return (NowMs + period, period, ClockSign.Trusted);
        }
    }

    /// <summary>
    /// Takes the state over. Idleness counts days and is proven alone: here it is either not due, and then none at all, or
    /// due, for controller and monitors alike. The announced deadline only matters where a scan may come late.
    /// </summary>
    private void Keep(in World world)
    {
        world.Save(WorldAfter);
        _subject.Save(SubjectAfter);
        if (!_clocksStand)
            SubjectAfter[_deadline] = 0;
        if (_exercises)
        {
            bool due = SubjectAfter[_idle] >= _house.ExerciseIntervalS;
            SubjectAfter[_idle] = due ? _house.ExerciseIntervalS : 0;
            SubjectAfter[_idle + 1] = 0;
            _monitors.SetIdle(due);
        }

        _monitors.Save(MonitorsAfter);
    }

    private int Place(string rule)
    {
        // Rules come as the rule book's own strings.
        for (int i = 0; i < _rules.Length; i++)
        {
            if (ReferenceEquals(_rules[i], rule))
                return i;
        }

        return Array.IndexOf(_rules, rule);
    }
}
