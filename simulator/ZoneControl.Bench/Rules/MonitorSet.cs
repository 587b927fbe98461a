using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// All rules' monitors for one house, stepped frame by frame. Its whole memory can be saved as ints and loaded again, so
/// that a search may make it part of a state.
/// </summary>
public sealed class MonitorSet
{
    private readonly Evidence _seen;
    private readonly RuleMonitor[] _monitors;
    private bool _begun;

    /// <summary>Monitors that have seen nothing yet.</summary>
    /// <param name="house">Lawful settings, as <see cref="SettingsCheck"/> says.</param>
    /// <param name="nameOf">A zone's name by its number, for reasons.</param>
    /// <param name="findings">Told of every occasion and every breach.</param>
    public MonitorSet(ControllerSettings house, Func<int, string> nameOf, IFindings findings)
        : this(house, nameOf, findings, null)
    {
    }

    /// <summary>Monitors of some rules only: each judges by itself, so that a search may take them in turns.</summary>
    /// <param name="house">Lawful settings.</param>
    /// <param name="nameOf">A zone's name by its number.</param>
    /// <param name="findings">Told of every occasion and every breach.</param>
    /// <param name="rules">The rules; null for all.</param>
    internal MonitorSet(ControllerSettings house, Func<int, string> nameOf, IFindings findings, IReadOnlySet<string>? rules)
    {
        _seen = new Evidence(house, nameOf);
        _monitors = [.. RuleBook.Monitors(_seen, findings).Where(monitor => rules is null || rules.Contains(monitor.Rule))];
        StateInts = WalkAll(StateWalk.Counting());
    }

    /// <summary>How many ints <see cref="Save"/> writes.</summary>
    public int StateInts { get; }

    /// <summary>The present moment, ms; what breaches are dated by. No part of the state: set it after loading one.</summary>
    public long NowMs
    {
        get => _seen.NowMs;
        set => _seen.NowMs = value;
    }

    /// <summary>
    /// The last frame held for <paramref name="dtMs"/>, and now there is this one. Its own time is not read: frames may be
    /// judged at any distance.
    /// </summary>
    /// <param name="dtMs">Time since the last frame, ms, 0 or more; 0 where the clock says nothing that can be believed.</param>
    /// <param name="frame">What the scan shows.</param>
    /// <param name="clock">What the scan's time says of its clock.</param>
    public void Step(int dtMs, in Frame frame, ClockSign clock = ClockSign.Unknown)
    {
        Pass(dtMs);
        Frame now = _seen.Clean(frame);
        _seen.Clock = clock;
        if (clock == ClockSign.Stands)
            _seen.NoteStandingClock();
        bool fails = clock is ClockSign.RunsBack or ClockSign.StandsStill or ClockSign.ComesLate;
        if (!fails && _begun && !now.PowerUp && now.ShowsTheSameAs(_seen.Now with { PowerUp = false }))
            return;
        if (now.Unpowered)
        {
            End();
            _seen.Outage(now);
        }
        else
        {
            if (!_begun || now.PowerUp || _seen.Now.Unpowered)
            {
                End();
                _seen.Forget();
            }

            bool timeFault = !now.PowerUp && _seen.IsTimeFault(now, fails);
            if (timeFault)
                ForgetTimes();
            _seen.Take(now, timeFault);
            foreach (RuleMonitor monitor in _monitors)
                monitor.OnFrame();
        }

        _begun = true;
    }

    /// <summary>Zones that count as proven now, as the monitors reckon it.</summary>
    internal int Proven => _seen.Proven;

    /// <summary>
    /// Goes on from a frame of which nobody knows what came before it. The unknown past gets the benefit of the doubt: what is
    /// open has been so for long, the pump has rested, the start delay has passed; nothing in this frame is an edge.
    /// </summary>
    internal void Resume(in Frame frame)
    {
        End();
        _seen.Presume(_seen.Clean(frame));
        _begun = true;
    }

    /// <summary>The last frame goes on holding for <paramref name="ms"/>, 0 or more.</summary>
    public void Pass(int ms)
    {
        if (!_begun || _seen.Now.Unpowered)
        {
            _seen.NowMs += ms;
            return;
        }

        if (ms > 0)
            _seen.LeaveFrame();
        while (ms > 0)
        {
            int next = _seen.MsToNextChange();
            int span = Math.Min(ms, next);
            foreach (RuleMonitor monitor in _monitors)
                monitor.Pass(span);
            _seen.Pass(span);
            ms -= span;
            if (span < next)
                continue;
            foreach (RuleMonitor monitor in _monitors)
                monitor.OnTime();
        }
    }

    /// <summary>Time until what the monitors look at changes by itself, ms; <see cref="int.MaxValue"/> when only a frame can.</summary>
    internal int MsToNextChange => _seen.MsToNextChange();

    /// <summary>Something has not yet passed that begins with a stop, a start or a run of the pump.</summary>
    internal bool PumpRests => _seen.InRundown || _seen.Pump.RestLeftMs > 0 || _seen.DelayUnsure;

    /// <summary>The frame that holds now; its times are not kept.</summary>
    internal Frame Shown => _seen.Now;

    /// <summary>The pump has not run for the exercise interval.</summary>
    internal bool ExerciseDue => _seen.Pump.ExerciseDue;

    /// <summary>
    /// Sets the time since the pump last ran to the exercise interval, or to none: it counts days, which a search cannot.
    /// </summary>
    internal void SetIdle(bool due)
    {
        bool before = _seen.Pump.ExerciseDue;
        _seen.Pump.SetIdle(due);
        if (before == due || _seen.Now.Unpowered)
            return;
        foreach (RuleMonitor monitor in _monitors)
            monitor.OnTime();
    }

    /// <summary>Writes the whole memory into <paramref name="to"/>, which has at least <see cref="StateInts"/> places.</summary>
    public void Save(int[] to) => WalkAll(StateWalk.SavingTo(to));

    /// <summary>Takes over a memory that <see cref="Save"/> wrote for the same house.</summary>
    public void Load(int[] from) => WalkAll(StateWalk.LoadingFrom(from));

    private int WalkAll(StateWalk walk)
    {
        walk.Bool(ref _begun);
        _seen.Walk(walk);
        foreach (RuleMonitor monitor in _monitors)
            monitor.Walk(walk);
        return walk.Count;
    }

    private void ForgetTimes()
    {
        foreach (RuleMonitor monitor in _monitors)
            monitor.ForgetTimes();
    }

    private void End()
    {
        foreach (RuleMonitor monitor in _monitors)
            monitor.End();
    }
}
