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

    /// <summary>The season contact counts once it has stood this long, ms; 0 or more.</summary>
    public int SeasonDebounceMs;
}
