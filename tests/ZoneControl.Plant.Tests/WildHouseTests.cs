using CsCheck;

namespace ZoneControl.Plant.Tests;

/// <summary>
/// No house within the documented ranges gives a value that is not a number, a wrong balance or a search without end. How
/// many are tried is in ZONECONTROL_HOUSES, 20,000 without it. A million, a few minutes:
/// <c>ZONECONTROL_HOUSES=1000000 dotnet run -c Release --project tests/ZoneControl.Plant.Tests -- -class
/// ZoneControl.Plant.Tests.WildHouseTests</c>.
/// </summary>
public class WildHouseTests
{
    // Of one house with up to 20 loops and three positions of its valves.
    private const long MostEvaluations = 1_000_000;

    [Fact]
    public void Any_house_within_the_ranges_balances_and_ends()
    {
        int houses = int.TryParse(Environment.GetEnvironmentVariable("ZONECONTROL_HOUSES"), out int asked) ? asked : 20_000;
        Assert.True(houses >= 20_000);
        long slow = 0;
        long searches = 0;
        long most = 0;
        Gen.Select(WildHouses.Any, Houses.AnyTravels.Array[3]).Sample((house, positions) =>
        {
            Assert.Empty(PlantCheck.Mistakes(house));
            var network = new Network(house);
            foreach (double[] travels in positions)
            {
                long before = network.SlowSearches;
                network.Solve(travels);
                Assert.InRange(network.Residual, 0, network.SlowSearches == before ? Network.Tolerance : double.MaxValue);
                Balances(house, network, travels);
            }

            Interlocked.Add(ref slow, network.SlowSearches);
            Interlocked.Add(ref searches, positions.Length);
            InterlockedMax(ref most, network.LoopEvaluations);
            Assert.InRange(network.LoopEvaluations, 0, MostEvaluations);
        }, iter: houses);
        TestContext.Current.SendDiagnosticMessage(
            $"{houses} houses, {searches} searches, {slow} left to the slow one, at most {most} evaluations a house");
    }

    private static void Balances(PlantDescription house, Network network, double[] travels)
    {
        var liquid = new Liquid(house.WaterC, house.GlycolShare);
        double gravity = house.Rules.Gravity;
        var pump = new Circulator(house.Pump, liquid.Density * gravity);
        double flow = network.PumpFlowM3s;
        double[] told =
        [
            flow, network.PumpHeadM, network.HeadAcrossMainsEndsM, network.BypassFlowM3s, network.FixedBypassFlowM3s,
            pump.PowerW(flow), pump.HeatToWaterW(flow), pump.Speed(flow), pump.HydraulicW(flow),
        ];
        Assert.All(told, value => Assert.True(double.IsFinite(value) && value >= 0, $"{value}"));

        double lostInMains = Path(house.Mains, ValveCurve.Resistance(house.HeatExchangerKv, gravity))
            .Head(flow, 0, out _);
        double tolerance = 1e-9 * pump.MostHeadM;
        Near.Absolute(pump.Head(flow, out _), network.PumpHeadM, tolerance, "pump head");
        double across = network.PumpHeadM - lostInMains;
        Near.Absolute(across, network.HeadAcrossMainsEndsM, tolerance, "head across the mains' ends");
        double sum = network.BypassFlowM3s;
        for (int i = 0; i < house.Loops.Count; i++)
        {
            LoopDescription loop = house.Loops[i];
            double through = network.LoopFlowM3s(i);
            Assert.True(double.IsFinite(through) && through >= 0, $"loop {i}: {through}");
            sum += through;
            double travel = loop.Zone < 0 ? 1 : travels[loop.Zone];
            double opening = ValveCurve.Opening(ValveCurve.Through(loop.ValveTable), travel);
            if (opening == 0)
            {
                Assert.Equal(0, through);
                continue;
            }

            ManifoldDescription manifold = house.Manifolds[loop.Manifold];
            double branch = Path(manifold.Branch ?? new(0, 0.02, 0, 0), Fixed(manifold.Balancing))
                .Head(network.ManifoldFlowM3s(loop.Manifold), 0, out _);
            double valve = ValveCurve.Resistance(loop.ValveKvs * opening, gravity);
            double lost = Path(loop.Tube, Fixed(loop.Balancing)).Head(through, valve, out _);
            Near.Absolute(across, branch + lost, tolerance, $"round loop {i}");
        }

        Near.Absolute(flow, sum, 1e-12 * flow, "flow");

        double Fixed(BalancingValveDescription? valve) =>
            ValveCurve.Resistance(valve?.Kv ?? double.PositiveInfinity, gravity);

        FlowPath Path(PipeDescription pipe, double valve) => new(pipe, house.Rules, liquid.KinematicViscosity, valve);
    }

    private static void InterlockedMax(ref long most, long value)
    {
        long seen = Interlocked.Read(ref most);
        while (value > seen && Interlocked.CompareExchange(ref most, value, seen) is long now && now != seen)
        {
            seen = now;
        }
    }
}
