using CsCheck;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class TubeExchangeTests
{
    private const double Conductivity = 0.6221; // water at 40 °C

    private static readonly PipeDescription _tube = new(80, 0.012, 1.5e-6, 25);
    private static readonly FloorDescription _floor = new() { AreaM2 = 12 };
    private static readonly Liquid _water = new(40);

    // By hand at 2 L/min in 12 mm: Re 4·3.333e-5/(π·0.012·6.578e-7) = 5377; Nu between 3.66 at 2300 and 0.023·1e4^0.8·4.384^0.3 =
    // 56.77 at 10,000: 24.89. Film 1/(π·0.6221·24.89) = 0.02056, wall ln(16/12)/(2π·0.35) = 0.13082, spreading
    // ln(150/(π·16))/(2π·1.2) = 0.14502 mK/W; together 3.374 W/mK. NTU = 3.374·80/138.2 = 1.953, and 1 − e^−1.953 = 0.8582.
    [Fact]
    public void A_loop_by_hand()
    {
        Near.Relative(3.374, TubeExchange.WPerMK(2 / 60_000.0, 0.012, _floor, _water, Conductivity), 0.002);
        Near.Relative(0.8582 * 138.2, TubeExchange.WPerK(2 / 60_000.0, _tube, _floor, _water, Conductivity), 0.002);
    }

    [Fact]
    public void Hardly_any_flow_leaves_all_its_heat_and_a_torrent_no_more_than_the_tube_lets_through()
    {
        const double Drip = 1e-9;
        Near.Relative(Drip * _water.Density * _water.HeatCapacity, TubeExchange.WPerK(Drip, _tube, _floor, _water, Conductivity), 1e-9);
        double through = TubeExchange.WPerMK(1, 0.012, _floor, _water, Conductivity) * 80;
        Near.Relative(through, TubeExchange.WPerK(1, _tube, _floor, _water, Conductivity), 1e-3);
        Assert.Equal(0, TubeExchange.WPerK(0, _tube, _floor, _water, Conductivity));
    }

    [Fact]
    public void More_flow_never_leaves_less_heat() =>
        Gen.Select(Gen.Double[-9, -2], Gen.Double[0, 0.1]).Sample((exponent, more) =>
        {
            double flow = Math.Pow(10, exponent);
            double less = TubeExchange.WPerK(flow, _tube, _floor, _water, Conductivity);
            double heat = TubeExchange.WPerK(flow * (1 + more), _tube, _floor, _water, Conductivity);
            Assert.True(heat >= less * (1 - 1e-12), $"{flow}: {less} then {heat}");
        }, iter: 5000);
}
