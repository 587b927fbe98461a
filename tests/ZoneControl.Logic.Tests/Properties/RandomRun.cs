using CsCheck;

namespace ZoneControl.Logic.Tests;

/// <summary>What happens to contacts, power and clock at one moment of a random run.</summary>
internal enum Happening
{
    Nothing,
    Call,
    EndCall,
    TurnSwitch,
    MakeOpenOnes,
    BreakShutOnes,
    FollowSwitches,
    TurnSense,
    TurnHand,
    HandsOff,
    TurnContact,
    PressReset,
    FollowFlow,
    Season,
    Quiet,
    AllOn,
    AllOff,
    Swap,
    ChatterCall,
    ChatterSwitch,
    ChatterContact,
    PowerCut,
    ClockBack,
    ClockJump,
    ClockStall,
}

/// <summary>A happening, and so many scans until the next. The number chooses a zone, a contact or a size.</summary>
internal readonly record struct Moment(int Scans, Happening What, int Number);

/// <summary>Random lawful settings and a random sequence of happenings: what every property is checked on.</summary>
internal sealed record RandomRun(ControllerSettings Settings, Moment[] Moments)
{
    // Mostly a few scans, now and then so long that every age reaches its cap.
    private static readonly Gen<int> _anyScans = Gen.Frequency((8, Gen.Int[1, 12]), (3, Gen.Int[13, 60]), (1, Gen.Int[60, 200]));

    private static readonly Gen<Moment> _anyMoment = Gen.Select(
        _anyScans,
        Gen.Frequency(
            (8, Gen.Const(Happening.Call)), (6, Gen.Const(Happening.EndCall)), (4, Gen.Const(Happening.TurnSwitch)),
            (5, Gen.Const(Happening.MakeOpenOnes)), (2, Gen.Const(Happening.BreakShutOnes)), (2, Gen.Const(Happening.FollowSwitches)),
            (4, Gen.Const(Happening.TurnSense)), (2, Gen.Const(Happening.TurnHand)), (2, Gen.Const(Happening.HandsOff)),
            (8, Gen.Const(Happening.TurnContact)), (2, Gen.Const(Happening.PressReset)), (3, Gen.Const(Happening.FollowFlow)),
            (3, Gen.Const(Happening.Season)), (5, Gen.Const(Happening.Quiet)), (3, Gen.Const(Happening.Nothing)), (9, _anyOddity)),
        Gen.Int[0, ControllerSettings.MostZones - 1],
        (scans, what, number) => new Moment(scans, what, number));

    private static Gen<Happening> _anyOddity =>
        Gen.OneOf(
            Happening.AllOn, Happening.AllOff, Happening.Swap, Happening.ChatterCall, Happening.ChatterSwitch, Happening.ChatterContact,
            Happening.PowerCut, Happening.ClockBack, Happening.ClockJump, Happening.ClockStall);

    public static readonly Gen<Moment[]> AnyMoments = _anyMoment.Array[1, 60];

    public static readonly Gen<RandomRun> Any =
        Gen.Select(RandomHouse.Any, AnyMoments, (s, moments) => new RandomRun(s, moments));

    public override string ToString()
    {
        ControllerSettings s = Settings;
        string zones = string.Join("; ", Enumerable.Range(0, s.ZoneCount).Select(z =>
            $"{z}: capacity {s.Capacity[z]}, {(Bits.Has(s.GatedZones, z) ? "gated, " : "")}{(Bits.Has(s.SwitchedZones, z) ? "switched" : "timed")}, "
            + $"opening {s.OpeningMs[z]}, closing {s.ClosingMs[z]}, switch {s.SwitchMinMs[z]} to {s.SwitchLimitMs[z]}, "
            + $"load {s.HoldDeciVa[z]} {s.InrushDeciVa[z]} for {s.InrushMs[z]}"));
        return $"""
            scan {s.ScanPeriodMs}, minimum {s.MinimumOpen}, standing {s.StandingCapacity}, companions {string.Join(' ', s.CompanionOrder)}
            delay {s.PumpStartDelayMs}, overrun {s.PumpOverrunMs}, rundown {s.PumpRundownMs}, lead {s.HeatLeadMs}, retries {s.ValveRetries}
            rest {s.PumpMinOffMs} {s.PumpStartIntervalMs}, flow {s.FlowProofMs} {s.FlowLossMs} {s.FlowRetries}, transformer {s.TransformerDeciVa}
            exercise {s.ExerciseIntervalS} {s.ExerciseRetryS} {s.ExerciseRunMs} {s.ExerciseLimitMs}, freeze {s.FreezeHeatMaxMs}, priority {s.PriorityMaxMs}, service {s.ServiceLimitMs}, stall {s.StallScans} {s.StallLimitMs}
            debounce {s.CallDebounceMs} {s.SwitchDebounceMs} {string.Join(' ', s.ContactDebounceMs)}, fitted {s.FittedContacts:b}, inverted {s.InvertedContacts:b} {s.InvertedCalls:b}
            {zones}
            {string.Join(", ", Moments.Select(m => $"{m.What} {m.Number} +{m.Scans}"))}
            """;
    }
}
