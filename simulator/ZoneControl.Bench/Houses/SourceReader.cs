using ZoneControl.Bench.Files;
using ZoneControl.Plant.Heat;
using static ZoneControl.Bench.Houses.SettingReader;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads the heat source and its tank.</summary>
internal static class SourceReader
{
    /// <summary>Difference between rooms and outdoors for which a source is sized where the file says nothing, K.</summary>
    private const double DesignK = 32;

    private const double LossPerRootLitre = 0.15; // W/K: some 1.5 W/K for 100 L (common practice)

    public static HouseSource Read(TableReader? table, TableReader? tank, IReadOnlyList<HouseRoom> rooms)
    {
        double needed = rooms.Sum(room => room.LossWPerK.Value) * DesignK * 1.2;
        double power = Math.Clamp(Math.Ceiling(needed / 500) * 500, 1000, 1e7);
        double? volume = tank?.Quantity("volume", Dimension.Volume, "1 L", "100 m3", required: true);
        double litres = (volume ?? 0) * 1000;
        Setting<double> tankLoss = Double(tank, "loss", Dimension.HeatLoss, "0 W/K", "100 W/K", volume is null
            ? Setting.Derived(0.0, "no tank")
            : Setting.Derived(LossPerRootLitre * Math.Sqrt(litres), "common practice: grows with the root of the volume"));
        tank?.End();
        var source = new HouseSource
        {
            PowerW = Double(table, "power", Dimension.Power, "100 W", "10000 kW", Setting.Derived(
                power, "the rooms' losses at 32 K and a fifth more (common practice)")),
            Set = ReadSet(table),
            DifferentialK = Double(
                table, "differential", Dimension.Difference, "0.5 K", "40 K", Setting.Derived(6.0, "common practice")),
            MinimumRun = Span(table, "minimum_run", Fixed("3 min", "common practice: 3 to 10 minutes")),
            MinimumRest = Span(table, "minimum_rest", Fixed("2 min", "common practice: 1 to 5 minutes")),
            HighLimitC = Double(
                table, "high_limit", Dimension.Temperature, "20 °C", "110 °C", Setting.Derived(55.0, "common practice for floors")),
            WaterM3 = Double(table, "water", Dimension.Volume, "1 L", "100 m3", Setting.Derived(0.025, "common practice")),
            LossWPerK = Double(table, "loss", Dimension.HeatLoss, "0.01 W/K", "900 W/K", Setting.Derived(2.0, "common practice")),
            TankM3 = volume ?? 0,
            TankLossWPerK = tankLoss,
        };
        table?.End();
        Check(table, source);
        return source;
    }

    private static Setting<ResetCurve> ReadSet(TableReader? table)
    {
        var common = Setting.Derived(
            new ResetCurve(-12, 40, 18, 26), "common practice: 40 °C in the cold (-12 °C), 26 °C in mild weather (18 °C)");
        if (table is null)
            return common;
        double? set = table.Quantity("set", Dimension.Temperature, "15 °C", "95 °C");
        TableReader? reset = table.Table("reset");
        if (reset is null)
            return set is { } fixedC ? Setting.Given(ResetCurve.Fixed(fixedC), table.PlaceOf("set").Line) : common;
        if (table.Has("set"))
            table.Error("set", "both \"set\" and \"reset\"", "one of them");
        double? coldOut = reset.Quantity("cold", Dimension.Temperature, "-60 °C", "40 °C", required: true);
        double? coldWater = reset.Quantity("cold_water", Dimension.Temperature, "15 °C", "95 °C", required: true);
        double? mildOut = reset.Quantity("mild", Dimension.Temperature, "-60 °C", "60 °C", required: true);
        double? mildWater = reset.Quantity("mild_water", Dimension.Temperature, "15 °C", "95 °C", required: true);
        reset.End();
        if (coldOut is not { } co || coldWater is not { } cw || mildOut is not { } mo || mildWater is not { } mw)
            return common;
        if (mo <= co)
        {
            reset.Error("mild", $"{mo:0.#} °C", $"more than {co:0.#} °C, the cold end");
            return common;
        }

        if (mw > cw)
            reset.Warning("mild_water", $"{mw:0.#} °C, warmer than in the cold", $"at most {cw:0.#} °C");
        return Setting.Given(new ResetCurve(co, cw, mo, mw), table.PlaceOf("reset").Line);
    }

    private static void Check(TableReader? table, HouseSource source)
    {
        ResetCurve set = source.Set.Value;
        double hottest = Math.Max(set.ColdWaterC, set.MildWaterC) + (source.DifferentialK.Value / 2);
        if (table is not null && source.HighLimitC.Value < hottest)
        {
            table.Error("high_limit", $"{source.HighLimitC.Value:0.#} °C",
                $"at least {hottest:0.#} °C, the highest set point and half the differential");
        }
    }

    private static Setting<double> Double(
        TableReader? table, string key, Dimension dimension, string least, string most, Setting<double> derived) =>
        table is null ? derived : Quantity(table, key, dimension, least, most, derived);

    private static Setting<TimeSpan> Span(TableReader? table, string key, Setting<TimeSpan> derived) =>
        table is null ? derived : SettingReader.Time(table, key, "0 s", "1 d", derived);
}
