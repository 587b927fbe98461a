using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>A loop's share and the valve that would give it.</summary>
/// <param name="FlowM3s">Flow after balancing, m³/s.</param>
/// <param name="Kv">Kv of a balancing valve in series that takes what is too much, m³/h at 1 bar; infinite for the loop that needs none.</param>
public sealed record BalancedLoop(double FlowM3s, double Kv);

/// <summary>
/// Balancing by throttling: every loop gets the same multiple of its design flow, as much as the pump gives, and the
/// neediest loop stays fully open (proportional balancing, common practice).
/// </summary>
public static class Balancing
{
    private const double LeastHeadM = 0.001; // less is no valve's business

    /// <summary>Head that a pump must give for these loop flows, m³/s, without any throttling: mains, branch, neediest loop; m.</summary>
    public static double HeadNeeded(HouseFlows flows, IReadOnlyList<double> loopFlowsM3s)
    {
        ArgumentNullException.ThrowIfNull(flows);
        ArgumentNullException.ThrowIfNull(loopFlowsM3s);
        return flows.MainsHead(loopFlowsM3s.Sum()) + EndsHead(flows, loopFlowsM3s);
    }

    /// <summary>What each loop gets after balancing, and how; bypasses taken as shut.</summary>
    public static IReadOnlyList<BalancedLoop> Balance(HouseFlows flows, IReadOnlyList<double> designM3s)
    {
        ArgumentNullException.ThrowIfNull(flows);
        ArgumentNullException.ThrowIfNull(designM3s);
        double[] At(double times) => [.. designM3s.Select(design => design * times)];
        Circulator pump = flows.Pump;
        double low = 0;
        double high = pump.LargestFlowM3s / designM3s.Sum();
        for (int i = 0; i < 100; i++)
        {
            double middle = (low + high) / 2;
            bool less = HeadNeeded(flows, At(middle)) < pump.Head(middle * designM3s.Sum(), out _);
            (low, high) = less ? (middle, high) : (low, middle);
        }

        double[] shares = At(low);
        double ends = EndsHead(flows, shares);
        return [.. shares.Select((share, i) => new BalancedLoop(share, ValveFor(flows, shares, i, ends)))];
    }

    private static double ValveFor(HouseFlows flows, double[] shares, int i, double ends)
    {
        LoopDescription loop = flows.Plant.Loops[i];
        double over = ends - BranchHead(flows, loop.Manifold, shares)
            - PathHead.Loop(loop, shares[i], flows.Plant.Rules, flows.Viscosity);
        return over < LeastHeadM ? double.PositiveInfinity : PathHead.KvFor(over, shares[i], flows.Plant.Rules);
    }

    private static double EndsHead(HouseFlows flows, IReadOnlyList<double> shares) =>
        shares.Select((share, i) => BranchHead(flows, flows.Plant.Loops[i].Manifold, shares)
            + PathHead.Loop(flows.Plant.Loops[i], share, flows.Plant.Rules, flows.Viscosity)).Max();

    private static double BranchHead(HouseFlows flows, int manifold, IReadOnlyList<double> shares)
    {
        double sum = shares.Where((_, i) => flows.Plant.Loops[i].Manifold == manifold).Sum();
        ManifoldDescription described = flows.Plant.Manifolds[manifold];
        return (described.Branch is { } branch ? PathHead.Pipe(branch, sum, flows.Plant.Rules, flows.Viscosity) : 0)
            + (described.Balancing is { } valve ? PathHead.Valve(valve.Kv, sum, flows.Plant.Rules) : 0);
    }
}
