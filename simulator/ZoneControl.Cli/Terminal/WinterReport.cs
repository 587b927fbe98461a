using Spectre.Console;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Winters;
using ZoneControl.Plant.Heat;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>What whole winters added up to, 80 columns wide, readable without colour.</summary>
internal static class WinterReport
{
    private static readonly Style _bold = new(decoration: Decoration.Bold);

    /// <summary>The whole report. Each winter lists its controllers, the judged one first.</summary>
    public static void Write(IAnsiConsole console, SeasonResult[][] winters, bool passed)
    {
        SeasonResult judged = winters[0][0];
        House house = judged.House;
        Screen.Say(console, "ZoneControl", _bold);
        Screen.Say(console, Sayings.Job);
        console.WriteLine();
        Screen.Say(console, $"House    {house.Name}");
        Screen.Say(console, $"Weather  {judged.WeatherName}, {judged.Days} days, mean "
            + $"{Show.Temperature(judged.MeanOutdoorC, house.Units)}, coldest {Show.Temperature(judged.ColdestOutdoorC, house.Units)}");
        if (winters.Length > 1)
            Screen.Say(console, $"         and {winters.Length - 1} more: figures are from lowest to highest");
        Sums(console, winters, house.Units);
        if (winters.Length == 1)
        {
            Rooms(console, judged, house);
            Heat(console, judged);
        }

        Verdict(console, winters, passed);
    }

    private static void Sums(IAnsiConsole console, SeasonResult[][] winters, DisplayUnits units)
    {
        Screen.Heading(console, winters[0].Length > 1 ? "Side by side: the same winter under each" : "The winter in figures");
        Table table = Screen.Plain(["", .. winters[0].Select(one => one.ControllerName)]);
        void Row(string name, Func<SeasonResult, double> value, Func<double, string> text) => table.AddRow(
        [
            Screen.Cell(name),
            .. Enumerable.Range(0, winters[0].Length).Select(i => Screen.Cell(Range(winters.Select(w => value(w[i])), text), _bold)),
        ]);
        Row("deadhead in all", one => one.DeadheadS, Quantity.Duration);
        Row("of it with no flow at all", one => one.ShutS, Quantity.Duration);
        Row("times it happened", one => one.DeadheadEvents, Whole);
        Row("hottest in the pump", one => one.HottestTrappedC, value => Show.Temperature(value, units));
        Row("pump starts", one => one.PumpStarts, Whole);
        Row("pump ran", one => one.PumpRunH, value => $"{value:#,0} h");
        Row("pump's energy", one => one.PumpEnergyKWh, value => $"{value:#,0} kWh");
        Row("heat from the source", one => one.HeatKWh, value => $"{value:#,0} kWh");
        Row("runs of the heat source", one => one.SourceStarts, Whole);
        Row("rooms too cold", one => one.UnderKh, value => Kelvin(value, units) + "·h");
        Row("rooms too warm", one => one.OverKh, value => Kelvin(value, units) + "·h");
        console.Write(table);
        Screen.Say(console, "Deadhead: the pump is on with less than its minimum flow; no flow at all: with every valve shut. Too cold or too warm: by more than half"
            + " the thermostat's differential and " + Kelvin(RoomSums.SlackK, units, "0.0") + ".");
    }

    private static void Rooms(IAnsiConsole console, SeasonResult season, House house)
    {
        Screen.Heading(console, "Rooms");
        string hours = house.Units == DisplayUnits.Us ? "°F·h" : "K·h";
        Table table = Screen.Plain("room", "set", "coldest", "warmest", $"too cold\n{hours}", $"too warm\n{hours}", "warmest\nfloor", "calls\nfor heat");
        foreach (TableColumn figures in table.Columns.Skip(1))
            figures.NoWrap().PadLeft(0).RightAligned(); // so that only names are broken, and those between words
        IReadOnlyList<HouseRoom> described = house.HeatOrCommon().Rooms;
        for (int i = 0; i < season.Rooms.Count; i++)
        {
            RoomSums room = season.Rooms[i];
            double limit = FloorOutput.HighestSurfaceC(described[i].Use.Value);
            table.AddRow(
                Screen.Cell(house.Zones[i].Label),
                Screen.Cell(Show.Temperature(described[i].SetC.Value, house.Units)),
                Screen.Cell(Show.Temperature(room.ColdestC, house.Units)),
                Screen.Cell(Show.Temperature(room.WarmestC, house.Units)),
                Screen.Cell(Degrees(room.UnderKh, house.Units)),
                Screen.Cell(Degrees(room.OverKh, house.Units)),
                Screen.Cell(Show.Temperature(room.WarmestFloorC, house.Units), Screen.WrongIf(room.WarmestFloorC > limit)),
                Screen.Cell(Whole(room.Calls)));
        }

        console.Write(table);
        string[] tooWarm =
        [
            .. Enumerable.Range(0, season.Rooms.Count)
                .Where(i => season.Rooms[i].FloorTooWarmH > 0)
                .Select(i => $"{house.Zones[i].Label} for {season.Rooms[i].FloorTooWarmH:#,0.#} h"),
        ];
        Screen.Say(console, tooWarm.Length == 0
            ? "No floor was warmer than EN 1264-2 allows for ("
                + $"{Limit(FloorUse.Occupied, house)} where people stay, {Limit(FloorUse.Edge, house)} at the edge, {Limit(FloorUse.Bath, house)} in a bath)."
            : $"FLOOR TOO WARM by EN 1264-2: {string.Join(", ", tooWarm)}.", Screen.WrongIf(tooWarm.Length > 0));
    }

    private static void Heat(IAnsiConsole console, SeasonResult season)
    {
        Screen.Heading(console, "Where the heat went");
        HeatSums heat = season.Heat;
        Screen.Say(console, $"In: {Kwh(heat.SourceJ)} from the source, {Kwh(heat.PumpJ)} from the pump, {Kwh(heat.GainsJ)} from people, lamps and sun.");
        Screen.Say(console, $"Out: {Kwh(heat.OutdoorsJ)} outdoors, {Kwh(heat.BelowJ)} below the floors, {Kwh(heat.PlantRoomJ)} into the"
            + $" plant room. Stored more than at the start: {Kwh(heat.StoredJ)}.");
        Screen.Say(console, Math.Abs(heat.BalanceError) < 1e-6
            ? "What came in less what went out is what is stored, to within a millionth of the heat."
            : $"What came in less what went out differs from what is stored by {Math.Abs(heat.BalanceError):0.0000 %} of the heat.");
    }

    private static void Verdict(IAnsiConsole console, SeasonResult[][] winters, bool passed)
    {
        Screen.Heading(console, "Verdict");
        int bad = winters.Count(winter => winter[0].DeadheadS > 0);
        string every = winters.Length > 1 ? $" in any of {winters.Length} winters" : "";
        Screen.Say(console, passed
            ? $"PASS  The pump never ran with less than its minimum flow{every}."
            : $"FAIL  The pump ran with less than its minimum flow{(winters.Length > 1 ? $" in {bad} of {winters.Length} winters" : "")}.",
            new Style(passed ? Color.Green : Color.Red, decoration: Decoration.Bold));
        Screen.Say(console, "A model of a house: rooms of one temperature, healthy equipment, nobody who opens windows. Compare with it; do not"
            + " promise from it.");
    }

    private static string Range(IEnumerable<double> values, Func<double, string> text)
    {
        double[] all = [.. values];
        (string low, string high) = (text(all.Min()), text(all.Max()));
        return low == high ? low : $"{low} .. {high}";
    }

    private static string Whole(double value) => $"{value:#,0}";

    private static string Kelvin(double kelvin, DisplayUnits units, string format = "#,0") => units == DisplayUnits.Us
        ? $"{(kelvin * 1.8).ToString(format)} °F"
        : $"{kelvin.ToString(format)} K";

    private static string Degrees(double kelvinHours, DisplayUnits units) => $"{(units == DisplayUnits.Us ? kelvinHours * 1.8 : kelvinHours):#,0}";

    private static string Limit(FloorUse use, House house) => Show.Temperature(FloorOutput.HighestSurfaceC(use), house.Units);

    private static string Kwh(double joules) => $"{joules / 3.6e6:#,0} kWh";
}
