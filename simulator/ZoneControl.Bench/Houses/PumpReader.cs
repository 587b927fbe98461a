using ZoneControl.Bench.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads the pump and its curve.</summary>
internal static class PumpReader
{
    // What nobody finds on a label. A small wet-rotor circulator's casing (common practice); the energy that heats trapped
    // water is the label's power, so these set how fast it heats, not whether.
    private const double CasingWaterM3 = 0.35e-3;
    private const double CasingIronKg = 1.5;
    private const double CasingLossWPerK = 1;

    private const string CurveExpected = "a list of pairs of flow and head, such as [[\"0 L/min\", \"4 m\"], [\"30 L/min\", \"0 m\"]]";

    public static HousePump? Read(TableReader? table, DisplayUnits units)
    {
        if (table is null)
            return null;
        List<PumpPoint>? curve = ReadCurve(table);
        double? power = table.Quantity("power", Dimension.Power, "1 W", "5 kW", required: true);
        double? minimum = table.Quantity("minimum_flow", Dimension.Flow, "0.01 L/min", "1000 L/min");
        double? flowSwitch = table.Quantity("flow_switch_at", Dimension.Flow, "0.01 L/min", "1000 L/min");
        double? water = table.Quantity("casing_water", Dimension.Volume, "10 mL", "20 L");
        double? iron = table.Quantity("casing_iron", Dimension.Mass, "0 kg", "200 kg");
        double? loss = table.Quantity("casing_loss", Dimension.HeatLoss, "0 W/K", "100 W/K");
        double? speedGiven = table.Quantity("speed", Dimension.Share, "10 %", "150 %");
        Setting<double> speed = SettingReader.Or(table, "speed", speedGiven, Setting.Derived(1.0, "the curve's speed"));
        RegulationDescription? regulation = RegulationReader.Read(table, curve?[0].HeadM * speed.Value * speed.Value, units);
        IReadOnlyList<PumpPowerPoint>? powerByFlow = RegulationReader.ReadPower(table);
        double? toWater = table.Quantity("heat_to_water", Dimension.Share, "0 %", "100 %");
        table.End();
        if (regulation?.LowestSpeed > speed.Value)
            table.Error("regulation", "a lowest speed above the speed at which it runs", $"at most {speed.Value * 100:0.#} %");
        if (curve is null)
            return null;
        double mostFlow = curve[^1].FlowM3s * speed.Value;
        LessThanMost(table, "minimum_flow", minimum, mostFlow, units);
        LessThanMost(table, "flow_switch_at", flowSwitch, mostFlow, units);

        if (power is not { } watts)
            return null;
        const string CommonPractice = "common practice for a small circulator";
        Setting<double> minimumFlow = SettingReader.Or(table, "minimum_flow", minimum, Setting.Derived(
            mostFlow / 10, "a tenth of the curve's flow at no head (common practice; the maker's word is better)"));
        return new HousePump
        {
            Curve = curve,
            PowerW = watts,
            Speed = speed,
            Regulation = regulation,
            PowerByFlow = powerByFlow,
            HeatToWater = SettingReader.Or(table, "heat_to_water", toWater, Setting.Derived(1.0, "all of it: an upper bound")),
            MinimumFlowM3s = minimumFlow,
            FlowSwitchAtM3s = SettingReader.Or(
                table, "flow_switch_at", flowSwitch, Setting.Derived(minimumFlow.Value, "the pump's minimum flow")),
            CasingWaterM3 = Or(table, "casing_water", water, CasingWaterM3, CommonPractice),
            CasingIronKg = Or(table, "casing_iron", iron, CasingIronKg, CommonPractice),
            CasingLossWPerK = Or(table, "casing_loss", loss, CasingLossWPerK, CommonPractice),
        };
    }

    private static Setting<double> Or(TableReader table, string key, double? given, double derived, string from) =>
        given is { } value ? Setting.Given(value, table.PlaceOf(key).Line) : Setting.Derived(derived, from);

    private static void LessThanMost(TableReader table, string key, double? given, double mostFlow, DisplayUnits units)
    {
        if (given is { } flow && flow >= mostFlow)
            table.Error(key, Show.Flow(flow, units), $"less than {Show.Flow(mostFlow, units)}, the most that the curve gives");
    }

    private static List<PumpPoint>? ReadCurve(TableReader table)
    {
        TomlNode? node = table.Node("curve", CurveExpected, required: true);
        if (node is null)
            return null;
        if (node is not TomlList { Items.Count: >= 2 } list)
        {
            table.Error("curve", node is TomlList ? "fewer than two points" : node.Found, CurveExpected);
            return null;
        }

        var points = new List<(PumpPoint Point, Place Place)>();
        for (int i = 0; i < list.Items.Count; i++)
        {
            string path = $"{table.PathOf("curve")}[{i + 1}]";
            if (list.Items[i] is not TomlList { Items.Count: 2 } pair)
            {
                table.Mistakes.Error(list.Items[i].Place, path, list.Items[i].Found, "a pair of flow and head");
                continue;
            }

            double? flow = NodeReader.Quantity(pair.Items[0], path, Dimension.Flow, "0 L/min", "10000 L/min", table.Mistakes);
            double? head = NodeReader.Quantity(pair.Items[1], path, Dimension.Head, "0 m", "100 m", table.Mistakes);
            if (flow is { } f && head is { } h)
                points.Add((new PumpPoint(f, h), pair.Place));
        }

        return points.Count == list.Items.Count && IsCurve(points, table) ? [.. points.Select(point => point.Point)] : null;
    }

    private static bool IsCurve(List<(PumpPoint Point, Place Place)> points, TableReader table)
    {
        string path = table.PathOf("curve");
        int before = table.Mistakes.Count;
        if (points[0].Point.FlowM3s != 0)
            table.Mistakes.Error(points[0].Place, path + "[1]", "a first point with flow", "a first point at no flow");
        if (points[0].Point.HeadM <= 0)
            table.Mistakes.Error(points[0].Place, path + "[1]", "no head at no flow", "a head above 0");
        for (int i = 1; i < points.Count; i++)
        {
            if (points[i].Point.FlowM3s <= points[i - 1].Point.FlowM3s)
                table.Mistakes.Error(points[i].Place, $"{path}[{i + 1}]", "a flow that does not rise", "more flow at each point");
            if (points[i].Point.HeadM > points[i - 1].Point.HeadM)
                table.Mistakes.Error(points[i].Place, $"{path}[{i + 1}]", "a curve that rises",
                    "no more head than at the point before");
        }

        if (points[^1].Point.HeadM != 0)
        {
            table.Mistakes.Error(points[^1].Place, $"{path}[{points.Count}]", "a last point with head",
                "a last point at no head", "draw the curve on to where it meets the flow axis");
        }

        return table.Mistakes.Count == before;
    }
}
