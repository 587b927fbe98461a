using System;

namespace ZoneControl.Logic;

/// <summary>
/// The supervisory controller of one house: from contacts to valves, pump and heat demand, one scan at a time.
/// <para>
/// BOOT-SAFE: the first scan after power-up takes in the contacts and accepts none, not even those without debounce; with
/// nothing accepted nothing is on, and with nothing energised nothing is proven.
/// </para>
/// </summary>
/// <remarks>
/// It owns no clock and no pins. A scan allocates nothing. It is supervisory only: the limits, relief valves and safety
/// devices that the heat source or the code require stay in charge.
/// <para>
/// A scan that finds the contacts as they were, before the deadline that the last whole scan worked out, has nothing to
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
    private readonly int _thermostats; // zones whose call comes from a thermostat
    private readonly int _inverted; // contacts asserted when open
    private long _scanMs; // time of the last scan
    private long _agedMs; // time up to which the ages in the state are counted
    private long _deadlineMs = WholeNext;
    private bool _loaded; // nothing is published of what was loaded before a whole scan

    /// <summary>Builds the controller in its power-up state. The settings are the controller's from now on.</summary>
    /// <exception cref="ArgumentException">A setting is not lawful; the message is its name (see <see cref="SettingsCheck"/>).</exception>
    public ZoneController(ControllerSettings settings)
    {
        string? mistake = SettingsCheck.FirstMistake(settings);
        if (mistake != null)
            throw new ArgumentException(mistake);
        _settings = settings;
        _state = new ControllerState(settings);
        _thermostats = settings.DrivenZones;
        _inverted = (settings.InvertedContacts | Contact.AssertedOpen) & settings.FittedContacts;
        Counters = new Counters(settings.ZoneCount);
    }

    /// <summary>What has been counted since power-up.</summary>
    public Counters Counters { get; }

    /// <summary>When alarms were raised since power-up.</summary>
    public AlarmBook AlarmBook { get; } = new AlarmBook();

    /// <summary>The conditions between "wanted" and "on" for the pump, as of the last scan.</summary>
    public void ExplainPump(ConditionList list)
    {
        BringUpToDate();
        Conditions.OfPump(_settings, _state, list);
    }

    /// <summary>The conditions between "wanted" and "on" for heat demand, as of the last scan.</summary>
    public void ExplainHeat(ConditionList list)
    {
        BringUpToDate();
        Conditions.OfHeat(_settings, _state, list);
    }

    /// <summary>
    /// One pass: takes in the contacts, decides, writes the outputs. Call it every scan period, or at the first multiple of
    /// it at or after <see cref="OutputImage.NextDeadlineMs"/> or a change of contacts: the outputs are the same.
    /// </summary>
    /// <param name="nowMs">Monotonic time, ms. A time that cannot be trusted is a fault of its own (TIME-FAULT).</param>
    /// <param name="inputs">Contacts as read.</param>
    /// <param name="outputs">Filled entirely.</param>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        if (nowMs > _scanMs && nowMs < _deadlineMs && !_loaded && SameContacts(inputs))
        {
            _scanMs = nowMs;
            _state.Stalled = 0; // the clock moves
            outputs.PowerUp = false;
            Publish(outputs);
            return;
        }

        ScanWhole(nowMs, inputs, outputs);
    }

    /// <summary>As <see cref="Scan"/>, but always decides anew: what tests compare the short way with.</summary>
    public void ScanWhole(long nowMs, InputImage inputs, OutputImage outputs)
    {
        ControllerState x = _state;
        _loaded = false;
        int calls = Calls(inputs);
        int switches = Switches(inputs);
        int senses = Senses(inputs);
        int hands = Hands(inputs);
        int contacts = Contacts(inputs);
        bool powerUp = !x.Scanned;
        outputs.PowerUp = powerUp;
        if (powerUp)
        {
            x.Scanned = true;
            _scanMs = nowMs;
            Look(calls, switches, senses, hands, contacts);
            NoteAlarms();
            x.Changed();
        }
        else if (ClockWatch.Step(_settings, x, nowMs, _scanMs, _deadlineMs))
        {
            // What passed before the fault counts for the ages that outlive it, as if every scan had been a whole one.
            BringUpToDate();
            _scanMs = nowMs;
            Look(calls, switches, senses, hands, contacts);
            ClockWatch.Fault(_settings, x);
            x.Hold = HoldReasons.FirstUnmet(_settings, x);
            NoteAlarms();
            x.Changed();
        }
        else
        {
            _scanMs = nowMs;
            Decide(calls, switches, senses, hands, contacts);
        }

        Publish(outputs);
    }

    /// <summary>Reads the contacts, but accepts none and decides nothing; the next scan does.</summary>
    private void Look(int calls, int switches, int senses, int hands, int contacts)
    {
        ControllerState x = _state;
        x.Calls.Seen = calls;
        x.Switches.Seen = switches;
        x.Senses.Seen = senses;
        x.Hands.Seen = hands;
        x.Contacts.Seen = contacts;
        _agedMs = _scanMs;
        _deadlineMs = _scanMs + 1;
    }

    private void Decide(int calls, int switches, int senses, int hands, int contacts)
    {
        ControllerSettings s = _settings;
        ControllerState x = _state;
        int dt = TakeElapsed();
        int valvesBefore = x.Valves;
        int provenBefore = x.Proven;
        bool pumpBefore = x.Pump;
        bool exercisingBefore = x.Exercising;
        HoldReason holdBefore = x.Hold;

        int next = ContactFilter.Step(x.Calls, calls, dt);
        next = Wait.Sooner(next, ContactFilter.Step(x.Switches, switches, dt));
        if (s.GatedZones != 0)
            next = Wait.Sooner(next, ContactFilter.Step(x.Senses, senses, dt));
        next = Wait.Sooner(next, ContactFilter.Step(x.Hands, hands, dt));
        next = Wait.Sooner(next, ContactFilter.Step(x.Contacts, contacts, dt));
        next = Wait.Sooner(next, SupplyWatch.Step(s, x, dt));
        Latches.Step(x);
        next = Wait.Sooner(next, ValveProof.Step(s, x, dt));
        next = Wait.Sooner(next, FlowWatch.Step(s, x, dt));
        next = Wait.Sooner(next, Asking.Govern(s, x, dt));
        next = Wait.Sooner(next, LateValves.Step(s, x, dt, provenBefore));
        Asking.Step(s, x);
        next = Wait.Sooner(next, Exercise.Step(s, x, dt));
        Asking.CountDemand(s, x, dt);
        ZonePlan.Step(s, x);
        next = Wait.Sooner(next, PumpSequence.Step(s, x, dt));
        next = Wait.Sooner(next, ValveDrive.Step(s, x));
        next = Wait.Sooner(next, HeatDemand.Step(s, x, dt));
        x.Hold = HoldReasons.FirstUnmet(s, x);
        AlarmBook.Uptime.Pass(dt);
        if (pumpBefore)
            Counters.Ran.Pass(dt);
        if (x.Changed())
        {
            _deadlineMs = _scanMs + 1;
            Count(valvesBefore, pumpBefore, exercisingBefore, holdBefore);
            NoteAlarms();
        }
        else
        {
            _deadlineMs = next == Wait.Forever ? Never : _scanMs + next;
        }
    }

    /// <summary>Counts what began or ended in this scan; nothing does unless something changed.</summary>
    private void Count(int valvesBefore, bool pumpBefore, bool exercisingBefore, HoldReason holdBefore)
    {
        ControllerSettings s = _settings;
        ControllerState x = _state;
        Counters.Energised(x.Valves & ~valvesBefore);
        if (x.Pump && !pumpBefore)
            Counters.PumpStarts = Counters.Next(Counters.PumpStarts);
        if (pumpBefore && !x.Pump && (x.FlowTrip || x.LimitLatched || x.ProvenCapacity < s.MinimumOpen))
            Counters.Trips = Counters.Next(Counters.Trips);
        if (holdBefore == HoldReason.None && x.Hold != HoldReason.None && PumpSequence.Wanted(x))
            Counters.Holds = Counters.Next(Counters.Holds);
        if (exercisingBefore && !x.Exercising && !x.PutOff && x.Asked == 0 && !x.Service)
            Counters.Exercises = Counters.Next(Counters.Exercises);
    }

    /// <summary>Works out the house's alarms and notes all; they can differ only when something changed.</summary>
    private void NoteAlarms()
    {
        ControllerState x = _state;
        AlarmBook book = AlarmBook;
        x.Alarms = Alarms.Of(x);
        book.Note(AlarmKind.Late, x.Late);
        book.Note(AlarmKind.Latched, x.Latched);
        book.Note(AlarmKind.Early, x.Early);
        book.Note(AlarmKind.StuckSwitch, x.StuckSwitches);
        book.Note(AlarmKind.House, x.Alarms);
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
        return Calls(inputs) == x.Calls.Seen
            && Switches(inputs) == x.Switches.Seen
            && Senses(inputs) == x.Senses.Seen
            && Hands(inputs) == x.Hands.Seen
            && Contacts(inputs) == x.Contacts.Seen;
    }

    private int Calls(InputImage inputs) => (inputs.Calls ^ _settings.InvertedCalls) & _thermostats;

    private int Switches(InputImage inputs) => (inputs.EndSwitches ^ _settings.InvertedSwitches) & _settings.SwitchedZones;

    private int Senses(InputImage inputs) => (inputs.Senses ^ _settings.InvertedSenses) & _settings.GatedZones;

    private int Hands(InputImage inputs) => inputs.ServiceValves & _thermostats;

    private int Contacts(InputImage inputs) => (inputs.Contacts ^ _inverted) & _settings.FittedContacts;

    private void Publish(OutputImage outputs)
    {
        ControllerState x = _state;
        outputs.Valves = x.Valves;
        outputs.Pump = x.Pump;
        outputs.Heat = x.Heat;
        outputs.Hold = x.Hold;
        outputs.AcceptedCalls = x.Calls.Accepted;
        outputs.AcceptedSwitches = x.Switches.Accepted;
        outputs.AcceptedSenses = x.Senses.Accepted;
        outputs.AcceptedHands = x.Hands.Accepted;
        outputs.AcceptedContacts = x.Contacts.Accepted;
        outputs.LateValves = x.Late;
        outputs.LatchedValves = x.Latched;
        outputs.EarlySwitches = x.Early;
        outputs.StuckSwitches = x.StuckSwitches;
        outputs.Alarms = x.Alarms;
        outputs.ProvenValves = x.Proven;
        outputs.ScanMs = _scanMs;
        outputs.NextDeadlineMs = _deadlineMs;
    }

    /// <summary>How many ints <see cref="Save"/> writes for this house.</summary>
    public int StateLength => _state.Length + 1;

    /// <summary>Where among them the whole seconds since the pump last ran stand; their rest in ms is the next one.</summary>
    public int IdlePlace => _state.IdlePlace;

    /// <summary>Writes everything that bears on what the controller does next, as of its last scan.</summary>
    /// <param name="state">At least <see cref="StateLength"/> long.</param>
    public void Save(int[] state)
    {
        BringUpToDate();
        _state.Save(state);
        // TIME-FAULT looks at it: a scan may come later than announced, but not much.
        state[_state.Length] = _deadlineMs == Never || !_state.Scanned ? 0 : (int)(_deadlineMs - _scanMs);
    }

    /// <summary>Short scans do not count ages; nothing can change before the deadline, so deciding again only counts them.</summary>
    private void BringUpToDate()
    {
        ControllerState x = _state;
        if (_agedMs < _scanMs)
            Decide(x.Calls.Seen, x.Switches.Seen, x.Senses.Seen, x.Hands.Seen, x.Contacts.Seen);
    }

    /// <summary>Takes over a saved state; the next scan continues from it.</summary>
    /// <param name="state">What <see cref="Save"/> wrote for the same settings.</param>
    /// <param name="nowMs">Time of the scan after which it was saved, ms of this controller's clock.</param>
    public void Load(int[] state, long nowMs)
    {
        _state.Load(state);
        NoteAlarms();
        _scanMs = nowMs;
        _agedMs = nowMs;
        int left = state[_state.Length];
        _deadlineMs = left == 0 ? Never : nowMs + left;
        _loaded = true;
    }
}
