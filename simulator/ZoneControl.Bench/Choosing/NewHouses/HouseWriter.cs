using System.Globalization;
using System.Text;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing.NewHouses;

/// <summary>A new house file.</summary>
/// <param name="Text">Its text.</param>
/// <param name="House">The house that the text describes; null when it cannot be used.</param>
/// <param name="Mistakes">What is wrong with it, in the words of the file's reader.</param>
public sealed record NewHouse(string Text, House? House, IReadOnlyList<FileMistake> Mistakes)
{
    /// <summary>Where its minimum open comes from; possibly "".</summary>
    public string WhyOpen { get; init; } = "";
}

/// <summary>Writes a commented house file from answers, and reckons minimum open where nobody gives it.</summary>
public static class HouseWriter
{
    /// <summary>Makes the file; <paramref name="fileName"/> is what messages call it.</summary>
    public static NewHouse Write(HouseAnswers answers, string fileName)
    {
        ArgumentNullException.ThrowIfNull(answers);
        (int open, string why) = answers.MinimumOpen is { } given ? (given, "as answered") : Reckoned(answers, fileName);
        string text = Text(answers, open, why);
        HouseReading reading = HouseFile.Parse(text, fileName);
        return new NewHouse(text, reading.House, reading.Mistakes) { WhyOpen = why };
    }

    /// <summary>The least minimum open that keeps the pump above its minimum flow with every set of zones.</summary>
    private static (int Open, string Why) Reckoned(HouseAnswers answers, string fileName)
    {
        if (HouseFile.Parse(Text(answers, 1, ""), fileName).House is not { } house)
            return (1, "");
        var flows = HouseFlows.ThatCount(house, new CheckAssumptions().WaterC);
        var sets = new OpenSets(house, flows);
        // Nobody opens companions for a panel's zones, so each has to reach it alone.
        int reach = answers.Gated
            ? Enumerable.Range(0, house.Zones.Count).Min(zone => OpenSets.CapacityOf(house, 1 << zone))
            : OpenSets.CapacityOf(house, flows.AllZones);
        return sets.LeastMinimumOpen(house.Pump.MinimumFlowM3s.Value) is { } least && least <= reach
            ? (least, "the least that keeps the pump above its minimum flow with every set of zones that reaches it")
            : (reach, "the most that every call reaches, and too little for the pump: ask check what to do");
    }

    private static string Text(HouseAnswers a, int minimumOpen, string why)
    {
        CommonValues common = CommonValues.Of(a.Units);
        var text = new StringBuilder();
        void Line(string line = "") => text.Append(line).Append('\n');
        Line($"# {OneLine(a.Name)}. Made by `zonecontrol new` from answers; every line may be changed.");
        Line("# Anything with a unit is written with its unit, in quotes: \"80 m\" and \"260 ft\" are both understood.");
        Line("# `zonecontrol check` with this file says whether pump, pipes, valves and times fit together.");
        Line();
        Line($"name = {Quoted(a.Name)}");
        Line($"units = {Quoted(a.Units)}      # how results are shown: \"si\" or \"us\"");
        Line();
        Pump(Line, a, common);
        Line("[mains]               # from the pump to the manifolds and back, both ways together");
        Line($"length = {Quoted(a.MainsLength ?? common.MainsLength)}");
        Line($"inside = {Quoted(a.MainsInside ?? common.MainsInside)}");
        Line("fittings_k = 15       # elbows, tees and the heat source's own resistance (common practice)");
        Line();
        foreach (string manifold in a.Manifolds)
        {
            Line("[[manifold]]");
            Line($"name = {Quoted(FileName(manifold))}");
            Line($"label = {Quoted(manifold)}");
            Line();
        }

        Line("[every_loop]          # what all loops share; a loop may say otherwise");
        Line($"tube = {Quoted(a.Tube ?? common.Tube)}");
        Line();
        ZoneText.Write(Line, a);
        Rooms(Line, a);
        Standing(Line, a);
        Controller(Line, a, minimumOpen, why);
        return text.ToString().TrimEnd('\n') + "\n";
    }

    private static void Pump(Action<string> line, HouseAnswers a, CommonValues common)
    {
        string head = a.PumpHead ?? common.PumpHead;
        string flow = a.PumpFlow ?? common.PumpFlow;
        line("[pump]");
        line("# From no flow to no head, as the label says; the point between is half the flow at three quarters of the head,");
        line("# as with most small pumps (common practice). The data sheet's own curve is better.");
        line($"curve = [[\"0 {UnitOf(flow)}\", {Quoted(head)}], [{Scaled(flow, 0.5)}, {Scaled(head, 0.75)}], [{Quoted(flow)}, \"0 {UnitOf(head)}\"]]");
        line($"power = {Quoted(a.PumpPower ?? common.PumpPower)}        # on the label");
        line(a.MinimumFlow is { } least
            ? $"minimum_flow = {Quoted(least)}"
            : "# minimum_flow = ...   # the maker's word; without it, a tenth of the most flow (common practice)");
        line("");
    }

    /// <summary>What is taken for granted of rooms and heat source, and how to say better.</summary>
    private static void Rooms(Action<string> line, HouseAnswers a)
    {
        bool us = a.Units == "us";
        string spacing = Choosing.Measured.Spacing(RoomReader.CommonSpacingM, us ? DisplayUnits.Us : DisplayUnits.Si);
        // A kelvin is 9/5 °F; a W is 3.412 BTU/h, a m² 10.764 ft².
        string loss = us
            ? string.Create(CultureInfo.InvariantCulture, $"{RoomReader.CommonLossWPerKM2 * 3.412 / 1.8 / 10.764:0.##} BTU/h/F for each ft²")
            : string.Create(CultureInfo.InvariantCulture, $"{RoomReader.CommonLossWPerKM2:0.##} W/K for each m²");
        line($"# Rooms were not asked for. Each is taken to have as much floor as its tubes cover {spacing} apart, and to lose {loss}");
        line("# of it; the heat source is taken to suit them all (common practice). Better, in a [[zone]], if you know it:");
        line(us ? "# room = { area = \"215 ft2\", loss = \"45 BTU/h/F\" }" : "# room = { area = \"20 m2\", loss = \"25 W/K\" }");
        line("");
    }

    private static void Standing(Action<string> line, HouseAnswers a)
    {
        foreach (string length in a.StandingLoops)
        {
            line("[[standing_loop]]     # no actuator: always open, so it counts from the start");
            line($"length = {Quoted(length)}");
            line($"manifold = {Quoted(FileName(a.Manifolds[0]))}");
            line("");
        }

        if (a.Bypass is { } opens)
        {
            line("[bypass]              # a spring bypass; it counts for nothing unless counts_as says so");
            line($"opens_at = {Quoted(opens)}");
            line(a.Units == "us"
                ? "cv = 2.9              # what it passes fully open, gpm at 1 psi (common practice)"
                : "kvs = 2.5             # what it passes fully open, m³/h at 1 bar (common practice)");
            line("");
        }

        if (a.Transformer is { } rating && !a.Gated)
        {
            line("[transformer]         # valves are opened one after the other where all at once would overload it");
            line($"rating = {Quoted(rating)}");
            line("");
        }
    }

    private static void Controller(Action<string> line, HouseAnswers a, int minimumOpen, string why)
    {
        line("[controller]");
        line("# How many loops must be proven open before the pump may run, and for as long as it runs.");
        line(FormattableString.Invariant($"minimum_open = {minimumOpen}{(why.Length > 0 ? $"      # {why}" : "")}"));
        line(a.Gated ? "heat_demand_through = true   # the panel's heat demand is wired through ZoneControl" : "# companions = [...]    # zones that help out, in order; without it all of them");
        line("# Other times follow from the actuators above: wax closes in one and a half opening times, a motor as fast as it opens,");
        line("# and a quarter is added before time alone proves one. README.md beside the examples lists all keys.");
        line("");
        line("[contacts]            # true for what is fitted");
        foreach (ContactKind kind in ContactKind.All)
            line($"{kind.Key} = {(a.Contacts.Contains(kind.Key) ? "true" : "false")}");
        line($"service = {(a.Contacts.Contains("service") ? "true" : "false")}");
    }

    private static string UnitOf(string quantity) => quantity.TrimStart(' ', '+', '-', '.', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9');

    private static string Scaled(string quantity, double times)
    {
        string unit = UnitOf(quantity);
        string number = quantity[..^unit.Length].Trim();
        return double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            ? Quoted(string.Create(CultureInfo.InvariantCulture, $"{value * times:0.####} {unit}"))
            : Quoted(quantity);
    }

    /// <summary>A name in files for a name of people: "Throwing room" is "throwing-room", "Küche" is "kueche".</summary>
    public static string FileName(string label)
    {
        ArgumentNullException.ThrowIfNull(label);
        var name = new StringBuilder();
        foreach (char c in string.Concat(label.ToLowerInvariant().Select(Plain)))
        {
            if (char.IsAsciiLetterLower(c) || (char.IsAsciiDigit(c) && name.Length > 0))
                name.Append(c);
            else if (name.Length > 0 && name[^1] != '-')
                name.Append('-');
        }

        string whole = name.ToString()[..Math.Min(24, name.Length)].Trim('-');
        return whole.Length > 0 ? whole : "zone";
    }

    /// <summary>Letters with marks as plain ones: the program carries no tables of other languages.</summary>
    private static string Plain(char c) => c switch
    {
        'ä' or 'æ' => "ae",
        'ö' or 'ø' or 'œ' => "oe",
        'ü' => "ue",
        'ß' => "ss",
        'à' or 'á' or 'â' or 'ã' or 'å' => "a",
        'è' or 'é' or 'ê' or 'ë' => "e",
        'ì' or 'í' or 'î' or 'ï' => "i",
        'ò' or 'ó' or 'ô' or 'õ' => "o",
        'ù' or 'ú' or 'û' => "u",
        'ç' => "c",
        'ñ' => "n",
        _ => c.ToString(),
    };

    /// <summary>Text as TOML's basic strings write it.</summary>
    internal static string Quoted(string text) => "\"" + string.Concat(text.Select(c => c switch
    {
        '"' => "\\\"",
        '\\' => "\\\\",
        _ when char.IsControl(c) => FormattableString.Invariant($"\\u{(int)c:X4}"),
        _ => c.ToString(),
    })) + "\"";

    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
}
