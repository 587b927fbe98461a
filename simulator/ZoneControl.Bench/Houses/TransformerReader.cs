using System.Globalization;
using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads the actuators' transformer, and whether it can hold and open every valve that ZoneControl drives.</summary>
internal static class TransformerReader
{
    public static HouseTransformer? Read(TableReader? table)
    {
        if (table is null)
            return null;
        double? rating = table.Quantity("rating", Dimension.Load, "1 VA", "1000 VA", required: true);
        Setting<double> share = SettingReader.Quantity(
            table, "share", Dimension.Share, "10 %", "100 %", Setting.Derived(0.8, "a fifth in hand (common practice)"));
        Setting<double> supply = SettingReader.Quantity(
            table, "supply", Dimension.Voltage, "5 V", "250 V", Derivations.Supply);
        table.End();
        return rating is { } va ? new HouseTransformer(va, share, supply) : null;
    }

    /// <summary>The last valve to open does so while all others are held: else it would wait for ever.</summary>
    public static void Check(TableReader? table, HouseTransformer? transformer, IReadOnlyList<HouseZone> zones)
    {
        if (table is null || transformer is null)
            return;
        HouseZone[] driven = [.. zones.Where(zone => !zone.Gated)];
        double held = driven.Sum(zone => zone.HoldVa);
        HouseZone? worst = driven.MaxBy(zone => zone.InrushVa - zone.HoldVa);
        double needed = worst is null ? 0 : held - worst.HoldVa + worst.InrushVa;
        // To the tenth of a VA, as the controller counts: loads rounded up, what is allowed rounded down.
        if (worst is not null && SettingsFromHouse.Tenths(driven, worst) > transformer.AllowedDeciVa)
        {
            table.Error("rating", $"{Va(transformer.AllowedVa)} of {Va(transformer.RatingVa)} that may be used",
                $"at least {Va(needed)}, what zone \"{worst.Name}\" needs to open while all others are held");
        }

        foreach (HouseActuator actuator in driven.Select(zone => zone.Actuator).DistinctBy(actuator => actuator.Name))
        {
            if (Math.Abs(actuator.SupplyV.Value - transformer.SupplyV.Value) > 1e-9)
            {
                table.Error("supply", Volts(transformer.SupplyV.Value),
                    $"{Volts(actuator.SupplyV.Value)}, which actuator \"{actuator.Name}\" is made for");
            }
        }
    }

    private static string Va(double va) => string.Create(CultureInfo.InvariantCulture, $"{va:0.#} VA");

    private static string Volts(double v) => string.Create(CultureInfo.InvariantCulture, $"{v:0.#} V");
}
