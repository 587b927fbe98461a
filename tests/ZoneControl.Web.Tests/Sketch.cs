using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests;

/// <summary>
/// Draws traces by hand for tests of what people see: frames as told, stems that follow their valves in a straight line.
/// It knows no controller and no physics.
/// </summary>
internal sealed class Sketch(int zones)
{
    private const long DeadTimeMs = 30_000;
    private const long StrokeMs = 150_000;
    private const long StepMs = 5_000;

    private readonly List<Frame> _frames = [];

    /// <summary>From this moment on the frame is the one before with these changes.</summary>
    public Sketch At(double minutes, Func<Frame, Frame> change)
    {
        Frame last = _frames.Count > 0 ? _frames[^1] with { PowerUp = false } : new Frame { Ms = 0, PowerUp = true };
        _frames.Add(change(last) with { Ms = (long)(minutes * 60_000) });
        return this;
    }

    public Trace Finish(double minutes)
    {
        long end = (long)(minutes * 60_000);
        var samples = new List<PlantSample>();
        var travel = new double[zones];
        double water = 18, deadhead = 0;
        for (long ms = 0; ms <= end; ms += StepMs)
        {
            Frame now = InForce(ms);
            for (int z = 0; z < zones; z++)
                travel[z] = Math.Clamp(travel[z] + (Moving(ms, z) ? 1 : -1) * (double)StepMs / StrokeMs, 0, 1);
            double open = travel.Sum();
            double flow = now.Pump ? 0.00025 * open / (open + 2) : 0;
            bool starved = now.Pump && flow < 0.00002;
            water += starved ? 0.25 : now.Pump ? (32 - water) * 0.05 : (18 - water) * 0.002;
            samples.Add(new PlantSample
            {
                Ms = ms,
                RawCalls = now.Calls,
                RawSwitches = now.EndSwitches,
                Travel = [.. travel],
                ZoneFlowM3s = [.. travel.Select(t => open > 0 ? flow * t / open : 0)],
                PumpFlowM3s = flow,
                BypassFlowM3s = 0,
                PumpHeadM = now.Pump ? 5 - 3000 * flow : 0,
                TrappedWaterC = water,
                DeadheadS = deadhead,
            });
            deadhead += starved ? StepMs / 1000.0 : 0;
        }

        return new Trace(_frames, samples, end);
    }

    private bool Moving(long ms, int zone) => (InForce(ms - DeadTimeMs).Valves & 1 << zone) != 0;

    private Frame InForce(long ms) => _frames.LastOrDefault(f => f.Ms <= ms, new Frame { Ms = 0 });
}

/// <summary>A made-up morning in a made-up place, as a controller might have run it and as plain wiring would.</summary>
internal static class Morning
{
    public static readonly IReadOnlyList<ZoneView> Zones =
    [
        new("Throwing room", "end switch, 2 loops"),
        new("Glaze kitchen", "end switch, 2 loops"),
        new("Drying store", "timed, 2 loops"),
        new("Shop", "timed, 2 loops"),
        new("Flat living", "end switch, 1 loop"),
        new("Flat bath", "timed, 1 loop"),
    ];

    public static ReportView Report(UnitSystem units = UnitSystem.Metric, bool passed = true, bool compared = true) => new(
        "Pottery with a flat above",
        "6 zones, 10 loops, 2 manifolds",
        "First cold morning",
        "Power comes back at 06:20 after the summer. Rooms ask for heat one after another, an actuator sticks, and at the end somebody turns the season switch.",
        new TimeOnly(6, 20),
        units,
        Controlled(passed),
        compared ? Straight() : null);

    public static Trace ControlledTrace() => new Sketch(6)
        .At(0, f => f)
        .At(5, f => f with { Calls = 1, Valves = 0b000011, Hold = HoldReason.Proof })
        .At(8.5, f => f with { EndSwitches = 0b11, ProvenValves = 0b11, Hold = HoldReason.StartDelay })
        .At(9, f => f with { Pump = true, Heat = true, Hold = HoldReason.None })
        .At(24, f => f with { Calls = 0b101, Valves = 0b111 })
        .At(27.5, f => f with { ProvenValves = 0b111 })
        .At(40, f => f with { Calls = 0b100, Heat = true, Valves = 0b001111 })
        .At(44, f => f with { LateValves = 0b001000, Valves = 0b010111 })
        .At(47, f => f with { EndSwitches = 0b010011, ProvenValves = 0b010111 })
        .At(47.1, f => f with { Valves = 0b010110, ProvenValves = 0b010110, EndSwitches = 0b010010 })
        .At(70, f => f with { Calls = 0, Heat = false })
        .At(75, f => f with { Pump = false })
        .At(76, f => f with { Valves = 0, ProvenValves = 0, EndSwitches = 0, LateValves = 0 })
        .At(90, f => f with { Calls = 0b100000, Valves = 0b110000, Hold = HoldReason.Proof })
        .At(93.5, f => f with { Lockout = true, Valves = 0, Hold = HoldReason.Lockout })
        .At(105, f => f with { Calls = 0, Hold = HoldReason.None })
        .Finish(120);

    public static Trace StraightTrace() => new Sketch(6)
        .At(0, f => f)
        .At(5, f => f with { Calls = 1, Valves = 1, Pump = true, Heat = true })
        .At(24, f => f with { Calls = 0b101, Valves = 0b101 })
        .At(40, f => f with { Calls = 0b100, Valves = 0b100 })
        .At(70, f => f with { Calls = 0, Valves = 0, Pump = false, Heat = false })
        .At(90, f => f with { Calls = 0b001000, Valves = 0, Pump = true, Heat = true })
        .At(105, f => f with { Calls = 0, Valves = 0, Pump = false, Heat = false })
        .Finish(120);

    public static RunView Controlled(bool passed = true)
    {
        HoldSpan[] holds =
        [
            new(300_000, 510_000, HoldReason.Proof),
            new(510_000, 540_000, HoldReason.StartDelay),
            new(5_400_000, 5_610_000, HoldReason.Proof),
            new(5_610_000, 6_300_000, HoldReason.Lockout),
        ];
        RuleVerdict[] verdicts =
        [
            new("PUMP-PROOF", passed ? Judgement.Kept : Judgement.Broken, 4, passed ? null : 312_500,
                passed ? "" : "the pump was on with capacity 2 proven, minimum open is 4"),
            new("PUMP-DELAY", Judgement.Kept, 1, null, ""),
            new("VALVE-EARLY", Judgement.NotCalledUpon, 0, null, ""),
            new("HEAT-FLOW", Judgement.Kept, 3, null, ""),
        ];
        Rule[] rules =
        [
            new("PUMP-PROOF", "The pump is on only while proven capacity, standing capacity included, is at least minimum open."),
            new("PUMP-DELAY", "The pump goes on no sooner than its start delay after demand last rose from none."),
            new("VALVE-EARLY", "An end switch that makes too soon proves only after the full opening time."),
        ];
        ExpectationVerdict[] expectations =
        [
            new("pump off until 06:28", 41, true, 480_000, ""),
            new("pump on within 6 min of the first call", 45, passed, 540_000, passed ? "" : "the pump came on after 7 min"),
        ];
        return ViewBuilder.Run("with the controller", ControlledTrace(), Zones, verdicts, rules, expectations, holds, Totals(0, 0, 32.1, 1, 3960, 38.5, 300), [
            (0, "power comes on"),
            (300_000, "Throwing room calls"),
            (2_400_000, "Throwing room stops calling; Shop's actuator is stuck"),
            (5_610_000, "season switch to summer lockout"),
        ], passed);
    }

    public static RunView Straight() => ViewBuilder.Run(
        "pump straight to the calls", StraightTrace(), Zones, [], [], [], [], Totals(1080.4, 2, 71.25, 2, 4800, 52, null), [], false);

    private static RunTotals Totals(double deadheadS, int events, double hottest, int starts, double run, double energy, double? warm) => new()
    {
        DeadheadS = deadheadS,
        ShutS = 0,
        DeadheadEvents = events,
        HottestTrappedC = hottest,
        PumpStarts = starts,
        PumpRunS = run,
        PumpEnergyWh = energy,
        FirstWarmFlowS = warm,
        ValveStrokes = 7,
    };
}
