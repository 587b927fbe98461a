using CsCheck;
using ZoneControl.Bench.Winters;

namespace ZoneControl.Bench.Tests.Winters;

public class WeatherFileTests
{
    private const int October = 275;

    [Theory]
    [InlineData("outdoor_c", "-3.5")]
    [InlineData("hour,outdoor_c,wind", "1, -3.5 ,7")]
    [InlineData("outdoor_f", "25.7")]
    [InlineData("\uFEFF\"outdoor_c\"", "\"-3.5\"")]
    public void A_csv_file_gives_its_hours(string heading, string line)
    {
        WeatherReading reading = Csv($"{heading}\n{string.Concat(Enumerable.Repeat(line + "\r\n", 24))}");
        Assert.Empty(reading.Mistakes);
        Assert.Equal((24, "w.csv"), (reading.Weather!.Hours, reading.Weather.Name));
        Assert.Equal(-3.5, reading.Weather.InHour(5), 1e-9);
    }

    [Fact]
    public void Every_mistake_of_a_csv_file_comes_with_its_line()
    {
        string[] lines = ["hour,outdoor_c", .. Enumerable.Range(1, 30).Select(hour => $"{hour},4")];
        (lines[3], lines[7], lines[9], lines[12]) = ("3,warm", "7,4,4", "9,", "12,99");
        Assert.Equal(
        [
            "w.csv:4: outdoor_c: found \"warm\", expected a temperature in °C",
            "w.csv:8: found 3 columns, expected 2 as in the heading",
            "w.csv:10: outdoor_c: found nothing, expected a temperature in °C",
            "w.csv:13: outdoor_c: found 99 °C, expected -90 to 60 °C",
        ], Words(Csv(string.Join('\n', lines))));
    }

    [Theory]
    [InlineData("", "w.csv: found an empty file, expected hourly temperatures")]
    [InlineData("outdor_c\n4", "w.csv:1: found \"outdor_c\", expected a heading with a column \"outdoor_c\" or \"outdoor_f\" (did you mean \"outdoor_c\"?)")]
    [InlineData("outdoor_c\n", "w.csv:1: found no hour at all, expected a line an hour below the heading")]
    [InlineData("outdoor_c\n4\n5\n", "w.csv: found 2 hours, expected at least 24 for 1 days")]
    [InlineData("hour;outdoor_c\n1;4", "w.csv:1: found \"hour;outdoor_c\", expected a heading with a column \"outdoor_c\" or \"outdoor_f\"")]
    public void What_is_no_weather_at_all_is_said_so(string text, string message) => Assert.Equal([message], Words(Csv(text)));

    [Fact]
    public void After_fifty_mistakes_the_rest_is_not_looked_at()
    {
        IReadOnlyList<string> words = Words(Csv("outdoor_c\n" + string.Concat(Enumerable.Repeat("x\n", 5000))));
        Assert.Equal(WeatherFile.MostMistakes + 1, words.Count);
        Assert.Contains("more than 50 mistakes", string.Join('\n', words), StringComparison.Ordinal);
    }

    [Fact]
    public void An_epw_year_is_taken_from_the_first_day_and_goes_round()
    {
        WeatherReading reading = WeatherFile.Parse(new StringReader(Epw(2023, 365)), "town.epw", October, 210);
        Assert.Empty(reading.Mistakes);
        Assert.Equal(210 * 24, reading.Weather!.Hours);

        // The file says a tenth of a degree more each day of its year, from -10 °C; the 1st of October is its 274th day.
        Assert.Equal(-10 + 27.3, reading.Weather.InHour(0), 1e-9);
        Assert.Equal(-10 + 36.4, reading.Weather.InHour((91 * 24) + 23), 1e-9);
        Assert.Equal(-10.0, reading.Weather.InHour(92 * 24), 1e-9);
    }

    [Fact]
    public void Every_mistake_of_an_epw_file_comes_with_its_line()
    {
        string[] lines = Epw(2023, 3).Split('\n');
        lines[10] = lines[10].Replace(",3,60,", ",4,60,", StringComparison.Ordinal); // hour 3 is missing
        lines[20] = lines[20].Replace("-10.0", "99.9", StringComparison.Ordinal);
        lines[30] = "2023,1,1";
        lines[40] = lines[40].Replace("2023,1,2", "2023,13,2", StringComparison.Ordinal);
        Assert.Equal(
        [
            "town.epw:11: hour: found hour 4 after hour 2, expected hour 3, since each line is an hour",
            "town.epw:12: hour: found hour 4 after hour 4, expected hour 5, since each line is an hour",
            "town.epw:21: dry bulb: found 99.9, which stands for a missing value, expected a temperature in °C",
            "town.epw:31: found 3 columns, expected 35 columns, at least 7",
        ], Words(WeatherFile.Parse(new StringReader(string.Join('\n', lines)), "town.epw", 1, 1)).Take(4));
        Assert.Contains("town.epw:41: date: found \"2023,13,2,9\", expected year, month, day and hour 1 to 24",
            Words(WeatherFile.Parse(new StringReader(string.Join('\n', lines)), "town.epw", 1, 1)));
    }

    [Fact]
    public void An_epw_file_that_ends_too_soon_or_lacks_the_day_is_said_so()
    {
        Assert.Equal(["town.epw: found 72 hours, expected at least 96 for 4 days, or a whole year"],
            Words(WeatherFile.Parse(new StringReader(Epw(2023, 3)), "town.epw", 1, 4)));
        Assert.Equal(["town.epw: found no hour of the first day that is wanted, expected a file with 10-01 in it, month and day"],
            Words(WeatherFile.Parse(new StringReader(Epw(2023, 3)), "town.epw", October, 1)));
        Assert.Equal(["town.epw:1: found 1 heading lines and the end of the file, expected 8 heading lines"],
            Words(WeatherFile.Parse(new StringReader("LOCATION,Town"), "town.epw", 1, 1)).Take(1));
    }

    [Fact]
    public void Files_that_cannot_be_read_are_said_so()
    {
        string folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;
        try
        {
            Assert.Contains("no such file", Assert.Single(Words(WeatherFile.Read(Path.Combine(folder, "no.csv"), 1, 1))), StringComparison.Ordinal);
            Assert.Contains("a folder", Assert.Single(Words(WeatherFile.Read(folder, 1, 1))), StringComparison.Ordinal);
            string good = Path.Combine(folder, "good.csv");
            File.WriteAllText(good, "outdoor_c\n" + string.Concat(Enumerable.Repeat("1\n", 24)));
            Assert.Equal(24, WeatherFile.Read(good, 1, 1).Weather!.Hours);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void No_text_whatever_makes_it_fail_otherwise_than_in_words() =>
        Gen.OneOf(
            Gen.String,
            Gen.String.Select(text => "outdoor_c\n" + text),
            Gen.Select(Gen.Int[0, 4000], Gen.Int[0, 4000], Gen.String[0, 8]).Select((at, length, text) =>
            {
                string epw = Epw(2023, 3);
                int from = Math.Min(at, epw.Length);
                return epw[..from] + text + epw[Math.Min(from + length, epw.Length)..];
            })).Sample(text =>
            {
                WeatherReading reading = WeatherFile.Parse(new StringReader(text), "w", 1, 1);
                Assert.Equal(reading.Weather is null, reading.Mistakes.Count > 0);
            }, iter: 3000);

    private static WeatherReading Csv(string text) => WeatherFile.Parse(new StringReader(text), "w.csv", 1, 1);

    private static IReadOnlyList<string> Words(WeatherReading reading)
    {
        Assert.Null(reading.Weather);
        return [.. reading.Mistakes.Select(mistake => mistake.ToString())];
    }

    private static string Epw(int year, int days)
    {
        IEnumerable<string> hours =
            from day in Enumerable.Range(0, days)
            let date = new DateOnly(year, 1, 1).AddDays(day)
            from hour in Enumerable.Range(1, 24)
            select $"{year},{date.Month},{date.Day},{hour},60,?9?9,{-10 + (day / 10.0):0.0},1,2,3";
        return string.Join('\n', ["LOCATION,Town,-,-", .. Enumerable.Range(2, 7).Select(i => $"HEADING {i}"), .. hours]);
    }
}
