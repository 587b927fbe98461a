using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Tests.Files;

public class QuantityTests
{
    // Expected values are the units' definitions: foot 0.3048 m, US gallon 3.785411784 L, psi 6,894.757 Pa,
    // BTU 1,055.056 J (NIST SP 811, from memory).
    public static TheoryData<string, string, double> Known => new()
    {
        { "length", "250 ft", 76.2 },
        { "length", "80 m", 80 },
        { "length", "0.485 in", 0.012319 },
        { "length", "12mm", 0.012 },
        { "flow", "0.6 gpm", 3.785411784e-5 },
        { "flow", "2.5 L/min", 2.5e-3 / 60 },
        { "flow", "1 m3/h", 1.0 / 3600 },
        { "time", "3 min", 180_000 },
        { "time", "1 h 20 min", 4_800_000 },
        { "time", "1h 20min", 4_800_000 },
        { "time", "200 ms", 200 },
        { "time", "0.5 d", 43_200_000 },
        { "pressure", "0.2 bar", 20_000 },
        { "pressure", "1 psi", 6894.757 },
        { "pressure", "10 ft", 29_890.67 },
        { "pressure", "1 m", 9806.65 },
        { "head", "10 ft", 3.048 },
        { "temperature", "20 °C", 20 },
        { "temperature", "20 C", 20 },
        { "temperature", "68 °F", 20 },
        { "temperature", "-4 F", -20 },
        { "volume", "0.35 L", 0.35e-3 },
        { "mass", "3.3 lb", 1.496855 },
        { "heat loss", "1 W/K", 1 },
        { "heat loss", "1 BTU/h/F", 0.5275279 },
        { "voltage", "24 V", 24 },
        { "share", "85 %", 0.85 },
        { "power", "0.06 kW", 60 },
    };

    [Theory]
    [MemberData(nameof(Known))]
    public void Quantities_of_the_trade_are_read_in_the_dimensions_own_unit(string dimension, string text, double expected)
    {
        QuantityReading reading = Quantities.Read(text, Of(dimension));
        Assert.NotNull(reading.Value);
        Assert.Equal(expected, reading.Value.Value, Math.Abs(expected) * 1e-6);
    }

    [Theory]
    [InlineData("length", "80 bananas", "\"80 bananas\"", "unknown unit")]
    [InlineData("length", "80", "\"80\" without a unit", "")]
    [InlineData("length", "80 kPa", "\"80 kPa\", a pressure", "")]
    [InlineData("length", "80 M", "\"80 M\"", "did you mean \"m\"?")]
    [InlineData("length", "1,5 m", "\"1,5 m\"", "the decimal sign is a point")]
    [InlineData("length", "5 ft 3 in", "\"5 ft 3 in\"", "one number and one unit")]
    [InlineData("length", "", "\"\"", "")]
    [InlineData("length", "long", "\"long\"", "")]
    [InlineData("length", "NaN m", "\"NaN m\"", "")]
    [InlineData("time", "1 h 20", "\"1 h 20\" without a unit", "")]
    [InlineData("time", "1 h -20 min", "\"1 h -20 min\"", "one number and one unit")]
    [InlineData("flow", "0.6 gmp", "\"0.6 gmp\"", "did you mean \"gpm\"?")]
    [InlineData("temperature", "20 m", "\"20 m\", a length", "")]
    public void What_is_no_quantity_is_told_apart(string dimension, string text, string found, string hint)
    {
        QuantityReading reading = Quantities.Read(text, Of(dimension));
        Assert.Null(reading.Value);
        Assert.Equal(found, reading.Found);
        Assert.StartsWith(hint, reading.Hint, StringComparison.Ordinal);
        Assert.Equal(hint.Length == 0, reading.Hint.Length == 0);
    }

    [Theory]
    [InlineData("250 ft")]
    [InlineData("80 m")]
    [InlineData("75.5 m")]
    public void A_round_length_is_shown_as_it_was_written(string text) =>
        Assert.Equal(text, Show.Length(Quantities.Read(text, Dimension.Length).Value!.Value, Units(text, "ft")));

    [Theory]
    [InlineData("0.6 gpm")]
    [InlineData("2.5 L/min")]
    public void A_round_flow_is_shown_as_it_was_written(string text) =>
        Assert.Equal(text, Show.Flow(Quantities.Read(text, Dimension.Flow).Value!.Value, Units(text, "gpm")));

    [Theory]
    [InlineData("104 °F")]
    [InlineData("38.5 °C")]
    public void A_round_temperature_is_shown_as_it_was_written(string text) =>
        Assert.Equal(text, Show.Temperature(Quantities.Read(text, Dimension.Temperature).Value!.Value, Units(text, "°F")));

    [Theory]
    [InlineData("3 psi")]
    [InlineData("0.25 bar")]
    public void A_round_pressure_is_shown_as_it_was_written(string text) =>
        Assert.Equal(text, Show.Pressure(Quantities.Read(text, Dimension.Pressure).Value!.Value, Units(text, "psi")));

    [Theory]
    [InlineData("lenght", "length")]
    [InlineData("actuator", "actuator")]
    [InlineData("Kithcen", "kitchen")]
    [InlineData("xyz", null)]
    [InlineData("", null)]
    public void The_nearest_word_is_found_by_few_edits(string word, string? expected) =>
        Assert.Equal(expected, NearestWord.Find(word, ["length", "kitchen", "actuator"]));

    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("", "abc", 3)]
    [InlineData("ab", "ba", 1)]
    [InlineData("same", "SAME", 0)]
    public void Edits_count_inserted_deleted_changed_and_swapped_letters(string left, string right, int edits) =>
        Assert.Equal(edits, NearestWord.Edits(left, right));

    private static Dimension Of(string name) => Dimension.All.Single(dimension => dimension.Name == "a " + name);

    private static DisplayUnits Units(string text, string usWord) =>
        text.EndsWith(usWord, StringComparison.Ordinal) ? DisplayUnits.Us : DisplayUnits.Si;

    [Theory]
    [InlineData("5 minutes", "did you mean \"min\"?")]
    [InlineData("2 Hours", "did you mean \"h\"?")]
    [InlineData("30 sec", "did you mean \"s\"?")]
    public void A_unit_written_out_is_answered_with_its_short_word(string text, string hint) =>
        Assert.Equal(hint, Quantities.Read(text, Dimension.Time).Hint);

    [Fact]
    public void A_quantity_copied_from_a_printed_page_is_read() =>
        Assert.Equal(225_000, Quantities.Read("3\u00A0min\u00A045\u00A0s", Dimension.Time).Value);
}
