namespace ZoneControl.Plant.Tests;

/// <summary>
/// Two more networks solved by the EPANET engine 2.3.5, accuracy 1e-6, 40 °C water, flows in L/min. In the second the engine
/// had a bypass from a table (head 2.5 m + 0.1 m per L/min), which is not the spring's law; so each bypass case gets a spring
/// whose flow at the engine's head is the engine's flow. That tells whether the circuit balances around a bypass, not whether
/// the spring's law is right.
/// </summary>
public class NetworkTableTests
{
    private const double Tolerance = 1e-3;

    private static readonly HydraulicRules _rules = new()
    {
        Friction = FrictionLaw.SwameeJainDunlop,
        Gravity = 9.81456,
        KinematicViscosity = 6.5783e-7,
    };

    [Fact]
    public void Four_unequal_loops_share_the_flow_as_the_engine_says()
    {
        var network = new Network(House(
            [new(0, 4), new(15, 3), new(30, 0)], new PipeDescription(8, 0.02, 1.5e-6, 12), [60, 75, 90, 110],
            0.012, [25, 25, 25, 25]));
        network.Solve([1, 1, 1, 1]);
        double[] expected = [3.7075, 3.3180, 3.0215, 2.7185];
        for (int i = 0; i < expected.Length; i++)
        {
            Near.Relative(expected[i], network.LoopFlowM3s(i) / Houses.LitrePerMinute, Tolerance, $"loop {i + 1}");
        }

        Near.Relative(12.7655, network.PumpFlowM3s / Houses.LitrePerMinute, Tolerance, "pump");
        Near.Relative(3.2757, network.PumpHeadM, Tolerance, "pump head");
        Near.Relative(2.7541, network.HeadAcrossMainsEndsM, Tolerance, "head across loops");
    }

    [Theory]
    [InlineData(new[] { 4.081, 3.667, 3.348, 3.029 }, 0, 14.126, 3.6142, 3.0148)]
    [InlineData(new[] { 5.246, 0, 0, 0 }, 0, 5.246, 4.8089, 4.7155)]
    [InlineData(new[] { 0.0, 0, 0, 0 }, 0, 0, 5.000, 5.000)]
    [InlineData(new[] { 3.833, 3.443, 3.142, 2.845 }, 1.971, 15.233, 3.3885, 2.6971)]
    [InlineData(new[] { 4.332, 0, 0, 0 }, 8.519, 12.851, 3.8531, 3.3519)]
    [InlineData(new[] { 0.0, 0, 0, 0 }, 11.577, 11.577, 4.0692, 3.6577)]
    public void Loops_and_bypass_balance_as_the_engine_says(
        double[] loops, double bypass, double pump, double pumpHead, double acrossHead)
    {
        PlantDescription house = House(
            [new(0, 5), new(12, 4), new(12 * Math.Sqrt(5), 0)], new PipeDescription(12, 0.022225, 1.5e-6, 18),
            [61, 76.2, 91.44, 100], 0.012319, [30, 30, 30, 60]);
        if (bypass > 0)
        {
            house = house with { Bypass = SpringThrough(acrossHead, bypass) };
        }

        var network = new Network(house);
        network.Solve([.. loops.Select(f => f > 0 ? 1.0 : 0.0)]);
        for (int i = 0; i < loops.Length; i++)
        {
            Near.Relative(loops[i], network.LoopFlowM3s(i) / Houses.LitrePerMinute, Tolerance, $"loop {i + 1}");
        }

        Near.Relative(bypass, network.BypassFlowM3s / Houses.LitrePerMinute, Tolerance, "bypass");
        Near.Relative(pump, network.PumpFlowM3s / Houses.LitrePerMinute, Tolerance, "pump");
        Near.Relative(pumpHead, network.PumpHeadM, Tolerance, "pump head");
        Near.Relative(acrossHead, network.HeadAcrossMainsEndsM, Tolerance, "head across loops");
    }

    /// <summary>A spring that opens at 2.5 m and passes that flow at that head, part open.</summary>
    private static BypassDescription SpringThrough(double head, double litresPerMinute)
    {
        double pascalPerM = Water.Density(40) * _rules.Gravity;
        double band = 20_000;
        double x = (head - 2.5) * pascalPerM / band;
        double full = Math.Sqrt(_rules.Gravity * head / 100);
        return new BypassDescription(2.5 * pascalPerM, band, litresPerMinute * 0.06 / (x * full));
    }

    private static PlantDescription House(
        PumpPoint[] curveLitresPerMinute, PipeDescription mains, double[] lengths, double diameter, double[] k) =>
        Houses.Small with
        {
            Rules = _rules,
            Pump = Houses.Pump with
            {
                Curve = [.. curveLitresPerMinute.Select(p => new PumpPoint(p.FlowM3s * Houses.LitrePerMinute, p.HeadM))],
            },
            Mains = mains,
            Actuators = [.. lengths.Select(_ => Houses.TwoWire)],
            Loops = [.. lengths.Select((length, i) => new LoopDescription(
                i, 0, new PipeDescription(length, diameter, 1.5e-6, k[i]), double.PositiveInfinity))],
        };
}
