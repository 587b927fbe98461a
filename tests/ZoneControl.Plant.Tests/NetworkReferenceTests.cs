using System.Text.Json;

namespace ZoneControl.Plant.Tests;

/// <summary>
/// Flows against the EPANET engine 2.3.5, with its friction law and its g; tests/reference/README.md says how the values were
/// made. The engine's closed links leak a little into the pump's flow, at most 0.08 % of it in these cases.
/// </summary>
public class NetworkReferenceTests
{
    private const double Tolerance = 1e-3;

    public static TheoryData<string, string> Cases => new(
        from file in (string[])["net4.json", "net13.json"]
        from result in Read(file).GetProperty("results").EnumerateObject()
        select (file, result.Name));

    [Theory]
    [MemberData(nameof(Cases))]
    public void Flows_match_the_reference_engine(string file, string name)
    {
        JsonElement reference = Read(file);
        JsonElement expected = reference.GetProperty("results").GetProperty(name);
        double[] loopFlows = [.. expected.GetProperty("loop_flow_Lps").EnumerateArray().Select(f => f.GetDouble() / 1000)];
        var network = new Network(House(reference, FrictionLaw.SwameeJainDunlop));
        network.Solve([.. loopFlows.Select(f => f > 0 ? 1.0 : 0.0)]);

        Near.Relative(expected.GetProperty("pump_flow_Lps").GetDouble() / 1000, network.PumpFlowM3s, Tolerance, "pump flow");
        Near.Relative(expected.GetProperty("pump_head_m").GetDouble(), network.PumpHeadM, Tolerance, "pump head");
        Near.Relative(
            expected.GetProperty("loop_headloss_m").GetDouble(), network.HeadAcrossMainsEndsM, Tolerance, "head across loops");
        for (int i = 0; i < loopFlows.Length; i++)
        {
            Near.Relative(loopFlows[i], network.LoopFlowM3s(i), Tolerance, $"loop {i}");
        }
    }

    [Fact]
    public void Both_files_hold_four_cases_each() => Assert.Equal(8, Cases.Count);

    [Theory]
    [MemberData(nameof(Cases))]
    public void Colebrook_lies_within_half_a_per_cent_of_it(string file, string name)
    {
        JsonElement reference = Read(file);
        JsonElement expected = reference.GetProperty("results").GetProperty(name);
        double[] loopFlows = [.. expected.GetProperty("loop_flow_Lps").EnumerateArray().Select(f => f.GetDouble() / 1000)];
        var network = new Network(House(reference, FrictionLaw.Colebrook));
        network.Solve([.. loopFlows.Select(f => f > 0 ? 1.0 : 0.0)]);
        for (int i = 0; i < loopFlows.Length; i++)
        {
            Near.Relative(loopFlows[i], network.LoopFlowM3s(i), 0.005, $"loop {i}");
        }
    }

    private static JsonElement Read(string file)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reference", file)));
        return document.RootElement.Clone();
    }

    private static PlantDescription House(JsonElement reference, FrictionLaw law)
    {
        LoopDescription[] loops = [.. reference.GetProperty("loops").EnumerateArray()
            .Select((loop, i) => new LoopDescription(i, 0, Pipe(loop), double.PositiveInfinity))];
        return Houses.Small with
        {
            Rules = new HydraulicRules
            {
                Friction = law,
                Gravity = reference.GetProperty("gravity_m_s2").GetDouble(),
                KinematicViscosity = reference.GetProperty("viscosity_m2s").GetDouble(),
            },
            Pump = Houses.Pump with
            {
                Curve = [.. reference.GetProperty("pump_curve_points").EnumerateArray()
                    .Select(p => new PumpPoint(p.GetProperty("q_m3h").GetDouble() / 3600, p.GetProperty("h_m").GetDouble()))],
            },
            Mains = Pipe(reference.GetProperty("return_pipe")),
            Actuators = [.. loops.Select(_ => Houses.TwoWire)],
            Loops = loops,
        };
    }

    private static PipeDescription Pipe(JsonElement pipe) => new(
        pipe.GetProperty("length_m").GetDouble(), pipe.GetProperty("id_mm").GetDouble() / 1000,
        pipe.GetProperty("roughness_mm").GetDouble() / 1000, pipe.GetProperty("K").GetDouble());
}
