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
            SwitchedZones = Mask(house, zone => zone.Actuator.HasSwitch),
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
            ContactDebounceMs = Debounces(house),
            FittedContacts = house.Contacts.Mask,
            InvertedContacts = Inverted(house.Contacts) | Contact.AssertedOpen,
            InvertedCalls = Mask(house, zone => zone.CallBreaks),
            InvertedSwitches = Mask(house, zone => zone.Actuator.SwitchBreaks),
            InvertedSenses = Mask(house, zone => zone.SenseBreaks),
            GatedZones = house.GatedZones,
            PumpMinOffMs = Ms(c.PumpMinOff),
            PumpStartIntervalMs = (int)c.PumpStartInterval.TotalMilliseconds,
            FlowProofMs = Ms(c.FlowProofTime),
            FlowLossMs = Ms(c.FlowLossTime),
            FlowRetries = c.FlowRetries.Value,
            TransformerDeciVa = house.Transformer?.AllowedDeciVa ?? 0,
            HoldDeciVa = Each(house, zone => DeciVa(zone.HoldVa)),
            InrushDeciVa = Each(house, zone => DeciVa(zone.InrushVa)),
            InrushMs = Each(house, zone => Ms(zone.Actuator.InrushTime)),
            ExerciseIntervalS = Seconds(c.ExerciseInterval),
            ExerciseRetryS = Seconds(c.ExerciseRetry),
            ExerciseRunMs = Ms(c.ExerciseRun),
            ExerciseLimitMs = Derivations.ExerciseLimitMs(house),
            FreezeHeatMaxMs = Ms(c.FreezeHeatMax),
            PriorityMaxMs = Ms(c.PriorityMax),
            ServiceLimitMs = Ms(c.ServiceLimit),
            StallScans = c.StallScans.Value,
            StallLimitMs = Ms(c.StallLimit),
        };
    }

    /// <summary>What one zone needs to open while all others are held, tenths of a VA, each zone's load rounded up.</summary>
    internal static int Tenths(IEnumerable<HouseZone> driven, HouseZone opening) =>
        driven.Sum(zone => zone == opening ? DeciVa(zone.InrushVa) : DeciVa(zone.HoldVa));

    private static int DeciVa(double va) => (int)Math.Ceiling((va * 10) - 1e-6);

    private static int Seconds(Setting<TimeSpan> time) => (int)Math.Round(time.Value.TotalSeconds);

    private static int Mask(House house, Func<HouseZone, bool> holds) =>
        house.Zones.Select((zone, i) => holds(zone) ? 1 << i : 0).Sum();

    private static int Inverted(HouseContacts contacts) =>
        contacts.Fitted.Sum(contact => contact.ClosedAsserts.Value ? 0 : contact.Kind.Contact);

    private static int[] Debounces(House house)
    {
        int[] times = new int[Contact.Count];
        foreach (HouseContact contact in house.Contacts.Fitted)
            times[Contact.Place(contact.Kind.Contact)] = Ms(contact.Debounce);
        times[Contact.Place(Contact.ServicePump)] = Ms(house.Controller.CallDebounce);
        return times;
    }

    private static int[] Each(House house, Func<HouseZone, int> value) => [.. house.Zones.Select(value)];

    private static int Ms(Setting<TimeSpan> time) => (int)Math.Round(time.Value.TotalMilliseconds);
}
