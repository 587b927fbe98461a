using ZoneControl.Bench.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads the spring bypass and the fixed one.</summary>
internal static class BypassReader
{
    /// <summary>Pressure over which a bypass opens fully where the file gives none, Pa (0.1 bar, common practice).</summary>
    private const double DefaultBandPa = 10_000;

    /// <summary>Pressure of a metre of water, Pa: density 1,000 kg/m³ under standard gravity.</summary>
    private const double PaPerM = 1000 * HydraulicRules.StandardGravity;

    /// <summary>Reads the bypass that always stands open.</summary>
    public static HouseFixedBypass? ReadFixed(TableReader? table)
    {
        if (table is null)
            return null;
        Setting<double>? kv = KvReader.Read(table, "kv", "cv");
        if (kv is null && !table.Has("kv") && !table.Has("cv"))
            table.Missing("kv", "a number: Kv in m³/h at 1 bar, or \"cv\" in gpm at 1 psi");
        int countsAs = table.Whole("counts_as", 0, 1000) ?? 0;
        table.End();
        return kv is null ? null : new HouseFixedBypass(kv.Value, countsAs);
    }

    public static HouseBypass? Read(TableReader? table, HousePump? pump)
    {
        if (table is null)
            return null;
        double? opensAt = table.Quantity("opens_at", Dimension.Pressure, "1 mbar", "10 bar", required: true);
        double? band = table.Quantity("band", Dimension.Pressure, "1 mbar", "10 bar");
        Setting<double>? kvs = KvReader.Read(table, "kvs", "cv");
        if (kvs is null && !table.Has("kvs") && !table.Has("cv"))
            table.Missing("kvs", "a number: Kv in m³/h at 1 bar, or \"cv\" in gpm at 1 psi");
        int countsAs = table.Whole("counts_as", 0, 1000) ?? 0;
        table.End();
        if (opensAt is { } opens && pump is not null && opens >= pump.ShutoffHeadM * PaPerM)
        {
            table.Warning("opens_at", $"{opens / 100_000:0.###} bar",
                $"less than {pump.ShutoffHeadM * PaPerM / 100_000:0.###} bar, the most that the pump can give",
                "set so, the bypass never opens");
        }

        if (pump?.Regulation?.HeadAtNoFlowM < pump?.Regulation?.SetHeadM)
        {
            table.Error("opens_at", "a spring bypass beside a pump whose head rises with flow",
                "a pump at fixed speed or constant head, or a [fixed_bypass]", "together they may balance at more than one flow");
        }

        if (opensAt is not { } pa || kvs is null)
            return null;
        Setting<double> bandPa = band is { } given
            ? Setting.Given(given, table.PlaceOf("band").Line)
            : Setting.Derived(DefaultBandPa, "common practice");
        return new HouseBypass(pa, bandPa, kvs.Value, countsAs);
    }
}
