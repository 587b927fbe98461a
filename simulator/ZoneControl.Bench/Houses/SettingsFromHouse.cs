using ZoneControl.Logic;

namespace ZoneControl.Bench.Houses;

/// <summary>What the controller is built from, taken from a house.</summary>
public static class SettingsFromHouse
{
    /// <summary>The controller's settings for a house, in ms and zone masks.</summary>
    public static ControllerSettings ToSettings(this House house)
    {
        HouseController c = house.Controller;
        return new ControllerSettings
        {
            ZoneCount = house.Zones.Count,
            ScanPeriodMs = Ms(c.ScanPeriod),
            Capacity = Each(house, zone => zone.Capacity.Value),
            StandingCapacity = house.StandingCapacity,
            MinimumOpen = c.MinimumOpen,
            SwitchedZones = house.Zones.Select((zone, i) => zone.Actuator.HasSwitch ? 1 << i : 0).Sum(),
            OpeningMs = Each(house, zone => Ms(zone.ProofTime)),
            ClosingMs = Each(house, zone => Ms(zone.ClosingTime)),
            SwitchMinMs = Each(house, zone => Ms(zone.SwitchMinTime)),
            SwitchLimitMs = Each(house, zone => Ms(zone.SwitchLimit)),
            ValveRetries = c.ValveRetries.Value,
            CompanionOrder = [.. c.Companions.Value],
            PumpStartDelayMs = Ms(c.PumpStartDelay),
            PumpOverrunMs = Ms(c.PumpOverrun),
            PumpRundownMs = Ms(c.PumpRundown),
            HeatLeadMs = Ms(c.HeatLead),
            CallDebounceMs = Ms(c.CallDebounce),
            SwitchDebounceMs = Ms(c.SwitchDebounce),
            SeasonDebounceMs = Ms(c.SeasonDebounce),
            FittedContacts = house.Contacts.Season ? Contact.Lockout : 0,
        };
    }

    private static int[] Each(House house, Func<HouseZone, int> value) => [.. house.Zones.Select(value)];

    private static int Ms(Setting<TimeSpan> time) => (int)Math.Round(time.Value.TotalMilliseconds);
}
