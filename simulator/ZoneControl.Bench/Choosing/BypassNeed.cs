using ZoneControl.Bench.Houses;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>What a bypass must do when one zone alone is open.</summary>
/// <param name="Zone">The zone that passes least alone.</param>
/// <param name="FlowM3s">What the bypass must pass so that the pump has its minimum flow, m³/s; 0 or less when nothing.</param>
/// <param name="OneOpenM">Head across it then, m.</param>
/// <param name="AllOpenM">Head across it with all zones open and no bypass, m.</param>
/// <param name="Kv">Kv that it then has to have, m³/h at 1 bar; 0 when it has to pass nothing.</param>
public sealed record BypassNeed(int Zone, double FlowM3s, double OneOpenM, double AllOpenM, double Kv)
{
    /// <summary>Head room between the pressure with all zones open and the opening pressure (common practice).</summary>
    private const double Margin = 1.1;

    /// <summary>
    /// Water temperature at which a bypass is set, °C: its dial has one setting for the whole year, so checks and comparisons
    /// must reckon it alike.
    /// </summary>
    public static double SettingWaterC { get; } = new CheckAssumptions().WaterC;

    /// <summary>Whether a tenth of head room would already be more than one zone alone leaves: the pump's curve is too flat.</summary>
    public bool TooFlat => AllOpenM * Margin >= OneOpenM;

    /// <summary>
    /// Head at which to set it, m: a tenth above that with all zones open, or half-way to that with one zone where the pump's
    /// curve leaves less room.
    /// </summary>
    public double SettingM => TooFlat ? (AllOpenM + OneOpenM) / 2 : AllOpenM * Margin;

    /// <summary>
    /// The need of a house. The bypass is stood in for by a fixed opening that is searched until the pump has exactly its
    /// minimum flow.
    /// </summary>
    public static BypassNeed Of(House house, HouseFlows flows)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(flows);
        PlantDescription bare = flows.Plant with { Bypass = null, FixedBypassKv = null };
        var without = new HouseFlows(bare);
        int zone = Enumerable.Range(0, house.Zones.Count).MinBy(z => without.With(1 << z).PumpFlowM3s);
        double allOpen = without.With(without.AllZones).EndsHeadM;
        OperatingPoint alone = without.With(1 << zone);
        double needed = house.Pump.MinimumFlowM3s.Value;
        if (alone.PumpFlowM3s >= needed)
            return new BypassNeed(zone, 0, alone.EndsHeadM, allOpen, 0);

        (double low, double high) = (0.001, 1000);
        for (int i = 0; i < 60; i++)
        {
            double middle = Math.Sqrt(low * high);
            bool less = new HouseFlows(bare with { FixedBypassKv = middle }).With(1 << zone).PumpFlowM3s < needed;
            (low, high) = less ? (middle, high) : (low, middle);
        }

        OperatingPoint met = new HouseFlows(bare with { FixedBypassKv = high }).With(1 << zone);
        return new BypassNeed(zone, met.BypassFlowM3s, met.EndsHeadM, allOpen, high);
    }
}
