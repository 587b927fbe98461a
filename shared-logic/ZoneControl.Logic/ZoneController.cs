using System;

namespace ZoneControl.Logic;

/// <summary>
/// The supervisory controller of one house: from contacts to valves, pump and heat demand, one scan at a time.
/// </summary>
/// <remarks>
/// It owns no clock and no pins. A scan allocates nothing. It is supervisory only: the limits, relief valves and safety
/// devices that the heat source or the code require stay in charge.
/// <para>
/// A scan that finds the contacts as they were, before the deadline that the last full scan worked out, has nothing to
/// decide and only repeats the outputs. That is most scans, and it is why the deadline may never be later than the first
/// change: tests step with <see cref="ScanWhole"/> and compare.
/// </para>
/// </remarks>
public sealed class ZoneController
{
    /// <summary>A deadline that never comes.</summary>
    public const long Never = long.MaxValue;

    private const long WholeNext = long.MinValue; // a deadline long past: the next scan is a whole one

    private readonly ControllerSettings _settings;
    private readonly ControllerState _state;
    private long _scanMs; // time of the last scan
    private long _agedMs; // time up to which the ages in the state are counted
    private long _deadlineMs = WholeNext;

    /// <summary>Builds the controller in its power-up state. The settings are the controller's from now on.</summary>
    /// <exception cref="ArgumentException">A setting is not lawful; the message is its name (see <see cref="SettingsCheck"/>).</exception>
    public ZoneController(ControllerSettings settings)
    {
        string? mistake = SettingsCheck.FirstMistake(settings);
        if (mistake != null)
            throw new ArgumentException(mistake);
        _settings = settings;
        _state = new ControllerState(settings);
    }

    /// <summary>
    /// One pass: takes in the contacts, decides, writes the outputs. Call it every scan period, or at the first multiple of
    /// it at or after <see cref="OutputImage.NextDeadlineMs"/> or a change of contacts: the outputs are the same.
    /// </summary>
    /// <param name="nowMs">Monotonic time, ms. A time before the last scan's counts as no time passed.</param>
    /// <param name="inputs">Contacts as read.</param>
    /// <param name="outputs">Filled entirely.</param>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        if (nowMs >= _scanMs && nowMs < _deadlineMs && SameContacts(inputs))
        {
            _scanMs = nowMs;
            outputs.PowerUp = false;
            Publish(outputs);
            return;
        }

        ScanWhole(nowMs, inputs, outputs);
    }

    /// <summary>As <see cref="Scan"/>, but always decides anew: what tests compare the short way with.</summary>
    public void ScanWhole(long nowMs, InputImage inputs, OutputImage outputs)
    {
        bool powerUp = !_state.Scanned;
        int calls = ZoneBits(inputs.Calls);
        int switches = ZoneBits(inputs.EndSwitches) & _settings.SwitchedZones;
        int lockout = inputs.Lockout ? 1 : 0;
        if (nowMs < _scanMs)
            _agedMs += nowMs - _scanMs; // what passed before the clock went back has still passed
        _scanMs = nowMs;
        if (powerUp)
            OnlyLook(calls, switches, lockout);
        else
            Decide(calls, switches, lockout);
        outputs.PowerUp = powerUp;
        Publish(outputs);
    }

    /// <summary>BOOT-SAFE: the first scan takes in the contacts and accepts none, not even those without debounce.</summary>
    private void OnlyLook(int calls, int switches, int lockout)
    {
        ControllerState x = _state;
        x.Scanned = true;
        x.Calls.Seen = calls;
        x.Switches.Seen = switches;
        x.Season.Seen = lockout;
        _agedMs = _scanMs;
        _deadlineMs = _scanMs + 1;
    }

    private void Decide(int calls, int switches, int lockout)
    {
        ControllerSettings s = _settings;
        ControllerState x = _state;
        int dt = TakeElapsed();
        int callsBefore = x.Calls.Accepted;
        int switchesBefore = x.Switches.Accepted;
        int valvesBefore = x.Valves;
        int provenBefore = x.Proven;
        int troubleBefore = x.Early | x.Late << 16;
        int restBefore = x.Resting | x.Latched << 16;
        bool demandBefore = x.Demand;
        bool pumpBefore = x.Pump;
        bool rundownBefore = x.RunningDown(s);
        bool lockoutBefore = x.Lockout;

        int next = ContactFilter.Step(x.Calls, calls, dt, s.CallDebounceMs);
        next = Wait.Sooner(next, ContactFilter.Step(x.Switches, switches, dt, s.SwitchDebounceMs));
        next = Wait.Sooner(next, ContactFilter.Step(x.Season, lockout, dt, s.SeasonDebounceMs));
        next = Wait.Sooner(next, ValveProof.Step(s, x, dt, switchesBefore));
        next = Wait.Sooner(next, LateValves.Step(s, x, dt, provenBefore));
        Demand.Step(s, x, dt);
        ZonePlan.Step(s, x);
        next = Wait.Sooner(next, PumpSequence.Step(s, x, dt));
        ValveDrive.Step(s, x);
        HeatDemand.Step(s, x, dt);
        x.Hold = HoldReasons.FirstUnmet(s, x);

        // A change late in a scan can bear on what comes early in the next.
        bool changed = callsBefore != x.Calls.Accepted || switchesBefore != x.Switches.Accepted
            || valvesBefore != x.Valves || provenBefore != x.Proven
            || troubleBefore != (x.Early | x.Late << 16) || restBefore != (x.Resting | x.Latched << 16)
            || demandBefore != x.Demand || pumpBefore != x.Pump || rundownBefore != x.RunningDown(s) || lockoutBefore != x.Lockout;
        _deadlineMs = changed ? _scanMs + 1 : next == Wait.Forever ? Never : _scanMs + next;
    }

    /// <summary>ms since ages were last counted, at most the longest setting: no age cares for more.</summary>
    private int TakeElapsed()
    {
        long elapsed = _scanMs - _agedMs;
        _agedMs = _scanMs;
        return elapsed > ControllerSettings.LongestMs ? ControllerSettings.LongestMs : (int)elapsed;
    }

    private bool SameContacts(InputImage inputs)
    {
        ControllerState x = _state;
        return ZoneBits(inputs.Calls) == x.Calls.Seen
            && (ZoneBits(inputs.EndSwitches) & _settings.SwitchedZones) == x.Switches.Seen
            && (inputs.Lockout ? 1 : 0) == x.Season.Seen;
    }

    private int ZoneBits(int contacts) => contacts & ((1 << _settings.ZoneCount) - 1);

    private void Publish(OutputImage outputs)
    {
        ControllerState x = _state;
        outputs.Valves = x.Valves;
        outputs.Pump = x.Pump;
        outputs.Heat = x.Heat;
        outputs.Hold = x.Hold;
        outputs.AcceptedCalls = x.Calls.Accepted;
        outputs.AcceptedSwitches = x.Switches.Accepted;
        outputs.AcceptedLockout = x.Lockout;
        outputs.LateValves = x.Late;
        outputs.LatchedValves = x.Latched;
        outputs.EarlySwitches = x.Early;
        outputs.ProvenValves = x.Proven;
        outputs.ScanMs = _scanMs;
        outputs.NextDeadlineMs = _deadlineMs;
    }

    /// <summary>How many ints <see cref="Save"/> writes for this house.</summary>
    public int StateLength => _state.Length;

    /// <summary>Writes everything that bears on what the controller does next, as of its last scan.</summary>
    /// <param name="state">At least <see cref="StateLength"/> long.</param>
    public void Save(int[] state)
    {
        // Short scans do not count ages; nothing can change before the deadline, so deciding again only brings them up to date.
        if (_agedMs < _scanMs)
            Decide(_state.Calls.Seen, _state.Switches.Seen, _state.Season.Seen);
        _state.Save(state);
    }

    /// <summary>Takes over a saved state; the next scan continues from it.</summary>
    /// <param name="state">What <see cref="Save"/> wrote for the same settings.</param>
    /// <param name="nowMs">Time of the scan after which it was saved, ms of this controller's clock.</param>
    public void Load(int[] state, long nowMs)
    {
        _state.Load(state);
        _scanMs = nowMs;
        _agedMs = nowMs;
        _deadlineMs = WholeNext;
    }
}
