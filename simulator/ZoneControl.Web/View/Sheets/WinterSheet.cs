using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Winters;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Web.View.Sheets;

/// <summary>What whole winters added up to, as a document. Each winter lists its controllers, the judged one first.</summary>
public static class WinterSheet
{
    /// <summary>The document.</summary>
    /// <param name="winters">The winters; at least one.</param>
    public static SheetView From(IReadOnlyList<IReadOnlyList<SeasonResult>> winters)
    {
        ArgumentNullException.ThrowIfNull(winters);
        SeasonResult judged = winters[0][0];
        House house = judged.House;
        var sections = new List<SheetSection>
        {
            new(winters[0].Count > 1 ? "Side by side: the same winter under each" : "The winter in figures",
                [Sums(winters, house.Units), Picture(winters), Meanings(house.Units)]),
        };
        if (winters.Count == 1)
        {
            sections.Add(new SheetSection("Rooms", [Rooms(judged), Floors(judged)]));
            sections.Add(new SheetSection("Where the heat went", [.. Heat(judged).Select(words => new SheetText(words))]));
        }

        string more = winters.Count > 1 ? $" And {winters.Count - 1} more: figures are from lowest to highest." : "";
        return new SheetView("winter", "A house through a winter", CheckSheet.HouseLine(house),
            $"Weather: {judged.WeatherName}, {judged.Days} days, mean {Show.Temperature(judged.MeanOutdoorC, house.Units)}, coldest "
            + $"{Show.Temperature(judged.ColdestOutdoorC, house.Units)}.{more} A model of a house: rooms of one temperature, healthy equipment, "
            + "nobody who opens windows. Compare with it; do not promise from it.",
            sections)
        {
            Verdict = Verdict(winters),
        };
    }

    /// <summary>Whether the judged controller never let the pump run with too little water.</summary>
    public static bool Passed(IReadOnlyList<IReadOnlyList<SeasonResult>> winters) => winters.All(winter => winter[0].DeadheadS <= 0);

    private static SheetVerdict Verdict(IReadOnlyList<IReadOnlyList<SeasonResult>> winters)
    {
        int bad = winters.Count(winter => winter[0].DeadheadS > 0);
        string every = winters.Count > 1 ? $" in any of {winters.Count} winters" : "";
        string some = winters.Count > 1 ? $" in {bad} of {winters.Count} winters" : "";
        return Passed(winters)
            ? new SheetVerdict(true, "PASS", $"The pump never ran with less than its minimum flow{every}.")
            : new SheetVerdict(false, "FAIL", $"The pump ran with less than its minimum flow{some}.");
    }

    private static SheetTable Sums(IReadOnlyList<IReadOnlyList<SeasonResult>> winters, DisplayUnits units)
    {
        IReadOnlyList<string> Row(string name, Func<SeasonResult, double> value, Func<double, string> text) =>
            [name, .. Enumerable.Range(0, winters[0].Count).Select(i => Range(winters.Select(winter => value(winter[i])), text))];
        return new SheetTable(
            "Deadhead is the pump on with less than its minimum flow; no flow at all is the part of it with every valve shut",
            [new(""), .. winters[0].Select(one => new SheetColumn(one.ControllerName, true))],
            [
                Row("deadhead in all", one => one.DeadheadS, Quantity.Duration),
                Row("of it with no flow at all", one => one.ShutS, Quantity.Duration),
                Row("times it happened", one => one.DeadheadEvents, Whole),
                Row($"hottest in the pump, {Measured.TemperatureUnitOf(units)}", one => one.HottestTrappedC, value => Measured.TemperatureIn(value, units)),
                Row("pump starts", one => one.PumpStarts, Whole),
                Row("pump ran, h", one => one.PumpRunH, Whole),
                Row("pump's energy, kWh", one => one.PumpEnergyKWh, Whole),
                Row("heat from the source, kWh", one => one.HeatKWh, Whole),
                Row("runs of the heat source", one => one.SourceStarts, Whole),
                Row($"rooms too cold, {DegreeHours(units)}", one => one.UnderKh, value => Degrees(value, units)),
                Row($"rooms too warm, {DegreeHours(units)}", one => one.OverKh, value => Degrees(value, units)),
            ]);
    }

    private static SheetBars Picture(IReadOnlyList<IReadOnlyList<SeasonResult>> winters) => new("Deadhead, the most of any winter",
        [
            .. Enumerable.Range(0, winters[0].Count).Select(i =>
            {
                double most = winters.Max(winter => winter[i].DeadheadS);
                return new SheetBar(winters[0][i].ControllerName, most / 3600, Quantity.Duration(most));
            }),
        ]);

    /// <summary>What counts as too cold or too warm.</summary>
    internal static SheetText Meanings(DisplayUnits units)
    {
        string slack = units == DisplayUnits.Us ? $"{RoomSums.SlackK * 9 / 5:0.#} °F" : $"{RoomSums.SlackK} K";
        return new SheetText($"Too cold and too warm count beyond half the thermostat's differential and {slack}. A room that is 2 degrees off for five hours adds "
            + $"10 {DegreeHours(units)}.");
    }

    private static SheetTable Rooms(SeasonResult season)
    {
        DisplayUnits units = season.House.Units;
        IReadOnlyList<HouseRoom> described = season.House.HeatOrCommon().Rooms;
        return new SheetTable(
            $"Set, the room's lowest and highest, and floor (its surface at its warmest) in {Measured.TemperatureUnitOf(units)}; "
                + $"too cold and too warm in {DegreeHours(units)}; calls: times that the thermostat began to ask",
            [
                new("room"), new("set", true), new("low", true), new("high", true), new("too cold", true), new("too warm", true),
                new("floor", true), new("calls", true),
            ],
            [
                .. season.Rooms.Select((room, i) => (IReadOnlyList<string>)
                [
                    season.House.Zones[i].Label, Measured.TemperatureIn(described[i].SetC.Value, units), Measured.TemperatureIn(room.ColdestC, units),
                    Measured.TemperatureIn(room.WarmestC, units), Degrees(room.UnderKh, units), Degrees(room.OverKh, units),
                    Measured.TemperatureIn(room.WarmestFloorC, units), Whole(room.Calls),
                ]),
            ]);
    }

    private static SheetBlock Floors(SeasonResult season)
    {
        DisplayUnits units = season.House.Units;
        string[] tooWarm =
        [
            .. Enumerable.Range(0, season.Rooms.Count)
                .Where(i => season.Rooms[i].FloorTooWarmH > 0)
                .Select(i => $"{season.House.Zones[i].Label} for {season.Rooms[i].FloorTooWarmH:#,0.#} h"),
        ];
        string Limit(FloorUse use) => Show.Temperature(FloorOutput.HighestSurfaceC(use), units);
        return tooWarm.Length == 0
            ? new SheetText($"No floor's surface was warmer than EN 1264-2 allows for ({Limit(FloorUse.Occupied)} where people stay, {Limit(FloorUse.Edge)} at the edge, "
                + $"{Limit(FloorUse.Bath)} in a bath).")
            : new SheetCaution($"Floor too warm by EN 1264-2: {string.Join(", ", tooWarm)}.");
    }

    private static IEnumerable<string> Heat(SeasonResult season)
    {
        HeatSums heat = season.Heat;
        yield return $"In: {Kwh(heat.SourceJ)} from the source, {Kwh(heat.PumpJ)} from the pump, {Kwh(heat.GainsJ)} from people, lamps and sun.";
        yield return $"Out: {Kwh(heat.OutdoorsJ)} outdoors, {Kwh(heat.BelowJ)} below the floors, {Kwh(heat.PlantRoomJ)} into the plant room. "
            + $"Stored more than at the start: {Kwh(heat.StoredJ)}.";
        double off = Math.Abs(heat.BalanceError);
        yield return off < 1e-6
            ? "What came in less what went out is what is stored, to within a millionth of the heat."
            : $"What came in less what went out differs from what is stored by {off:0.0000 %} of the heat.";
    }

    private static string Range(IEnumerable<double> values, Func<double, string> text)
    {
        double[] all = [.. values];
        (string low, string high) = (text(all.Min()), text(all.Max()));
        return low == high ? low : $"{low} .. {high}";
    }

    internal static string DegreeHours(DisplayUnits units) => units == DisplayUnits.Us ? "°F·h" : "K·h";

    private static string Degrees(double kelvinHours, DisplayUnits units) => Whole(units == DisplayUnits.Us ? kelvinHours * 9 / 5 : kelvinHours);

    private static string Whole(double value) => value.ToString("#,0", System.Globalization.CultureInfo.InvariantCulture);

    // With a decimal, so that a reader's sum comes out.
    private static string Kwh(double joules) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{joules / 3.6e6:#,0.0} kWh");
}
