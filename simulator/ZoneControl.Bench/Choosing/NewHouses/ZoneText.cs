using static ZoneControl.Bench.Choosing.NewHouses.HouseWriter;

namespace ZoneControl.Bench.Choosing.NewHouses;

/// <summary>Writes actuators and zones of a new house file. Zones with the same kind and time share one actuator.</summary>
internal static class ZoneText
{
    public static void Write(Action<string> line, HouseAnswers a)
    {
        var actuators = new Dictionary<(string Kind, string Opening), string>();
        foreach (ZoneAnswers zone in a.Zones)
        {
            var key = Key(zone);
            if (actuators.ContainsKey(key))
                continue;
            int same = actuators.Keys.Count(other => other.Kind == key.Kind);
            string stem = key.Kind.Replace(' ', '-');
            actuators[key] = same == 0 ? stem : $"{stem}-{same + 1}";
            Actuator(line, actuators[key], key);
        }

        var names = new HashSet<string>();
        foreach (ZoneAnswers zone in a.Zones)
            Zone(line, a, zone, Unique(names, FileName(zone.Name)), actuators[Key(zone)]);
    }

    private static (string Kind, string Opening) Key(ZoneAnswers zone) => (zone.Kind, zone.Opening ?? CommonValues.Opening(zone.Kind));

    private static void Actuator(Action<string> line, string name, (string Kind, string Opening) key)
    {
        bool switched = key.Kind == "motorised with switch";
        line("[[actuator]]");
        line($"name = {Quoted(name)}");
        line(key.Kind switch
        {
            "two-wire" => "kind = \"two-wire\"     # thermal; it says nothing when it is open, so only time proves it",
            "four-wire" => "kind = \"four-wire\"    # thermal; the other two wires are an end switch that makes when it is open",
            _ => "kind = \"motorised\"    # a motor with spring return",
        });
        line($"opening_time = {Quoted(key.Opening)}   # at worst: cold, old, on a low supply");
        if (switched)
            line("switch_at = \"90 %\"    # travel at which its end switch makes (common practice)");
        line("");
    }

    private static void Zone(Action<string> line, HouseAnswers a, ZoneAnswers zone, string name, string actuator)
    {
        string manifold = a.Manifolds.Count > 1 ? $"manifold = {Quoted(FileName(zone.Manifold ?? a.Manifolds[0]))}, " : "";
        line("[[zone]]");
        line($"name = {Quoted(name)}");
        line($"label = {Quoted(zone.Name)}");
        line($"actuator = {Quoted(actuator)}");
        line($"loops = [{string.Join(", ", zone.Loops.Select(length => $"{{ {manifold}length = {Quoted(length)} }}"))}]");
        if (a.Gated)
            line("gated = true          # an existing panel drives its valves; ZoneControl senses them");
        line("");
    }

    private static string Unique(HashSet<string> names, string name)
    {
        string unique = name;
        for (int i = 2; !names.Add(unique); i++)
            unique = $"{name[..Math.Min(name.Length, 21)]}-{i}";
        return unique;
    }
}
