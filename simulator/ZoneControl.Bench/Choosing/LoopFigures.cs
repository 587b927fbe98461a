using ZoneControl.Bench.Houses;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>One loop with every zone open.</summary>
public sealed record LoopFigures
{
    /// <summary>Zone number, from 0; -1 for a loop that always stands open.</summary>
    public required int Zone { get; init; }

    /// <summary>Name for people: "Bath", "Hall 2".</summary>
    public required string Label { get; init; }

    /// <summary>Manifold's name for people.</summary>
    public required string Manifold { get; init; }

    /// <summary>Length, m.</summary>
    public required double LengthM { get; init; }

    /// <summary>Flow, m³/s.</summary>
    public required double FlowM3s { get; init; }

    /// <summary>Head that tube, bends and valve take at that flow, m.</summary>
    public required double HeadM { get; init; }

    /// <summary>Mean velocity, m/s.</summary>
    public required double VelocityMPerS { get; init; }

    /// <summary>Flow that it should get, m³/s.</summary>
    public required double DesignM3s { get; init; }

    /// <summary>Heat that it should give on the coldest day, W.</summary>
    public required double HeatW { get; init; }

    /// <summary>Velocity with its zone alone open, as when air is driven out, m/s.</summary>
    public required double AloneVelocityMPerS { get; init; }

    /// <summary>Figures of every loop: zones in the file's order, standing loops last.</summary>
    public static IReadOnlyList<LoopFigures> Of(House house, HouseFlows flows, HeatNeeds needs, CheckAssumptions assumed)
    {
        ArgumentNullException.ThrowIfNull(flows);
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(needs);
        double[] alone = AloneFlows(flows);
        flows.With(flows.AllZones);
        double[] all = flows.LoopFlows();
        IReadOnlyList<string> labels = Labels(house);
        return
        [
            .. flows.Plant.Loops.Select((loop, i) => new LoopFigures
            {
                Zone = loop.Zone,
                Label = labels[i],
                Manifold = house.Manifolds[loop.Manifold].Label,
                LengthM = loop.Tube.LengthM,
                FlowM3s = all[i],
                HeadM = PathHead.Loop(loop, all[i], flows.Plant.Rules, flows.Viscosity),
                VelocityMPerS = PathHead.Velocity(loop.Tube, all[i]),
                DesignM3s = DesignFlow(needs.LoopHeatW(loop.Zone, loop.Tube.LengthM), flows.Liquid, assumed),
                HeatW = needs.LoopHeatW(loop.Zone, loop.Tube.LengthM),
                AloneVelocityMPerS = PathHead.Velocity(loop.Tube, alone[i]),
            }),
        ];
    }

    /// <summary>
    /// Flow that a loop should get, m³/s: the stated one, or heat over heat capacity, Q = P/(ρ·cp·ΔT).
    /// </summary>
    public static double DesignFlow(double heatW, Liquid liquid, CheckAssumptions assumed)
    {
        ArgumentNullException.ThrowIfNull(liquid);
        ArgumentNullException.ThrowIfNull(assumed);
        return assumed.DesignFlowM3s ?? heatW / (liquid.Density * liquid.HeatCapacity * assumed.DropK);
    }

    /// <summary>Names of all loops in the plant's order.</summary>
    public static IReadOnlyList<string> Labels(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return
        [
            .. house.Zones.SelectMany(zone => zone.Loops.Select(
                (loop, i) => LabelOf(loop, zone.Label, i, zone.Loops.Count))),
            .. house.StandingLoops.Select((loop, i) => LabelOf(loop, "Standing loop", i, house.StandingLoops.Count)),
        ];
    }

    private static string LabelOf(HouseLoop loop, string owner, int i, int of) =>
        loop.Label.Length > 0 ? loop.Label : of > 1 ? $"{owner} {i + 1}" : owner;

    private static double[] AloneFlows(HouseFlows flows)
    {
        double[] alone = new double[flows.Plant.Loops.Count];
        for (int zone = -1; zone < flows.Plant.Actuators.Count; zone++)
        {
            flows.With(zone < 0 ? 0 : 1 << zone);
            double[] these = flows.LoopFlows();
            for (int i = 0; i < alone.Length; i++)
            {
                if (flows.Plant.Loops[i].Zone == zone)
                    alone[i] = these[i];
            }
        }

        return alone;
    }
}
