using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>What happens to the contacts at one moment of a random run.</summary>
internal enum Happening
{
    Call,
    EndCall,
    TurnSwitch,
    MakeOpenOnes,
    BreakShutOnes,
    TurnSeason,
    Season,
}

/// <summary>A happening, so many scans after the one before.</summary>
internal readonly record struct Moment(int Scans, Happening What, int Zone);

/// <summary>Random lawful settings and a random sequence of contacts: what every property is checked on.</summary>
internal sealed record RandomRun(ControllerSettings Settings, Moment[] Moments)
{
    private static readonly Gen<int> _anyPeriod = Gen.OneOf(10, 50, 100, 1000);

    // Mostly a few scans, now and then so long that every age reaches its cap.
    private static readonly Gen<int> _anyScans = Gen.Frequency((8, Gen.Int[1, 12]), (3, Gen.Int[13, 60]), (1, Gen.Int[60, 200]));

    private static readonly Gen<Moment> _anyMoment = Gen.Select(
        _anyScans,
        Gen.Frequency(
            (4, Gen.Const(Happening.Call)), (3, Gen.Const(Happening.EndCall)), (3, Gen.Const(Happening.TurnSwitch)),
            (4, Gen.Const(Happening.MakeOpenOnes)), (1, Gen.Const(Happening.BreakShutOnes)), (1, Gen.Const(Happening.TurnSeason)),
            (2, Gen.Const(Happening.Season))),
        Gen.Int[0, ControllerSettings.MostZones - 1],
        (scans, what, zone) => new Moment(scans, what, zone));

    private static readonly Gen<int> _anyZones =
        Gen.Frequency((9, Gen.Int[1, 5]), (1, Gen.Const(ControllerSettings.MostZones)));

    public static readonly Gen<Moment[]> AnyMoments = _anyMoment.Array[1, 60];

    public static readonly Gen<RandomRun> Any = Gen.Select(GenSettings(), AnyMoments, (s, moments) => new RandomRun(s, moments));

    /// <summary>Carries out one happening; switches follow the valves that the outputs show.</summary>
    public void Apply(Moment moment, InputImage contacts, int valves)
    {
        int bit = 1 << moment.Zone % Settings.ZoneCount;
        switch (moment.What)
        {
            case Happening.Call: contacts.Calls |= bit; break;
            case Happening.EndCall: contacts.Calls &= ~bit; break;
            case Happening.TurnSwitch: contacts.EndSwitches ^= bit; break;
            case Happening.MakeOpenOnes: contacts.EndSwitches |= valves; break;
            case Happening.BreakShutOnes: contacts.EndSwitches &= valves; break;
            case Happening.TurnSeason: contacts.Lockout = !contacts.Lockout; break;
            case Happening.Season: contacts.Lockout = false; break;
        }
    }

    public override string ToString()
    {
        ControllerSettings s = Settings;
        string zones = string.Join("; ", Enumerable.Range(0, s.ZoneCount).Select(z =>
            $"{z}: capacity {s.Capacity[z]}, {(Bits.Has(s.SwitchedZones, z) ? "switched" : "timed")}, opening {s.OpeningMs[z]}, "
            + $"closing {s.ClosingMs[z]}, switch {s.SwitchMinMs[z]} to {s.SwitchLimitMs[z]}"));
        return $"""
            scan {s.ScanPeriodMs}, minimum {s.MinimumOpen}, standing {s.StandingCapacity}, companions {string.Join(' ', s.CompanionOrder)}
            delay {s.PumpStartDelayMs}, overrun {s.PumpOverrunMs}, rundown {s.PumpRundownMs}, lead {s.HeatLeadMs}, retries {s.ValveRetries}
            debounce {s.CallDebounceMs} {s.SwitchDebounceMs} {s.SeasonDebounceMs}
            {zones}
            {string.Join(", ", Moments.Select(m => $"+{m.Scans} {m.What} {m.Zone % s.ZoneCount}"))}
            """;
    }

    private static Gen<ControllerSettings> GenSettings() =>
        from period in _anyPeriod
        from zones in _anyZones
        from zone in GenZone(period).Array[zones]
        from companions in Gen.Shuffle(Enumerable.Range(0, zones).ToArray())
        from companionCount in Gen.Int[0, zones]
        from standing in Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[0, 4]))
        from minimum in Gen.Int[1, 6]
        from switched in Gen.Int[0, (1 << zones) - 1]
        from retries in Gen.Int[0, 2]
        from delay in Time(period, 0, 20)
        from lead in Time(period, 1, 4)
        from overrun in Time(period, 1, 20)
        from rundown in Time(period, 1, 12)
        from callDebounce in Time(period, 0, 3)
        from switchDebounce in Time(period, 0, 3)
        from seasonDebounce in Time(period, 0, 3)
        select Lawful(new ControllerSettings
        {
            ZoneCount = zones,
            ScanPeriodMs = period,
            Capacity = zone.Select(z => z.Capacity).ToArray(),
            StandingCapacity = standing,
            MinimumOpen = minimum,
            SwitchedZones = switched,
            OpeningMs = zone.Select(z => z.Opening).ToArray(),
            ClosingMs = zone.Select(z => z.Closing).ToArray(),
            SwitchMinMs = zone.Select(z => Math.Min(z.SwitchMin, z.Opening)).ToArray(),
            // Enough for a switch that makes at the last moment to be accepted.
            SwitchLimitMs = zone.Select(z => z.Opening + z.LimitAfter + Math.Min(switchDebounce, 500) + 2 * period).ToArray(),
            ValveRetries = retries,
            CompanionOrder = companions.Take(companionCount).ToArray(),
            PumpStartDelayMs = delay,
            HeatLeadMs = lead,
            PumpOverrunMs = Math.Max(overrun, lead),
            PumpRundownMs = rundown,
            CallDebounceMs = callDebounce,
            SwitchDebounceMs = Math.Min(switchDebounce, 500),
            SeasonDebounceMs = seasonDebounce,
        });

    private static Gen<(int Capacity, int Opening, int Closing, int SwitchMin, int LimitAfter)> GenZone(int period) =>
        Gen.Select(Gen.Int[1, 4], Time(period, 1, 20), Time(period, 1, 15), Time(period, 0, 8), Time(period, 0, 15));

    /// <summary>A time of so many scan periods, half the time not a whole number of them.</summary>
    private static Gen<int> Time(int period, int least, int most) =>
        Gen.OneOf(Gen.Int[least, most].Select(n => n * period), Gen.Int[least * period, most * period]);

    /// <summary>Lowers minimum open to what each zone alone can reach with the companions.</summary>
    private static ControllerSettings Lawful(ControllerSettings s)
    {
        while (SettingsCheck.FirstMistake(s) == "MinimumOpen")
            s.MinimumOpen--;
        return s;
    }
}
