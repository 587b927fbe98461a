namespace ZoneControl.Plant.Heat;

/// <summary>
/// Thermal conductivity of the liquid, W/(m K), for the film in the tube only, where a few percent do not matter. Water: a
/// straight line through IAPWS values at 10 and 60 °C (0.5788 and 0.6511). With glycol: less by 0.55 of the share of mass, through
/// Melinder's 0.461 at 30 % and 40 °C (both through public libraries).
/// </summary>
internal static class LiquidConductivity
{
    public static double WPerMK(double celsius, double glycolShare) =>
        (0.5788 + (celsius - 10) / 50 * (0.6511 - 0.5788)) * (1 - 0.89 * glycolShare);
}
