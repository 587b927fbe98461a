using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>
/// Writes a trace as a story: each <see cref="At"/> begins a frame that shows what the one before showed, and the words after
/// it say what changed.
/// </summary>
internal sealed class TraceBuilder
{
    private readonly List<Frame> _frames = [];
    private Frame _frame = new() { Ms = -1 };
    private bool _open;
    private bool _everyScan;

    public long EndMs { get; private set; }

    public TraceBuilder At(long ms)
    {
        Close();
        _frame = _frame with { Ms = ms, PowerUp = false };
        _open = true;
        return this;
    }

    public TraceBuilder PowerUp() => Set(AllOff() with { PowerUp = true, Unpowered = false });

    public TraceBuilder PowerCut() => Set(AllOff() with { Unpowered = true });

    public TraceBuilder PowerBackWithoutMark() => Set(_frame with { Unpowered = false });

    public TraceBuilder Call(int zone) => Set(_frame with { Calls = _frame.Calls | (1 << zone) });

    public TraceBuilder NoCall(int zone) => Set(_frame with { Calls = _frame.Calls & ~(1 << zone) });

    public TraceBuilder Switch(int zone) => Set(_frame with { EndSwitches = _frame.EndSwitches | (1 << zone) });

    public TraceBuilder NoSwitch(int zone) => Set(_frame with { EndSwitches = _frame.EndSwitches & ~(1 << zone) });

    public TraceBuilder Valve(int zone) => Set(_frame with { Valves = _frame.Valves | (1 << zone) });

    public TraceBuilder NoValve(int zone) => Set(_frame with { Valves = _frame.Valves & ~(1 << zone) });

    public TraceBuilder Late(int zone) => Set(_frame with { LateValves = _frame.LateValves | (1 << zone) });

    public TraceBuilder NoLate(int zone) => Set(_frame with { LateValves = _frame.LateValves & ~(1 << zone) });

    public TraceBuilder Latched(int zone) => Set(_frame with { LatchedValves = _frame.LatchedValves | (1 << zone) });

    public TraceBuilder NoLatched(int zone) => Set(_frame with { LatchedValves = _frame.LatchedValves & ~(1 << zone) });

    public TraceBuilder Early(int zone) => Set(_frame with { EarlySwitches = _frame.EarlySwitches | (1 << zone) });

    public TraceBuilder NoEarly(int zone) => Set(_frame with { EarlySwitches = _frame.EarlySwitches & ~(1 << zone) });

    public TraceBuilder Lockout() => Set(_frame with { Lockout = true });

    public TraceBuilder NoLockout() => Set(_frame with { Lockout = false });

    public TraceBuilder Pump() => Set(_frame with { Pump = true });

    public TraceBuilder NoPump() => Set(_frame with { Pump = false });

    public TraceBuilder Heat() => Set(_frame with { Heat = true });

    public TraceBuilder NoHeat() => Set(_frame with { Heat = false });

    public TraceBuilder Hold(HoldReason reason) => Set(_frame with { Hold = reason });

    public TraceBuilder On(int contact) => Set(_frame with { Contacts = _frame.Contacts | contact });

    public TraceBuilder Off(int contact) => Set(_frame with { Contacts = _frame.Contacts & ~contact });

    public TraceBuilder Sense(int zone) => Set(_frame with { Senses = _frame.Senses | (1 << zone) });

    public TraceBuilder NoSense(int zone) => Set(_frame with { Senses = _frame.Senses & ~(1 << zone) });

    public TraceBuilder Hand(int zone) => Set(_frame with { Hands = _frame.Hands | (1 << zone) });

    public TraceBuilder NoHand(int zone) => Set(_frame with { Hands = _frame.Hands & ~(1 << zone) });

    public TraceBuilder Stuck(int zone) => Set(_frame with { StuckSwitches = _frame.StuckSwitches | (1 << zone) });

    public TraceBuilder NoStuck(int zone) => Set(_frame with { StuckSwitches = _frame.StuckSwitches & ~(1 << zone) });

    public TraceBuilder Alarmed(int alarm) => Set(_frame with { Alarms = _frame.Alarms | alarm });

    public TraceBuilder NoAlarm(int alarm) => Set(_frame with { Alarms = _frame.Alarms & ~alarm });

    public TraceBuilder AllValves() => Set(_frame with { Valves = 0b1111 });

    public TraceBuilder NoValves() => Set(_frame with { Valves = 0 });

    public TraceBuilder Deadline(long ms) => Set(_frame with { NextDeadlineMs = ms });

    /// <summary>The controller's clock is so far ahead of the run's time, ms; behind for a negative number.</summary>
    public TraceBuilder Clock(long aheadMs) => Set(_frame with { ClockAheadMs = aheadMs });

    /// <summary>No scan is left out of this trace.</summary>
    public TraceBuilder EveryScan()
    {
        _everyScan = true;
        return this;
    }

    /// <summary>The trace, its last frame holding until <paramref name="ms"/>.</summary>
    public TraceBuilder End(long ms)
    {
        Close();
        EndMs = ms;
        return this;
    }

    public Trace Trace()
    {
        Close();
        return new Trace(_frames, [], Math.Max(EndMs, _frame.Ms)) { EveryScan = _everyScan };
    }

    // Outputs and everything published are gone; contacts stand as they are.
    private Frame AllOff() => new()
    {
        Ms = _frame.Ms,
        Calls = _frame.Calls,
        EndSwitches = _frame.EndSwitches,
        Senses = _frame.Senses,
        Hands = _frame.Hands,
        Contacts = _frame.Contacts,
    };

    private TraceBuilder Set(Frame frame)
    {
        Assert.True(_open, "say At(ms) first");
        _frame = frame;
        return this;
    }

    private void Close()
    {
        if (_open)
            _frames.Add(_frame);
        _open = false;
    }
}
