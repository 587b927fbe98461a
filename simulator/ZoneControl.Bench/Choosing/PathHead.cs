using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>Head lost in one pipe with what sits in it, for what a whole network does not show: one loop at a wanted flow.</summary>
/// <remarks>
/// Darcy-Weisbach, h = (f·L/D + ΣK)·v²/2g, with the plant's friction; valves by Δp[bar] = (ρ/1000)·(Q/Kv)², Q in m³/h
/// (IEC 60534-1), which as head is free of density: h = 10⁵/(1000·g)·(Q/Kv)².
/// </remarks>
internal static class PathHead
{
    private const double SecondsPerHour = 3600;

    /// <summary>Head lost by a pipe and its fittings, m, at a flow in m³/s of a liquid of that viscosity, m²/s.</summary>
    public static double Pipe(PipeDescription pipe, double flowM3s, HydraulicRules rules, double viscosity)
    {
        double d = pipe.InsideDiameterM;
        double v = Velocity(pipe, flowM3s);
        if (v <= 0)
            return 0;
        double f = new Friction(rules.Friction, pipe.RoughnessM / d).Factor(v * d / viscosity);
        return ((f * pipe.LengthM / d) + pipe.FittingsK) * v * v / (2 * rules.Gravity);
    }

    /// <summary>Head lost by a valve of that Kv, m; 0 for no valve.</summary>
    public static double Valve(double kv, double flowM3s, HydraulicRules rules)
    {
        double part = flowM3s * SecondsPerHour / kv;
        return 100 / rules.Gravity * part * part;
    }

    /// <summary>Kv of a valve that loses that head at that flow.</summary>
    public static double KvFor(double headM, double flowM3s, HydraulicRules rules) =>
        flowM3s * SecondsPerHour / Math.Sqrt(headM * rules.Gravity / 100);

    /// <summary>Head lost by a loop with its valves fully open, m.</summary>
    public static double Loop(LoopDescription loop, double flowM3s, HydraulicRules rules, double viscosity) =>
        Pipe(loop.Tube, flowM3s, rules, viscosity)
        + Valve(loop.ValveKvs, flowM3s, rules)
        + (loop.Balancing is { } balancing ? Valve(balancing.Kv, flowM3s, rules) : 0);

    /// <summary>Mean velocity, m/s.</summary>
    public static double Velocity(PipeDescription pipe, double flowM3s) =>
        flowM3s / (Math.PI / 4 * pipe.InsideDiameterM * pipe.InsideDiameterM);
}
