using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Houses;

namespace ZoneControl.Bench.Tests.Scripts;

/// <summary>A small sound script for the small sound house.</summary>
internal static class ScriptText
{
    public const string Sound = """
        title = "Sound"
        duration = "1 h"
        [conditions]
        water_temperature = "95 °F"
        plant_room_temperature = "15 °C"
        clock_start = "06:00"
        [[event]]
        at = "5 min"
        call = ["kitchen", "bath"]
        note = "both"
        [[event]]
        at = "1 min"
        fault = "slow"
        times = 3
        zone = "kitchen"
        [[event]]
        at = "30 min"
        season = "lockout"
        [[expect]]
        pump = "off"
        from = "0 s"
        until = "5 min"
        [[expect]]
        alarm = "late"
        zone = "bath"
        is = "clear"
        after = "10 min"
        within = "2 min"
        """;

    public static House House { get; } = HouseText.House(HouseText.Sound);

    public static ScriptReading Read(string text) => ScriptFile.Parse(text, "script.toml", House);

    public static ScriptReading With(string piece, string replacement)
    {
        Assert.Contains(piece, Sound, StringComparison.Ordinal);
        return Read(Sound.Replace(piece, replacement, StringComparison.Ordinal));
    }

    /// <summary>The sound head of a script with these tables after it, which must be sound too.</summary>
    public static Script Script(string tables)
    {
        ScriptReading reading = Read("title = \"t\"\nduration = \"1 h\"\n" + tables);
        Assert.Empty(reading.Mistakes);
        return Assert.IsType<Script>(reading.Script);
    }
}
