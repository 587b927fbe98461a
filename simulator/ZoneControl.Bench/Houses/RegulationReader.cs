using ZoneControl.Bench.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Houses;

/// <summary>Reads how a pump is set: its speed, what it keeps by itself, and its power by flow.</summary>
internal static class RegulationReader
{
    private const string PowerExpected = "a list of pairs of flow and power, such as [[\"0 L/min\", \"20 W\"], [\"30 L/min\", \"45 W\"]]";

    private static readonly (string, bool)[] _keeps = [("constant", false), ("proportional", true)];

    /// <summary>What it keeps; null at fixed speed.</summary>
    public static RegulationDescription? Read(TableReader pump, double? shutoffM, DisplayUnits units)
    {
        TableReader? table = pump.Table("regulation");
        if (table is null)
            return null;
        bool? proportional = table.Choice("keeps", _keeps, required: true);
        double? set = table.Quantity("head", Dimension.Head, "0.1 m", "100 m", required: true);
        double? floor = table.Quantity("head_at_no_flow", Dimension.Head, "0.1 m", "100 m");
        double lowest = table.Quantity("lowest_speed", Dimension.Share, "0 %", "150 %") ?? 0;
        table.End();
        if (proportional == true && !table.Has("head_at_no_flow"))
            table.Missing("head_at_no_flow", "the head at no flow, from which it rises");
        if (proportional == false && table.Has("head_at_no_flow"))
            table.Error("head_at_no_flow", "a head at no flow for a constant head", "keeps = \"proportional\", or no such head");
        if (set is { } s && shutoffM is { } most && s >= most)
            table.Error("head", Show.Length(s, units), $"less than {Show.Length(most, units)}, what the pump gives at no flow");
        if (set is { } head && floor is { } f && f > head)
            table.Error("head_at_no_flow", Show.Length(f, units), $"at most {Show.Length(head, units)}, the set head");
        return set is { } setM && proportional is { } rises
            ? new RegulationDescription(setM) { HeadAtNoFlowM = rises ? floor : null, LowestSpeed = lowest }
            : null;
    }

    /// <summary>Power by flow; null without it.</summary>
    public static IReadOnlyList<PumpPowerPoint>? ReadPower(TableReader pump)
    {
        TomlNode? node = pump.Node("power_curve", PowerExpected);
        if (node is null)
            return null;
        if (node is not TomlList { Items.Count: >= 2 } list)
        {
            pump.Error("power_curve", node is TomlList ? "fewer than two points" : node.Found, PowerExpected);
            return null;
        }

        var points = new List<PumpPowerPoint>();
        for (int i = 0; i < list.Items.Count; i++)
        {
            string path = $"{pump.PathOf("power_curve")}[{i + 1}]";
            if (list.Items[i] is not TomlList { Items.Count: 2 } pair)
            {
                pump.Mistakes.Error(list.Items[i].Place, path, list.Items[i].Found, "a pair of flow and power");
                continue;
            }

            double? flow = NodeReader.Quantity(pair.Items[0], path, Dimension.Flow, "0 L/min", "10000 L/min", pump.Mistakes);
            double? power = NodeReader.Quantity(pair.Items[1], path, Dimension.Power, "0 W", "10 kW", pump.Mistakes);
            if (flow is { } m3s && power is { } watts)
            {
                if (points.Count == 0 ? m3s != 0 : m3s <= points[^1].FlowM3s)
                    pump.Mistakes.Error(pair.Place, path, "a flow that does not rise from 0", "no flow first, then more at each point");
                points.Add(new PumpPowerPoint(m3s, watts));
            }
        }

        return points.Count == list.Items.Count ? points : null;
    }
}
