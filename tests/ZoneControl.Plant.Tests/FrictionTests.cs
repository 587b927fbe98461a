using System.Text.Json;
using CsCheck;

namespace ZoneControl.Plant.Tests;

public class FrictionTests
{
    private static readonly Gen<(FrictionLaw Law, double Roughness)> _anyPipe =
        Gen.Select(Gen.Enum<FrictionLaw>(), Gen.OneOf(Gen.Const(0.0), Gen.Double[0, 1e-3], Gen.Double[0, 0.05]));

    /// <summary>
    /// Against the Python library `fluids` 1.0.22, which solves Colebrook's equation exactly; tests/reference/friction.py made
    /// the values. Its Swamee-Jain has (6.97/Re)^0.9 where the paper and the engine have 5.74/Re^0.9: 2 in a million of f.
    /// </summary>
    [Fact]
    public void Turbulent_factors_match_an_independent_library()
    {
        using var stored = JsonDocument.Parse(
            File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", "friction.json")));
        double[][] rows = stored.RootElement.GetProperty("rows").Deserialize<double[][]>()!;
        Assert.Equal(77, rows.Length);
        foreach (double[] row in rows)
        {
            string at = $"Re {row[0]}, e/D {row[1]}";
            Near.Relative(row[2], new Friction(FrictionLaw.Colebrook, row[1]).Factor(row[0]), 1e-12, $"Colebrook at {at}");
            Near.Relative(
                row[3], new Friction(FrictionLaw.SwameeJainDunlop, row[1]).Factor(row[0]), 3e-6, $"Swamee-Jain at {at}");
        }
    }

    /// <summary>Check values computed from the formula in the EPANET 2 manual, appendix D.</summary>
    [Theory]
    [InlineData(2000, 0.03200)]
    [InlineData(2500, 0.02916)]
    [InlineData(3000, 0.03314)]
    [InlineData(3500, 0.03873)]
    [InlineData(4000, 0.04069)]
    public void The_transition_cubic_matches_the_published_one(double reynolds, double factor) =>
        Near.Absolute(factor, new Friction(FrictionLaw.SwameeJainDunlop, 1.2176e-4).Factor(reynolds), 6e-6);

    [Theory]
    [InlineData(FrictionLaw.Colebrook)]
    [InlineData(FrictionLaw.SwameeJainDunlop)]
    public void Laminar_flow_is_64_over_the_Reynolds_number(FrictionLaw law)
    {
        Near.Relative(64 / 1486.9, new Friction(law, 1e-3).Factor(1486.9), 1e-14);
        Near.Relative(0.032, new Friction(law, 1e-3).Factor(2000), 1e-14);
    }

    [Fact]
    public void Colebrook_is_solved_to_the_last_digits()
    {
        Gen.Select(Gen.Double[0, 0.05], Gen.Double[Math.Log(4000), Math.Log(1e9)]).Sample((roughness, logReynolds) =>
        {
            double reynolds = Math.Exp(logReynolds);
            double f = new Friction(FrictionLaw.Colebrook, roughness).Factor(reynolds);
            double right = -2 * Math.Log10(roughness / 3.7 + 2.51 / (reynolds * Math.Sqrt(f)));
            Near.Relative(1 / Math.Sqrt(f), right, 1e-13, $"1/√f at Re {reynolds}, e/D {roughness}");
        });
    }

    [Fact]
    public void Head_loss_rises_with_flow_through_the_transition()
    {
        _anyPipe.Sample(pipe =>
        {
            var friction = new Friction(pipe.Law, pipe.Roughness);
            double last = friction.ScaledLoss(1900, out _);
            for (double reynolds = 1901; reynolds < 4100; reynolds += 1)
            {
                double loss = friction.ScaledLoss(reynolds, out double slope);
                Assert.True(loss > last, $"f·Re² falls at Re {reynolds}");
                Assert.True(slope > 0, $"slope {slope} at Re {reynolds}");
                last = loss;
            }
        }, iter: 200);
    }

    [Fact]
    public void The_slope_is_the_derivative_and_meets_at_both_ends_of_the_transition()
    {
        Gen.Select(_anyPipe, Gen.OneOf(Gen.Double[100, 8000], Gen.Const(2000.0), Gen.Const(4000.0))).Sample((pipe, reynolds) =>
        {
            var friction = new Friction(pipe.Law, pipe.Roughness);
            friction.ScaledLoss(reynolds, out double slope);
            const double Step = 0.01;
            double before = friction.ScaledLoss(reynolds - Step, out _);
            double after = friction.ScaledLoss(reynolds + Step, out _);
            Near.Relative((after - before) / (2 * Step), slope, 1e-4, $"slope at Re {reynolds}");
        });
    }

    [Fact]
    public void No_law_lies_below_laminar_friction()
    {
        // The solver's upper bound on a loop's flow rests on this.
        Gen.Select(_anyPipe, Gen.Double[1, 20_000]).Sample((pipe, reynolds) =>
            Assert.True(new Friction(pipe.Law, pipe.Roughness).ScaledLoss(reynolds, out _) >= 64 * reynolds * (1 - 1e-12)));
    }

    [Theory]
    [InlineData(-1e-6)]
    [InlineData(0.0501)]
    [InlineData(double.NaN)]
    public void A_roughness_off_the_diagram_is_refused(double roughness) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new Friction(FrictionLaw.Colebrook, roughness));
}
