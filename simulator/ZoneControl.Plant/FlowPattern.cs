namespace ZoneControl.Plant;

/// <summary>All flows for one set of valve positions with the pump on, kept so that they need solving only once.</summary>
/// <param name="Id">Number of the pattern in its book, from 0.</param>
/// <param name="PumpFlowM3s">Flow through the pump, m³/s.</param>
/// <param name="PumpHeadM">Head of the pump, m.</param>
/// <param name="BypassFlowM3s">Flow through the bypasses together, m³/s.</param>
/// <param name="PumpPowerW">Electrical power of the pump, W.</param>
/// <param name="PumpHeatToWaterW">Part of that power that ends in the water, W.</param>
/// <param name="LoopFlowM3s">Flow of each loop, m³/s.</param>
public sealed record FlowPattern(
    int Id,
    double PumpFlowM3s,
    double PumpHeadM,
    double BypassFlowM3s,
    double PumpPowerW,
    double PumpHeatToWaterW,
    IReadOnlyList<double> LoopFlowM3s)
{
    /// <summary>Everything stands still.</summary>
    public static FlowPattern Still { get; } = new(-1, 0, 0, 0, 0, 0, []);
}

/// <summary>
/// Patterns by valve positions in whole steps of the stroke: over a season the same ones come again thousands of times.
/// </summary>
internal sealed class FlowBook(Network network, int loops, int steps)
{
    // Five bits a zone: twelve zones fill a word, three words hold 31.
    private const int ZonesAWord = 12;

    private readonly Dictionary<(ulong, ulong, ulong), FlowPattern> _patterns = [];

    /// <summary>Most steps of a stroke that fit the key.</summary>
    public const int MostSteps = 31;

    /// <summary>The flows at these positions, in steps; travel is theirs over the number of steps.</summary>
    public FlowPattern At(ReadOnlySpan<int> positions, double[] travel)
    {
        (ulong low, ulong middle, ulong high) = (0, 0, 0);
        for (int zone = 0; zone < positions.Length; zone++)
        {
            ref ulong word = ref zone < ZonesAWord ? ref low : ref zone < 2 * ZonesAWord ? ref middle : ref high;
            word = word << 5 | (uint)positions[zone];
        }

        if (_patterns.TryGetValue((low, middle, high), out FlowPattern? known))
        {
            return known;
        }

        for (int zone = 0; zone < positions.Length; zone++)
        {
            travel[zone] = (double)positions[zone] / steps;
        }

        network.Solve(travel);
        double flow = network.PumpFlowM3s;
        var pattern = new FlowPattern(
            _patterns.Count,
            flow,
            network.PumpHeadM,
            network.BypassFlowM3s,
            network.Pump.PowerW(flow),
            network.Pump.HeatToWaterW(flow),
            [.. Enumerable.Range(0, loops).Select(network.LoopFlowM3s)]);
        _patterns.Add((low, middle, high), pattern);
        return pattern;
    }
}
