using ZoneControl.Bench.Houses;

namespace ZoneControl.Proving.Tests;

/// <summary>Houses with one to three zones and no more contacts than a rule needs, with round times.</summary>
internal static class SmallHouses
{
    /// <summary>A house by name: its zones, and what it has beside them.</summary>
    public static House Of(string name) => name switch
    {
        "one" => House([Switched("a")], 1, "season = true"),
        "timed" => House([Timed("a")], 1, "season = true"),
        "slow" => House([Timed("a").Replace("40 s", "1 min 20 s", StringComparison.Ordinal)], 1, ""),
        "two" => House([Switched("a"), Timed("b")], 1, "season = true"),
        "companion" => House([Timed("a"), Timed("b")], 2, ""),
        "three" => House([Timed("a"), Timed("b"), Timed("c")], 2, ""),
        "starts" => House([Switched("a")], 1, "", "pump_max_starts = 10"),
        "flow" => House([Timed("a")], 1, "flow = true\nreset = true", "flow_proof_time = \"20 s\"\nflow_loss_time = \"20 s\"\nflow_retries = 1"),
        "limit" => House([Timed("a")], 1, "limit = true\nreset = true"),
        "freeze" => House([Timed("a"), Timed("b")], 1, "season = true\nfreeze = true", "freeze_heat_max = \"2 min\""),
        "priority" => House([Timed("a")], 1, "priority = true", "priority_max = \"2 min\""),
        "supply" => House([Timed("a")], 1, "supply = true"),
        "stagger" => House([Timed("a"), Timed("b")], 1, "", "", "[transformer]\nrating = \"16 VA\"\n"),
        "service" => House([Timed("a")], 1, "service = true", "service_limit = \"2 min\""),
        "gate" => House([Timed("a", "gated = true")], 1, "", "heat_demand_through = true"),
        "boot" => House([Timed("a")], 1, "", "call_debounce = \"0 s\""),
        "exercise" => House([Timed("a")], 1, "", "exercise_interval = \"1 h\"", exercises: true),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "a house nobody has described"),
    };

    private static string Switched(string name) => $$"""
        [[zone]]
        name = "{{name}}"
        actuator = "motor"
        loops = [{ length = "80 m" }]
        proof_time = "40 s"
        switch_min_time = "10 s"
        """;

    private static string Timed(string name, string more = "") => $$"""
        [[zone]]
        name = "{{name}}"
        actuator = "wax"
        loops = [{ length = "80 m" }]
        proof_time = "40 s"
        {{more}}
        """;

    private static House House(
        string[] zones, int minimumOpen, string contacts, string controller = "", string tables = "", bool exercises = false)
    {
        bool switched = zones.Any(zone => zone.Contains("motor", StringComparison.Ordinal));
        bool timed = zones.Any(zone => zone.Contains("wax", StringComparison.Ordinal));
        string starts = controller.Contains("pump_max_starts", StringComparison.Ordinal) ? "" : "pump_max_starts = 60";
        string interval = exercises ? "" : "exercise_interval = \"0 s\"";
        string text = $$"""
            name = "A small house"
            [pump]
            curve = [["0 L/min", "5 m"], ["40 L/min", "0 m"]]
            power = "60 W"
            [mains]
            length = "10 m"
            inside = "26 mm"
            [[manifold]]
            name = "main"
            [every_loop]
            tube = "16x2 mm"
            {{(switched ? "[[actuator]]\nname = \"motor\"\nkind = \"motorised\"\nopening_time = \"30 s\"\nswitch_at = \"90 %\"" : "")}}
            {{(timed ? "[[actuator]]\nname = \"wax\"\nkind = \"two-wire\"\nopening_time = \"30 s\"\nhold = \"4 VA\"\ninrush = \"8 VA\"" : "")}}
            {{string.Join('\n', zones)}}
            {{tables}}
            [controller]
            minimum_open = {{minimumOpen}}
            pump_start_delay = "40 s"
            pump_overrun = "1 min"
            pump_min_off = "1 min"
            valve_retries = 1
            exercise_run = "1 min"
            {{starts}}
            {{interval}}
            {{controller}}
            [contacts]
            {{contacts}}
            """;
        HouseReading reading = HouseFile.Parse(text, "small.house.toml");
        Assert.True(reading.House is not null, string.Join('\n', reading.Mistakes));
        return reading.House!;
    }
}
