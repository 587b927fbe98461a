namespace ZoneControl.Logic.Tests;

/// <summary>
/// Settings of a small invented house: every zone timed and of capacity 1, every zone a companion in order, times small
/// and different from each other, no debounce. A test changes what it is about.
/// </summary>
internal sealed class House
{
    public const int Scan = 100;
    public const int Opening = 2000;
    public const int Closing = 1500;
    public const int SwitchMin = 500;
    public const int SwitchLimit = 3000;
    public const int StartDelay = 1000;
    public const int Overrun = 1700;
    public const int Rundown = 800;
    public const int HeatLead = 300;
    public const int FlowProof = 900;
    public const int FlowLoss = 400;
    public const int PriorityMax = 30_000;
    public const int ServiceLimit = 20_000;
    public const int FreezeHeatMax = 5000;
    public const int StallScans = 5;
    public const int StallLimit = 700;

    private readonly ControllerSettings _settings;

    private House(int zones)
    {
        _settings = new ControllerSettings
        {
            ZoneCount = zones,
            ScanPeriodMs = Scan,
            Capacity = Each(zones, 1),
            MinimumOpen = 1,
            OpeningMs = Each(zones, Opening),
            ClosingMs = Each(zones, Closing),
            SwitchMinMs = Each(zones, SwitchMin),
            SwitchLimitMs = Each(zones, SwitchLimit),
            ValveRetries = 1,
            CompanionOrder = Enumerable.Range(0, zones).ToArray(),
            PumpStartDelayMs = StartDelay,
            PumpOverrunMs = Overrun,
            PumpRundownMs = Rundown,
            HeatLeadMs = HeatLead,
            FlowProofMs = FlowProof,
            FlowLossMs = FlowLoss,
            FlowRetries = 1,
            HoldDeciVa = Each(zones, 0),
            InrushDeciVa = Each(zones, 0),
            InrushMs = Each(zones, 0),
            PriorityMaxMs = PriorityMax,
            ServiceLimitMs = ServiceLimit,
            FreezeHeatMaxMs = FreezeHeatMax,
            StallScans = StallScans,
            StallLimitMs = StallLimit,
        };
    }

    public static House OfZones(int zones) => new(zones);

    public House Minimum(int capacity) => With(s => s.MinimumOpen = capacity);

    public House Standing(int capacity) => With(s => (s.StandingCapacity, s.PumpMinOffMs) = (capacity, Math.Max(s.PumpMinOffMs, Scan)));

    public House Capacity(params int[] capacities) => With(s => s.Capacity = capacities);

    public House Switched(params int[] zones) => With(s => s.SwitchedZones = Bits.Of(zones));

    public House Companions(params int[] order) => With(s => s.CompanionOrder = order);

    public House Retries(int retries) => With(s => s.ValveRetries = retries);

    /// <summary>Wires these contacts of <see cref="Contact"/> as well as the season's.</summary>
    public House Fit(int contacts) => With(s =>
    {
        s.FittedContacts |= contacts;
        if (s.Has(Contact.Limit) || s.Has(Contact.Flow))
            s.PumpMinOffMs = Math.Max(s.PumpMinOffMs, Scan);
    });

    public House Gated(params int[] zones) => With(s =>
    {
        s.GatedZones = Bits.Of(zones);
        s.CompanionOrder = s.CompanionOrder.Except(zones).ToArray();
    });

    /// <summary>Every zone draws so much, in tenths of a VA, held and while it starts for so long.</summary>
    public House Transformer(int deciVa, int hold, int inrush, int inrushMs) => With(s =>
    {
        s.TransformerDeciVa = deciVa;
        s.HoldDeciVa = Each(s.ZoneCount, hold);
        s.InrushDeciVa = Each(s.ZoneCount, inrush);
        s.InrushMs = Each(s.ZoneCount, inrushMs);
    });

    public House Exercised(int intervalS, int retryS, int runMs, int limitMs) => With(s =>
        (s.ExerciseIntervalS, s.ExerciseRetryS, s.ExerciseRunMs, s.ExerciseLimitMs) = (intervalS, retryS, runMs, limitMs));

    public House With(Action<ControllerSettings> change)
    {
        change(_settings);
        return this;
    }

    public ControllerSettings Settings() => _settings;

    private static int[] Each(int zones, int value) => Enumerable.Repeat(value, zones).ToArray();
}

/// <summary>Zone masks, written as zone numbers.</summary>
internal static class Bits
{
    public static int Of(params int[] zones) => zones.Aggregate(0, (mask, zone) => mask | 1 << zone);

    public static bool Has(int mask, int zone) => (mask & (1 << zone)) != 0;
}
