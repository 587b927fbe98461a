using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>Beginnings and whole days that keep every rule. Times in ms.</summary>
internal static class Scene
{
    /// <summary>Power-up at 0, nobody calls.</summary>
    public static TraceBuilder Quiet() => new TraceBuilder().At(0).PowerUp().At(100);

    /// <summary>Kiln calls at 1,000, is proven at 11,000; the pump is not yet on.</summary>
    public static TraceBuilder KilnOpens() => Quiet()
        .At(1_000).Call(Kiln).Valve(Kiln).Hold(HoldReason.Proof)
        .At(11_000).Hold(HoldReason.StartDelay);

    /// <summary>Kiln calls at 1,000 and runs from 13,000.</summary>
    public static TraceBuilder KilnRuns() => KilnOpens()
        .At(13_000).Pump().Heat().Hold(HoldReason.None);

    /// <summary>Kiln's call ends at 40,000: overrun to 60,000, rundown to 65,000.</summary>
    public static TraceBuilder KilnDay() => KilnRuns()
        .At(40_000).NoCall(Kiln).NoHeat()
        .At(60_000).NoPump()
        .At(65_000).NoValve(Kiln)
        .End(120_000);

    /// <summary>Loft calls at 1,000, its switch makes at 9,000, it runs from 13,000.</summary>
    public static TraceBuilder LoftRuns() => Quiet()
        .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
        .At(9_000).Switch(Loft).Hold(HoldReason.StartDelay)
        .At(13_000).Pump().Heat().Hold(HoldReason.None);

    /// <summary>Loft's call ends at 40,000 and it stops like <see cref="KilnDay"/>.</summary>
    public static TraceBuilder LoftDay() => LoftRuns()
        .At(40_000).NoCall(Loft).NoHeat()
        .At(60_000).NoPump()
        .At(65_000).NoValve(Loft)
        .At(67_000).NoSwitch(Loft)
        .End(120_000);

    /// <summary>Loft's switch opens at 30,000 and takes the pump off at once; it makes again at 35,000.</summary>
    public static TraceBuilder LoftTrips() => LoftRuns()
        .At(30_000).NoSwitch(Loft).NoPump().NoHeat().Hold(HoldReason.Proof)
        .At(35_000).Switch(Loft).Pump().Heat().Hold(HoldReason.None)
        .End(39_000);

    /// <summary>Glaze calls at 1,000 with Shop as its companion; both are proven at 11,000, it runs from 13,000.</summary>
    public static TraceBuilder GlazeRuns() => Quiet()
        .At(1_000).Call(Glaze).Valve(Glaze).Valve(Shop).Hold(HoldReason.Proof)
        .At(8_000).Switch(Shop)
        .At(11_000).Hold(HoldReason.StartDelay)
        .At(13_000).Pump().Heat().Hold(HoldReason.None);

    /// <summary>Kiln runs, Glaze joins at 20,000 and is proven at 30,000.</summary>
    public static TraceBuilder KilnAndGlazeRun() => KilnRuns()
        .At(20_000).Call(Glaze).Valve(Glaze);

    /// <summary>Then Kiln's call ends at 40,000; Shop opens, proves at 47,000, and Kiln is released.</summary>
    public static TraceBuilder Handover() => KilnAndGlazeRun()
        .At(40_000).NoCall(Kiln).Valve(Shop)
        .At(47_000).Switch(Shop).NoValve(Kiln)
        .End(60_000);

    /// <summary>Loft calls at 1,000 and never makes: late at 16,000, released, Glaze and Shop open in its place.</summary>
    public static TraceBuilder LoftIsLate() => Quiet()
        .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
        .At(16_000).Late(Loft).NoValve(Loft).Valve(Glaze).Valve(Shop)
        .At(23_000).Switch(Shop);

    /// <summary>Then tried again at 24,000; the others run from 26,000.</summary>
    public static TraceBuilder LoftIsRetried() => LoftIsLate()
        .At(24_000).Valve(Loft)
        .At(26_000).Pump().Heat().Hold(HoldReason.None);

    /// <summary>The retry runs out at 39,000: latched. That was the only call, so the pump overruns to 59,000.</summary>
    public static TraceBuilder LoftIsLatched() => LoftIsRetried()
        .At(39_000).Latched(Loft).NoValve(Loft).NoHeat()
        .At(59_000).NoPump().Hold(HoldReason.ValveLatched)
        .At(64_000).NoValve(Glaze).NoValve(Shop)
        .At(66_000).NoSwitch(Shop)
        .End(120_000);

    /// <summary>Loft's switch makes after 1 s, too soon; believed from 13,000 on, when the pump goes on.</summary>
    public static TraceBuilder LoftIsEarly() => Quiet()
        .At(1_000).Call(Loft).Valve(Loft).Hold(HoldReason.Proof)
        .At(2_000).Switch(Loft).Early(Loft)
        .At(13_000).Pump().Heat().Hold(HoldReason.None)
        .End(40_000);

    /// <summary>Lockout at 40,000 while Kiln runs: an orderly stop, and Kiln's call does nothing.</summary>
    public static TraceBuilder LockoutWhileRunning() => KilnRuns()
        .At(40_000).Lockout().NoHeat()
        .At(60_000).NoPump().Hold(HoldReason.Lockout)
        .At(65_000).NoValve(Kiln)
        .End(120_000);

    /// <summary>Power is cut at 30,000 while Kiln runs, and comes back at 32,000 with the call still there.</summary>
    public static TraceBuilder PowerCutWhileRunning() => KilnRuns()
        .At(30_000).PowerCut()
        .At(32_000).PowerUp().Hold(HoldReason.Proof)
        .At(32_100).Valve(Kiln)
        .At(42_100).Hold(HoldReason.StartDelay)
        .At(44_000).Pump().Heat().Hold(HoldReason.None)
        .End(60_000);
}
