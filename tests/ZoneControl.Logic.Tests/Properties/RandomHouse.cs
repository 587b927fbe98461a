using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>Random lawful settings: every kind of zone and contact, every polarity, times of some scans.</summary>
internal static class RandomHouse
{
    private static readonly Gen<int> _anyPeriod = Gen.OneOf(10, 50, 100, 1000);

    private static readonly Gen<int> _anyZones =
        Gen.Frequency((9, Gen.Int[1, 5]), (1, Gen.Const(ControllerSettings.MostZones)));

    public static readonly Gen<ControllerSettings> Any = OfZones(_anyZones);

    /// <summary>Houses of so many zones.</summary>
    public static Gen<ControllerSettings> OfZones(Gen<int> zones) =>
        from period in _anyPeriod
        from basic in GenBasic(period, zones)
        from contacts in GenContacts(period)
        from load in GenLoad(period)
        from exercise in GenExercise(period)
        select Lawful(basic, contacts, load, exercise);

    private sealed record Zone(int Capacity, int Opening, int Closing, int SwitchMin, int LimitAfter);

    private sealed record Load(bool Known, int[] Hold, int[] More, int[] InrushMs, int Spare);

    private static Gen<ControllerSettings> GenBasic(int period, Gen<int> anyZones) =>
        from zones in anyZones
        from zone in GenZone(period).Array[zones]
        from companions in Gen.Shuffle(Enumerable.Range(0, zones).ToArray())
        from companionCount in Gen.Int[0, zones]
        from standing in Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[0, 4]))
        from minimum in Gen.Int[1, 6]
        from switched in Gen.Int[0, (1 << zones) - 1]
        from gated in Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[0, (1 << zones) - 1]))
        from retries in Gen.Int[0, 2]
        from delay in Time(period, 0, 20)
        from lead in Time(period, 1, 4)
        from overrun in Time(period, 1, 20)
        from rundown in Time(period, 1, 12)
        from callDebounce in Time(period, 0, 3)
        from switchDebounce in Time(period, 0, 3)
        select new ControllerSettings
        {
            ZoneCount = zones,
            ScanPeriodMs = period,
            Capacity = zone.Select(z => z.Capacity).ToArray(),
            StandingCapacity = standing,
            MinimumOpen = minimum,
            SwitchedZones = switched,
            GatedZones = gated,
            OpeningMs = zone.Select(z => z.Opening).ToArray(),
            ClosingMs = zone.Select(z => z.Closing).ToArray(),
            SwitchMinMs = zone.Select(z => Math.Min(z.SwitchMin, z.Opening)).ToArray(),
            // Enough for a switch that makes at the last moment to be accepted.
            SwitchLimitMs = zone.Select(z => z.Opening + z.LimitAfter + Math.Min(switchDebounce, 500) + 2 * period).ToArray(),
            ValveRetries = retries,
            CompanionOrder = companions.Take(companionCount).Where(z => !Bits.Has(gated, z)).ToArray(),
            PumpStartDelayMs = delay,
            HeatLeadMs = lead,
            PumpOverrunMs = Math.Max(overrun, lead),
            PumpRundownMs = rundown,
            CallDebounceMs = callDebounce,
            SwitchDebounceMs = Math.Min(switchDebounce, 500),
        };

    /// <summary>Everything about contacts that belong to no zone, and about polarity.</summary>
    private static Gen<ControllerSettings> GenContacts(int period) =>
        from fitted in Gen.Frequency((1, Gen.Const(Contact.Lockout)), (1, Gen.Const(0)), (4, Gen.Int[0, (1 << Contact.Count) - 1]))
        from inverted in Gen.Int[0, (1 << Contact.Count) - 1]
        from invertedZones in Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[0, 0xFFFF]))
        from debounce in Time(period, 0, 3).Array[Contact.Count]
        from minOff in Gen.OneOf(Gen.Const(0), Time(period, 0, 12))
        from interval in Gen.OneOf(Gen.Const(0), Time(period, 0, 25))
        from flowProof in Time(period, 1, 9)
        from flowLoss in Time(period, 1, 7)
        from flowRetries in Gen.Int[0, 2]
        from freezeHeat in Time(period, 0, 20)
        from priority in Time(period, 1, 30)
        from service in Time(period, 1, 40)
        from stallScans in Gen.Int[1, 4]
        from stallLimit in Time(period, 1, 10)
        select new ControllerSettings
        {
            FittedContacts = fitted,
            InvertedContacts = inverted,
            InvertedCalls = invertedZones,
            ContactDebounceMs = debounce,
            PumpMinOffMs = minOff,
            PumpStartIntervalMs = interval,
            FlowProofMs = flowProof,
            FlowLossMs = flowLoss,
            FlowRetries = flowRetries,
            FreezeHeatMaxMs = freezeHeat,
            PriorityMaxMs = priority,
            ServiceLimitMs = service,
            StallScans = stallScans,
            StallLimitMs = stallLimit,
        };

    private static Gen<Load> GenLoad(int period) =>
        Gen.Select(
            Gen.Int[0, 2], Gen.Int[0, 30].Array[ControllerSettings.MostZones], Gen.Int[0, 60].Array[ControllerSettings.MostZones],
            Time(period, 0, 8).Array[ControllerSettings.MostZones], Gen.Int[0, 80],
            (known, hold, more, inrush, spare) => new Load(known == 0, hold, more, inrush, spare));

    /// <summary>Exercises at intervals of a minute or so, where the scan is slow enough for a run to see that.</summary>
    private static Gen<(int Interval, int Retry, int Run, int Limit)> GenExercise(int period) =>
        from fitted in Gen.Int[0, 2]
        from interval in Gen.Int[60, 90]
        from retry in Gen.Int[60, 80]
        from run in Time(period, 1, 10)
        from limit in Time(period, 1, 60)
        select (fitted == 0 ? 0 : interval, Math.Min(interval, retry), run, Math.Max(run, limit));

    private static Gen<Zone> GenZone(int period) =>
        Gen.Select(
            Gen.Int[1, 4], Time(period, 1, 20), Time(period, 1, 15), Time(period, 0, 8), Time(period, 0, 15),
            (capacity, opening, closing, min, after) => new Zone(capacity, opening, closing, min, after));

    /// <summary>A time of so many scan periods, half the time not a whole number of them.</summary>
    private static Gen<int> Time(int period, int least, int most) =>
        Gen.OneOf(Gen.Int[least, most].Select(n => n * period), Gen.Int[least * period, most * period]);

    private static ControllerSettings Lawful(
        ControllerSettings s, ControllerSettings c, Load load, (int Interval, int Retry, int Run, int Limit) exercise)
    {
        int zones = (1 << s.ZoneCount) - 1;
        s.FittedContacts = c.FittedContacts;
        s.InvertedContacts = c.InvertedContacts;
        s.InvertedCalls = c.InvertedCalls & zones;
        s.InvertedSwitches = (c.InvertedCalls >> 1) & s.SwitchedZones;
        s.InvertedSenses = (c.InvertedCalls >> 2) & s.GatedZones;
        s.ContactDebounceMs = c.ContactDebounceMs.Select((ms, place) => Bits.Has(Contact.Tripping, place) ? Math.Min(ms, 500) : ms).ToArray();
        int limitSeen = s.Has(Contact.Limit) ? s.ContactDebounceMs[Contact.Place(Contact.Limit)] + s.ScanPeriodMs : 0;
        s.PumpMinOffMs = Math.Max(c.PumpMinOffMs, Math.Max(limitSeen, s.Has(Contact.Flow) ? s.ScanPeriodMs : 0));
        s.PumpStartIntervalMs = c.PumpStartIntervalMs;
        (s.FlowProofMs, s.FlowLossMs, s.FlowRetries) = (c.FlowProofMs, c.FlowLossMs, c.FlowRetries);
        (s.FreezeHeatMaxMs, s.PriorityMaxMs, s.ServiceLimitMs) = (c.FreezeHeatMaxMs, c.PriorityMaxMs, c.ServiceLimitMs);
        (s.StallScans, s.StallLimitMs) = (c.StallScans, c.StallLimitMs);
        (s.ExerciseIntervalS, s.ExerciseRetryS, s.ExerciseRunMs, s.ExerciseLimitMs) = exercise;
        s.HoldDeciVa = load.Hold.Take(s.ZoneCount).ToArray();
        s.InrushDeciVa = load.Hold.Zip(load.More, (hold, more) => hold + more).Take(s.ZoneCount).ToArray();
        s.InrushMs = load.InrushMs.Take(s.ZoneCount).Select((ms, zone) => Math.Min(ms, s.OpeningMs[zone])).ToArray();
        int all = Enumerable.Range(0, s.ZoneCount).Where(z => Bits.Has(s.DrivenZones, z)).Sum(z => s.HoldDeciVa[z]);
        int least = Enumerable.Range(0, s.ZoneCount).Max(z => all + s.InrushDeciVa[z]);
        s.TransformerDeciVa = load.Known ? least + load.Spare : 0;
        // Lowers minimum open to what each zone alone can reach with the companions.
        while (SettingsCheck.FirstMistake(s) == "MinimumOpen")
            s.MinimumOpen--;
        if (s.StandingCapacity >= s.MinimumOpen && s.PumpStartIntervalMs == 0)
            s.PumpMinOffMs = Math.Max(s.PumpMinOffMs, s.ScanPeriodMs);
        return s;
    }
}
