using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>Lawful settings at random.</summary>
#pragma warning disable CA5394 // which numbers come is the same in every run of one seed; nothing here is secret
internal static class RandomSettings
{
    /// <param name="random">Where the numbers come from.</param>
    /// <param name="plain">Nothing but thermostats, end switches and the season contact.</param>
    public static ControllerSettings For(Random random, bool plain)
    {
        while (true)
        {
            ControllerSettings s = Plain(random);
            if (!plain)
                AddContacts(random, s);
            if (SettingsCheck.FirstMistake(s) is null)
                return s;
        }
    }

    private static ControllerSettings Plain(Random random)
    {
        int zones = random.Next(1, 6);
        int[] order = [.. Enumerable.Range(0, zones).OrderBy(_ => random.Next())];
        int[] opening = Each(random, zones, 300, 8_000);
        int lead = random.Next(100, 2_000);
        return new ControllerSettings
        {
            ZoneCount = zones,
            ScanPeriodMs = 100,
            Capacity = Each(random, zones, 1, 4),
            StandingCapacity = random.Next(3),
            MinimumOpen = random.Next(1, 6),
            SwitchedZones = random.Next(1 << zones),
            OpeningMs = opening,
            ClosingMs = Each(random, zones, 300, 8_000),
            SwitchMinMs = Each(random, zones, 0, 2_000),
            SwitchLimitMs = [.. opening.Select(ms => ms + random.Next(0, 6_000))],
            ValveRetries = random.Next(4),
            CompanionOrder = [.. order.Take(random.Next(zones + 1))],
            PumpStartDelayMs = Maybe(random, 10_000),
            PumpOverrunMs = lead + Maybe(random, 10_000),
            PumpRundownMs = 100 + Maybe(random, 6_000),
            HeatLeadMs = lead,
            CallDebounceMs = Maybe(random, 1_000),
            SwitchDebounceMs = Maybe(random, 500),
            SeasonDebounceMs = Maybe(random, 1_000),
        };
    }

    private static void AddContacts(Random random, ControllerSettings s)
    {
        int zones = (1 << s.ZoneCount) - 1;
        s.FittedContacts = random.Next(1 << Contact.Count);
        s.InvertedContacts = random.Next(1 << Contact.Count);
        for (int place = 0; place < Contact.Count; place++)
            s.ContactDebounceMs[place] = Maybe(random, (Contact.Tripping & (1 << place)) != 0 ? 500 : 1_000);
        s.GatedZones = random.Next(3) == 0 ? random.Next(1 << s.ZoneCount) : 0;
        s.CompanionOrder = [.. s.CompanionOrder.Where(zone => (s.GatedZones & (1 << zone)) == 0)];
        s.InvertedCalls = random.Next(1 << s.ZoneCount) & zones;
        s.InvertedSwitches = random.Next(1 << s.ZoneCount) & s.SwitchedZones;
        s.InvertedSenses = random.Next(1 << s.ZoneCount) & s.GatedZones;
        s.PumpMinOffMs = Maybe(random, 4_000) + (s.Has(Contact.Flow) ? s.ScanPeriodMs : 0);
        s.PumpStartIntervalMs = Maybe(random, 15_000);
        s.FlowProofMs = random.Next(1, 4_000);
        s.FlowLossMs = random.Next(1, 3_000);
        s.FlowRetries = random.Next(3);
        s.FreezeHeatMaxMs = Maybe(random, 20_000);
        s.PriorityMaxMs = random.Next(1, 30_000);
        s.ServiceLimitMs = random.Next(1, 30_000);
        s.StallScans = random.Next(1, 12);
        s.StallLimitMs = random.Next(100, 2_000);
        AddLoads(random, s);
        if (random.Next(2) == 0)
            AddExercise(random, s);
    }

    private static void AddLoads(Random random, ControllerSettings s)
    {
        s.HoldDeciVa = Each(random, s.ZoneCount, 0, 100);
        s.InrushDeciVa = [.. s.HoldDeciVa.Select(va => va + random.Next(200))];
        s.InrushMs = [.. s.OpeningMs.Select(ms => random.Next(ms + 1))];
        s.TransformerDeciVa = Maybe(random, 500);
    }

    private static void AddExercise(Random random, ControllerSettings s)
    {
        s.ExerciseIntervalS = random.Next(60, 120);
        s.ExerciseRetryS = random.Next(60, s.ExerciseIntervalS + 1);
        s.ExerciseRunMs = random.Next(1, 20_000);
        s.ExerciseLimitMs = s.ExerciseRunMs + random.Next(40_000);
    }

    private static int Maybe(Random random, int below) => random.Next(2) * random.Next(below);

    private static int[] Each(Random random, int zones, int least, int below)
    {
        int[] values = new int[zones];
        for (int zone = 0; zone < zones; zone++)
            values[zone] = random.Next(least, below);
        return values;
    }
}
#pragma warning restore CA5394
