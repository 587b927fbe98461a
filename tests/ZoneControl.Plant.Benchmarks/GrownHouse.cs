using ZoneControl.Bench.Houses;

namespace ZoneControl.Plant.Benchmarks;

/// <summary>Houses of any size for growth, all zones alike.</summary>
internal static class GrownHouse
{
    public static House Of(int zones, int loops)
    {
        string text = $"""
            name = "Grown"
            [pump]
            curve = [["0 L/min", "6 m"], ["{loops * 3} L/min", "4 m"], ["{loops * 6} L/min", "0 m"]]
            power = "{20 + loops * 4} W"
            minimum_flow = "1 L/min"
            [mains]
            length = "10 m"
            inside = "{20 + loops} mm"
            [[manifold]]
            name = "only"
            [every_loop]
            tube = "16x2 mm"
            [[actuator]]
            name = "wax"
            kind = "two-wire"
            opening_time = "4 min"

            """
            + string.Concat(Enumerable.Range(0, zones).Select(zone =>
                $"[[zone]]\nname = \"z{zone}\"\nactuator = \"wax\"\nloops = ["
                + string.Join(", ", Enumerable.Range(0, loops / zones).Select(i => $"{{ length = \"{60 + (7 * (zone + i) % 40)} m\" }}"))
                + "]\n"))
            + "[controller]\nminimum_open = 1\n";
        HouseReading reading = HouseFile.Parse(text, "grown.toml");
        return reading.House ?? throw new InvalidOperationException(string.Join('\n', reading.Mistakes));
    }
}
