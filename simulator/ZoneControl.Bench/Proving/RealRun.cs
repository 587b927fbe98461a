using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>A move in a run with real times.</summary>
/// <param name="Move">The move.</param>
/// <param name="AtMs">When it is accepted, ms: a contact moves its debounce sooner.</param>
internal readonly record struct TimedMove(Move Move, long AtMs);

/// <summary>
/// Runs the controller with a house's real filters and times over moves at given moments, without a plant: every contact is
/// the moves' to say. Judges some rules, and tells the moments at which something changed by itself.
/// </summary>
internal sealed class RealRun : IFindings
{
    private const int MostScans = 3000;

    private readonly ControllerSettings _house;
    private readonly IProvable _subject;
    private readonly MonitorSet _monitors;
    private readonly InputImage _inputs = new();
    private readonly OutputImage _outputs = new();
    private readonly List<(long AtMs, Move Move, bool PowerOn)> _edges = [];
    private World _world;
    private bool _powered;
    private long _aheadMs;

    /// <summary>How long power stays away, ms.</summary>
    public const long OutageMs = 1000;

    /// <summary>How far a clock jumps back, ms.</summary>
    public const long JumpMs = 10_000;

    public RealRun(ControllerSettings house, IProvable subject, string rule)
    {
        _house = house;
        _subject = subject;
        _monitors = new MonitorSet(house, zone => $"zone {zone + 1}", this, new HashSet<string> { rule });
    }

    /// <summary>When the rule was broken, ms; null when it was not.</summary>
    public long? BrokenMs { get; private set; }

    /// <summary>Scans at which something changed by itself, after the last move; ms.</summary>
    public List<long> Moments { get; } = [];

    /// <summary>When an exercise fell due after the last move, ms; null when it did not.</summary>
    public long? ExerciseDueMs { get; private set; }

    /// <summary>When a contact has to move to be accepted at a moment.</summary>
    public static long EdgeMs(ControllerSettings house, TimedMove timed)
    {
        int debounce = timed.Move.Kind switch
        {
            MoveKind.Call or MoveKind.Hand => house.CallDebounceMs,
            MoveKind.EndSwitch or MoveKind.Sense => house.SwitchDebounceMs,
            MoveKind.Contact => house.ContactDebounceMs[timed.Move.Number],
            _ => 0,
        };
        return timed.AtMs - OnGrid(house, debounce);
    }

    /// <summary>The first scan at or after a moment.</summary>
    public static long OnGrid(ControllerSettings house, long ms) =>
        (ms + house.ScanPeriodMs - 1) / house.ScanPeriodMs * house.ScanPeriodMs;

    /// <summary>Runs it from power-up until a moment, or until the rule is broken or nothing more can come.</summary>
    public void Play(IReadOnlyList<TimedMove> moves, long untilMs)
    {
        Begin(moves);
        long lastMove = moves.Count > 0 ? moves.Max(timed => timed.AtMs) : 0;
        long now = 0;
        int next = 0;
        int scans = 0;
        while (true)
        {
            bool moved = false;
            bool jumped = false;
            for (; next < _edges.Count && _edges[next].AtMs <= now; next++)
            {
                Make(_edges[next], ref jumped);
                moved = true;
            }

            Frame before = _monitors.Shown;
            Scan(now, jumped);
            if (BrokenMs is not null || now >= untilMs || ++scans > MostScans)
                return;
            if (now >= lastMove)
                Note(now, before, moved);
            long wait = NextMs(now, next < _edges.Count ? _edges[next].AtMs : long.MaxValue);
            if (wait == long.MaxValue)
                return;
            int dt = (int)Math.Min(wait - now, 1_000_000_000);
            _monitors.Pass(dt);
            if (BrokenMs is not null)
                return;
            now += dt;
        }
    }

    void IFindings.Occasion(string rule)
    {
    }

    void IFindings.Broken(string rule, long ms, string why) => BrokenMs ??= ms;

    private void Begin(IReadOnlyList<TimedMove> moves)
    {
        _world = World.AtRest(_house);
        _powered = true;
        _aheadMs = 0;
        _edges.Clear();
        Moments.Clear();
        BrokenMs = ExerciseDueMs = null;
        foreach (TimedMove timed in moves)
        {
            if (timed.Move.Kind is MoveKind.ExerciseDue or MoveKind.Wait)
                continue;
            _edges.Add((EdgeMs(_house, timed), timed.Move, false));
            if (timed.Move.Kind == MoveKind.Power)
                _edges.Add((timed.AtMs + OutageMs, timed.Move, true));
            if (timed.Move.Kind == MoveKind.ClockBack)
                _edges.Add((timed.AtMs - _house.ScanPeriodMs, new Move(MoveKind.Wait), false));
        }

        _edges.Sort((a, b) => a.AtMs.CompareTo(b.AtMs));
        _subject.PowerUp();
        _monitors.NowMs = 0;
    }

    private void Make((long AtMs, Move Move, bool PowerOn) edge, ref bool jumped)
    {
        if (edge.Move.Kind == MoveKind.Power)
        {
            if (edge.PowerOn)
                _subject.PowerUp();
            _powered = edge.PowerOn;
        }
        else if (edge.Move.Kind == MoveKind.ClockBack)
        {
            _aheadMs -= JumpMs;
            jumped = true;
        }
        else
        {
            _world.Make(edge.Move);
        }
    }

    private void Scan(long now, bool jumped)
    {
        if (!_powered)
        {
            _monitors.Step(0, new Frame { Ms = now, Unpowered = true });
            return;
        }

        _world.Show(_house, _inputs);
        _subject.Scan(now + _aheadMs + JumpMs * 100, _inputs, _outputs);
        _monitors.Step(0, Frame.From(_outputs), jumped ? ClockSign.RunsBack : ClockSign.Unknown);
    }

    private void Note(long now, in Frame before, bool moved)
    {
        bool shows = !_monitors.Shown.ShowsTheSameAs(before with { Ms = _monitors.Shown.Ms });
        if ((shows || moved || _noted) && (Moments.Count == 0 || Moments[^1] != now))
            Moments.Add(now);
        if (_monitors.ExerciseDue)
            ExerciseDueMs ??= now;
    }

    private bool _noted;

    // The controller's deadline, the monitors' and the next edge, on the grid of scans.
    private long NextMs(long now, long edge)
    {
        long deadline = !_powered || _outputs.NextDeadlineMs == ZoneController.Never
            ? long.MaxValue
            : _outputs.NextDeadlineMs - _aheadMs - (JumpMs * 100);
        int wait = _powered ? _monitors.MsToNextChange : int.MaxValue;
        long monitors = wait == int.MaxValue ? long.MaxValue : now + wait;
        long due = Math.Min(deadline, Math.Min(monitors, edge));
        _noted = monitors <= due;
        return due == long.MaxValue ? due : Math.Max(now + _house.ScanPeriodMs, OnGrid(_house, due));
    }
}
