using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>The circulator as it is set.</summary>
public sealed record HousePump
{
    /// <summary>Curve: flow rising from 0, head never rising, the last head 0; at least two points.</summary>
    public required IReadOnlyList<PumpPoint> Curve { get; init; }

    /// <summary>Electrical power, W.</summary>
    public required double PowerW { get; init; }

    /// <summary>Speed at which it runs, of the curve's; 0.1 to 1.5.</summary>
    public Setting<double> Speed { get; init; } = Setting.Derived(1.0, "the curve's speed");

    /// <summary>How it regulates its head by itself; null at fixed speed.</summary>
    public RegulationDescription? Regulation { get; init; }

    /// <summary>Electrical power by flow; null where only one figure is known.</summary>
    public IReadOnlyList<PumpPowerPoint>? PowerByFlow { get; init; }

    /// <summary>Part of its losses that ends in the water, 0 to 1.</summary>
    public Setting<double> HeatToWater { get; init; } = Setting.Derived(1.0, "all of it: an upper bound");

    /// <summary>Highest head at no flow, m, at the speed at which it runs.</summary>
    public double ShutoffHeadM => Curve[0].HeadM * Speed.Value * Speed.Value;

    /// <summary>Flow below which it should not run, m³/s.</summary>
    public required Setting<double> MinimumFlowM3s { get; init; }

    /// <summary>Flow at which a flow switch makes, m³/s. Without a flow switch it has no effect.</summary>
    public required Setting<double> FlowSwitchAtM3s { get; init; }

    /// <summary>Water in the casing, m³.</summary>
    public required Setting<double> CasingWaterM3 { get; init; }

    /// <summary>Iron of the casing that warms with the water, kg.</summary>
    public required Setting<double> CasingIronKg { get; init; }

    /// <summary>Heat loss of the casing to the plant room, W/K.</summary>
    public required Setting<double> CasingLossWPerK { get; init; }
}

/// <summary>Spring bypass between the mains' supply and return.</summary>
/// <param name="OpensAtPa">Differential pressure at which it begins to open, Pa.</param>
/// <param name="BandPa">Further pressure over which it opens fully, Pa.</param>
/// <param name="Kvs">Kv fully open, m³/h at 1 bar.</param>
/// <param name="CountsAs">Capacity that the file lets it count as; 0 when the file does not say.</param>
public sealed record HouseBypass(double OpensAtPa, Setting<double> BandPa, double Kvs, int CountsAs);

/// <summary>Bypass that always stands open between the mains' supply and return.</summary>
/// <param name="Kv">Kv, m³/h at 1 bar.</param>
/// <param name="CountsAs">Capacity that the file lets it count as; 0 when the file does not say.</param>
public sealed record HouseFixedBypass(double Kv, int CountsAs);
