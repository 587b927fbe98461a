namespace ZoneControl.Plant.Heat;

/// <summary>
/// How much heat water leaves in a floor on its way through one loop. The floor's body has one temperature, so water comes
/// nearer to it as 1 − e^−NTU (effectiveness of an exchanger with one even side, any heat transfer text), with NTU the
/// conductance from water to floor over the water's heat flow a kelvin.
/// </summary>
/// <remarks>
/// Conductance a metre: film in the tube (Nusselt number 3.66 when laminar; 0.023·Re^0.8·Pr^0.3 by Dittus and Boelter above Re
/// 10,000; straight between the laminar value at 2,300 and that at 10,000), tube wall, and spreading in the screed between
/// tubes, ln(spacing/(π·outside))/(2π·conductivity), the form of ISO 11855-2 (from memory).
/// </remarks>
public static class TubeExchange
{
    private const double LaminarNusselt = 3.66;
    private const double LaminarEnd = 2300;
    private const double TurbulentStart = 10_000;

    /// <summary>Conductance from water to floor, W/(m K), a metre of tube.</summary>
    /// <param name="flowM3s">Flow through it, m³/s; more than 0.</param>
    /// <param name="insideM">Inside diameter, m.</param>
    /// <param name="floor">The floor it lies in.</param>
    /// <param name="liquid">What flows.</param>
    /// <param name="conductivity">Conductivity of the liquid, W/(m K).</param>
    public static double WPerMK(double flowM3s, double insideM, FloorDescription floor, Liquid liquid, double conductivity)
    {
        ArgumentNullException.ThrowIfNull(floor);
        ArgumentNullException.ThrowIfNull(liquid);
        double outside = insideM + 2 * floor.TubeWallM;
        double reynolds = 4 * flowM3s / (Math.PI * insideM * liquid.KinematicViscosity);
        double film = 1 / (Math.PI * conductivity * Nusselt(reynolds, liquid, conductivity));
        double wall = Math.Log(outside / insideM) / (2 * Math.PI * floor.TubeConductivity);
        double spreading = Math.Max(0, Math.Log(floor.SpacingM / (Math.PI * outside))) / (2 * Math.PI * floor.ScreedConductivity);
        return 1 / (film + wall + spreading);
    }

    /// <summary>Heat that water a kelvin warmer than the floor leaves there, W/K: flow · ρ · cp · (1 − e^−NTU).</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 gives 0.</param>
    /// <param name="tube">The tube.</param>
    /// <param name="floor">The floor it lies in.</param>
    /// <param name="liquid">What flows.</param>
    /// <param name="conductivity">Conductivity of the liquid, W/(m K).</param>
    public static double WPerK(double flowM3s, PipeDescription tube, FloorDescription floor, Liquid liquid, double conductivity)
    {
        ArgumentNullException.ThrowIfNull(tube);
        ArgumentNullException.ThrowIfNull(liquid);
        if (flowM3s <= 0)
        {
            return 0;
        }

        double flow = flowM3s * liquid.Density * liquid.HeatCapacity;
        double conductance = WPerMK(flowM3s, tube.InsideDiameterM, floor, liquid, conductivity) * tube.LengthM;
        return flow * -Expm1(-conductance / flow);
    }

    private static double Nusselt(double reynolds, Liquid liquid, double conductivity)
    {
        if (reynolds <= LaminarEnd)
        {
            return LaminarNusselt;
        }

        double prandtl = liquid.DynamicViscosity * liquid.HeatCapacity / conductivity;
        double turbulent = 0.023 * Math.Pow(Math.Max(reynolds, TurbulentStart), 0.8) * Math.Pow(prandtl, 0.3);
        double share = Math.Min(1, (reynolds - LaminarEnd) / (TurbulentStart - LaminarEnd));
        return LaminarNusselt + share * (turbulent - LaminarNusselt);
    }

    // e^x − 1 without losing what is left of 1 at small x.
    private static double Expm1(double x) => Math.Abs(x) < 1e-5 ? x + x * x / 2 : Math.Exp(x) - 1;
}
