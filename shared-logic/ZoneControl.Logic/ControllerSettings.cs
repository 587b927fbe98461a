namespace ZoneControl.Logic;

/// <summary>
/// What one house asks of the controller. Filled once, before the controller is built, and not changed afterwards.
/// All times are milliseconds; per-zone arrays have <see cref="ZoneCount"/> entries, in the house file's order.
/// </summary>
/// <remarks>
/// <see cref="SettingsCheck"/> says which values are lawful. Nothing here has a default that suits every house: the house
/// file's reader derives each value from the actuators and states it.
/// </remarks>
public sealed class ControllerSettings
{
    /// <summary>The most zones one controller serves: one bit of an <c>int</c> mask each.</summary>
    public const int MostZones = 16;

    /// <summary>The longest time any setting may have: 7 days, in ms. Ages stay far from overflow.</summary>
    public const int LongestMs = 7 * 24 * 3600 * 1000;

    /// <summary>Zones served, 1 to <see cref="MostZones"/>.</summary>
    public int ZoneCount;

    /// <summary>Time between scans, ms; 10 to 1,000.</summary>
    public int ScanPeriodMs;

    /// <summary>Capacity of each zone when open: a whole number, 1 to 1,000 (its loop count unless the house says a design flow).</summary>
    public int[] Capacity = new int[0];

    /// <summary>Capacity that is always open: loops without an actuator, or a sufficient bypass. 0 to 16,000.</summary>
    public int StandingCapacity;

    /// <summary>Capacity that must be proven before and while the pump runs; at least 1.</summary>
    public int MinimumOpen;

    /// <summary>Zones whose end switch is wired: their proof is <i>switched</i>. The others' proof is <i>timed</i>.</summary>
    public int SwitchedZones;

    /// <summary>Time from energised to surely open, per zone, ms; more than 0.</summary>
    public int[] OpeningMs = new int[0];

    /// <summary>Time from released to surely shut, per zone, ms; more than 0.</summary>
    public int[] ClosingMs = new int[0];

    /// <summary>A switch that makes sooner than this after its valve was energised is not believed (VALVE-EARLY), ms; 0 to <see cref="OpeningMs"/>.</summary>
    public int[] SwitchMinMs = new int[0];

    /// <summary>A switched valve not proven this long after it was energised is late (VALVE-LATE), ms; at least <see cref="OpeningMs"/>, debounce and two scans.</summary>
    public int[] SwitchLimitMs = new int[0];

    /// <summary>How often a late valve is released and tried again before it is latched; 0 to 100.</summary>
    public int ValveRetries;

    /// <summary>Companion zones in the order in which they are taken: zone numbers, each at most once, possibly none.</summary>
    public int[] CompanionOrder = new int[0];

    /// <summary>The pump goes on no sooner than this after demand rose (PUMP-DELAY), ms; 0 or more.</summary>
    public int PumpStartDelayMs;

    /// <summary>The pump runs on this long after demand ended (PUMP-OVERRUN), ms; at least <see cref="HeatLeadMs"/>.</summary>
    public int PumpOverrunMs;

    /// <summary>Valves stay open this long after the pump stopped, while it runs down (PUMP-ORDER), ms; at least one scan period.</summary>
    public int PumpRundownMs;

    /// <summary>Heat demand goes off this long before the pump in an orderly stop (HEAT-FIRST-OFF), ms; at least one scan period.</summary>
    public int HeatLeadMs;

    /// <summary>A thermostat contact counts once it has stood this long, ms; 0 or more.</summary>
    public int CallDebounceMs;

    /// <summary>An end switch counts once it has stood this long, ms; 0 to 500, because PUMP-TRIP allows no more.</summary>
    public int SwitchDebounceMs;

    /// <summary>Each contact of <see cref="Contact"/> counts once it has stood this long, ms; 0 or more, 0 to 500 for those that trip.</summary>
    public int[] ContactDebounceMs = new int[Contact.Count];

    /// <summary>The season contact's time among them, ms.</summary>
    public int SeasonDebounceMs
    {
        get => ContactDebounceMs[0];
        set => ContactDebounceMs[0] = value;
    }

    /// <summary>Contacts that are wired; the others are never asserted.</summary>
    public int FittedContacts = Contact.Lockout;

    /// <summary>Contacts that are asserted when open. <see cref="Contact.AssertedOpen"/> always are.</summary>
    public int InvertedContacts = Contact.AssertedOpen;

    /// <summary>Zones whose thermostat asks with an open contact.</summary>
    public int InvertedCalls;

    /// <summary>Zones whose end switch is open when its valve is open.</summary>
    public int InvertedSwitches;

    /// <summary>Zones whose sense input is open when the valve is energised.</summary>
    public int InvertedSenses;

    /// <summary>Zones whose valve an existing panel drives and ZoneControl only senses (GATE); their sense is their call.</summary>
    public int GatedZones;

    /// <summary>
    /// The pump rests this long after a stop (PUMP-REST), ms; 0 or more; at least a scan period with a flow switch, and where
    /// standing capacity reaches minimum open and starts have no interval. After power-up it rests first.
    /// </summary>
    public int PumpMinOffMs;

    /// <summary>A start comes at least this long after the last (PUMP-REST), ms: an hour over the starts allowed; 0 or more.</summary>
    public int PumpStartIntervalMs;

    /// <summary>A start without flow this long is tripped (PUMP-FLOW), ms; more than 0 where a flow switch is fitted.</summary>
    public int FlowProofMs;

    /// <summary>A running pump without flow this long is tripped (PUMP-FLOW), ms; more than 0 where a flow switch is fitted.</summary>
    public int FlowLossMs;

    /// <summary>How often the pump is tried again after a flow trip before it is latched; 0 to 100.</summary>
    public int FlowRetries;

    /// <summary>What the actuators' transformer can give, in tenths of a VA; 0 when nobody says (VALVE-STAGGER is then not kept).</summary>
    public int TransformerDeciVa;

    /// <summary>Load of a zone's open valves, tenths of a VA; 0 or more.</summary>
    public int[] HoldDeciVa = new int[0];

    /// <summary>Load of a zone's valves while they start to open, tenths of a VA; at least <see cref="HoldDeciVa"/>.</summary>
    public int[] InrushDeciVa = new int[0];

    /// <summary>How long that start lasts, ms; 0 or more.</summary>
    public int[] InrushMs = new int[0];

    /// <summary>Pump and valves are exercised after so long without a run (SEASON-EXERCISE), s; 0 for never, up to a year.</summary>
    public int ExerciseIntervalS;

    /// <summary>An exercise that something forbids is put off by so long, s; at least 60.</summary>
    public int ExerciseRetryS = 3600;

    /// <summary>The pump runs so long in an exercise, ms; more than 0 where there are exercises.</summary>
    public int ExerciseRunMs;

    /// <summary>An exercise that has not run the pump by then is put off, ms; more than every opening time and delay together.</summary>
    public int ExerciseLimitMs;

    /// <summary>In lockout a freeze contact gets heat for at most so long (FREEZE), ms; 0 or more.</summary>
    public int FreezeHeatMaxMs;

    /// <summary>Priority that lasts longer is alarmed and ignored until it releases (PRIORITY), ms; more than 0 where fitted.</summary>
    public int PriorityMaxMs;

    /// <summary>Hand commands end by themselves after so long (SERVICE), ms; more than 0.</summary>
    public int ServiceLimitMs = 1;

    /// <summary>So many scans at one and the same time with the pump on are a fault of the clock (TIME-FAULT); 1 to 1,000.</summary>
    public int StallScans = 10;

    /// <summary>A scan so much later than the announced deadline is a fault of the clock (TIME-FAULT), ms; at least a scan period.</summary>
    public int StallLimitMs = 1000;

    /// <summary>Zones whose valves ZoneControl drives.</summary>
    public int DrivenZones => ((1 << ZoneCount) - 1) & ~GatedZones;

    /// <summary>Whether a contact is wired.</summary>
    public bool Has(int contact) => (FittedContacts & contact) != 0;
}
