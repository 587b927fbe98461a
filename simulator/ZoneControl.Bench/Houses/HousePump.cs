using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>The circulator at its fixed speed.</summary>
public sealed record HousePump
{
    /// <summary>Curve: flow rising from 0, head never rising, the last head 0; at least two points.</summary>
    public required IReadOnlyList<PumpPoint> Curve { get; init; }

    /// <summary>Electrical power, W.</summary>
    public required double PowerW { get; init; }

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
