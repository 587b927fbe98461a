namespace ZoneControl.Plant;

/// <summary>What fills the circuit: water (<see cref="Water"/>), or water with propylene glycol (<see cref="Glycol"/>).</summary>
public sealed class Liquid
{
    /// <summary>A liquid at a temperature.</summary>
    /// <param name="celsius">Temperature, °C; water 0 to 100, a mixture from its freezing point to 100.</param>
    /// <param name="glycolShare">Share of mass that is propylene glycol, 0 to 0.6.</param>
    /// <exception cref="ArgumentOutOfRangeException">Either is outside its range.</exception>
    public Liquid(double celsius, double glycolShare = 0)
    {
        if (glycolShare == 0)
        {
            Density = Water.Density(celsius);
            HeatCapacity = Water.HeatCapacity(celsius);
            DynamicViscosity = Water.DynamicViscosity(celsius);
        }
        else
        {
            Density = Glycol.Density(celsius, glycolShare);
            HeatCapacity = Glycol.HeatCapacity(celsius, glycolShare);
            DynamicViscosity = Glycol.DynamicViscosity(celsius, glycolShare);
        }
    }

    /// <summary>Density, kg/m³.</summary>
    public double Density { get; }

    /// <summary>Heat capacity at constant pressure, J/(kg K).</summary>
    public double HeatCapacity { get; }

    /// <summary>Dynamic viscosity, Pa·s.</summary>
    public double DynamicViscosity { get; }

    /// <summary>Kinematic viscosity, m²/s: dynamic viscosity over density.</summary>
    public double KinematicViscosity => DynamicViscosity / Density;
}
