using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Tests.Houses;

/// <summary>A small sound house file, and ways to spoil it.</summary>
internal static class HouseText
{
    public const string Sound = """
        name = "Sound"
        [pump]
        curve = [["0 L/min", "5 m"], ["20 L/min", "4 m"], ["40 L/min", "0 m"]]
        power = "60 W"
        minimum_flow = "5 L/min"
        [mains]
        length = "10 m"
        inside = "26 mm"
        [[manifold]]
        name = "main"
        [every_loop]
        tube = "16x2 mm"
        [[actuator]]
        name = "slow"
        kind = "two-wire"
        opening_time = "4 min"
        [[actuator]]
        name = "told"
        kind = "four-wire"
        opening_time = "3 min"
        [[zone]]
        name = "kitchen"
        actuator = "slow"
        loops = [{ length = "80 m" }, { length = "70 m" }]
        [[zone]]
        name = "bath"
        actuator = "told"
        loops = [{ length = "60 m" }]
        [controller]
        minimum_open = 2
        [contacts]
        season = true
        """;

    public static HouseReading Read(string text) => HouseFile.Parse(text, "house.toml");

    /// <summary>The sound house with one piece of text replaced.</summary>
    public static HouseReading With(string piece, string replacement)
    {
        Assert.Contains(piece, Sound, StringComparison.Ordinal);
        return Read(Sound.Replace(piece, replacement, StringComparison.Ordinal));
    }

    public static House House(string text)
    {
        HouseReading reading = Read(text);
        Assert.Empty(reading.Mistakes);
        return Assert.IsType<House>(reading.House);
    }

    /// <summary>The only mistake, which refuses the file.</summary>
    public static string Refusal(HouseReading reading)
    {
        FileMistake mistake = Assert.Single(reading.Mistakes);
        Assert.True(mistake.IsError);
        Assert.Null(reading.House);
        return mistake.ToString();
    }

    /// <summary>The only mistake, which warns of the file but lets it be used.</summary>
    public static string Warning(HouseReading reading)
    {
        FileMistake mistake = Assert.Single(reading.Mistakes);
        Assert.False(mistake.IsError);
        Assert.NotNull(reading.House);
        return mistake.ToString();
    }
}
