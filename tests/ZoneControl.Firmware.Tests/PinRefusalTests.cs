using System.Text;
using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Firmware.Tests;

/// <summary>A pin that cannot do what it is to is refused by name, with the reason, at its line of the house file.</summary>
public class PinRefusalTests
{
    [Theory]
    [InlineData("pump = 12", "pin 12 cannot be pump: it is a strapping pin: its level at reset decides how the chip starts")]
    [InlineData("heat = 34", "pin 34 cannot be heat demand: it is input-only and cannot drive anything")]
    [InlineData("heat = 6", "pin 6 cannot be heat demand: the module's flash memory is on it")]
    [InlineData("heartbeat = 1", "pin 1 cannot be heartbeat: the console is on it, and the chip prints there as it starts")]
    [InlineData("pump = 24", "pin 24 cannot be pump: the module brings out no such pin")]
    [InlineData("valve = { shop = 0 }", "pin 0 cannot be valve z3: it is a strapping pin: its level at reset decides how the chip starts")]
    [InlineData("call = { bath = 11 }", "pin 11 cannot be call z6: the module's flash memory is on it")]
    [InlineData("end_switch = { bath = 3 }", "pin 3 cannot be end switch z6: the console is on it, and the chip prints there as it starts")]
    [InlineData("contact = { season = 37 }", "pin 37 cannot be contact season: the module brings out no such pin")]
    public void A_pin_that_cannot_is_refused_at_its_line(string key, string why)
    {
        HouseReading reading = Examples.WithBoard("pottery", $"[board]\npins = \"direct\"\n[board.pin]\n{key}\n");

        Assert.Null(reading.House);
        Assert.Equal([$"{Lines("pottery") + 4}: {why}"], reading.Mistakes.Select(m => $"{m.Line}: {m.Found}"));
    }

    [Fact]
    public void One_pin_twice_is_refused_and_so_is_every_other_mistake_at_once()
    {
        HouseReading reading = Examples.WithBoard("pottery", "[board.pin]\nheartbeat = 18\npump = 18\nheat = 2\nvalve = { shop = 35 }\n");

        Assert.Equal(
            [
                "pin 18 cannot be pump: it is heartbeat already",
                "pin 2 cannot be heat demand: it is a strapping pin: its level at reset decides how the chip starts",
                "pin 35 cannot be valve z3: it is input-only and cannot drive anything",
            ],
            reading.Mistakes.Select(m => m.Found));
    }

    [Fact]
    public void A_chains_pin_is_looked_at_too()
    {
        HouseReading reading = Examples.WithBoard("toolworks", "[board.pin]\noutput_enable = 15\nread_back = 8\nchain_clock = 39\ninput_data = 36\n");

        Assert.Equal(
            [
                "pin 15 cannot be output enable: it is a strapping pin: its level at reset decides how the chip starts",
                "pin 8 cannot be read-back: the module's flash memory is on it",
                "pin 39 cannot be chain clock: it is input-only and cannot drive anything",
            ],
            reading.Mistakes.Select(m => m.Found));
    }

    [Fact]
    public void A_house_that_direct_pins_do_not_suffice_for_is_told_so()
    {
        HouseReading reading = Examples.WithBoard("toolworks", "[board]\npins = \"direct\"\n");

        Assert.Contains("25 inputs and outputs", Assert.Single(reading.Mistakes).Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[board]\npins = \"chain\"\n", "board.pins", "did you mean \"chains\"?")]
    [InlineData("[board]\nrelay = \"active-low\"\n", "board.relay", "did you mean \"relays\"?")]
    [InlineData("[board.pin]\nvalve = { shoop = 4 }\n", "board.pin.valve.shoop", "did you mean \"shop\"?")]
    [InlineData("[board.pin]\nvalve = { shop = 128 }\n", "board.pin.valve.shop", "")]
    [InlineData("[board.pin]\nchain_clock = 18\n", "board.pin.chain_clock", null)]
    [InlineData("[board]\nac_contacts = [\"call\"]\n", "board.ac_contacts", "did you mean \"calls\"?")]
    [InlineData("[board]\nac_contacts = \"calls\"\n", "board.ac_contacts", "")]
    public void What_is_not_known_is_refused_with_the_nearest_word(string board, string key, string? hint)
    {
        HouseReading reading = Examples.WithBoard("pottery", board);

        Assert.Equal(key, Assert.Single(reading.Mistakes).Key);
        if (hint is not null)
            Assert.Equal(hint, reading.Mistakes[0].Hint);
    }

    [Fact]
    public void Contacts_on_ac_want_a_scan_period_that_the_envelope_fits_in()
    {
        string text = File.ReadAllText(Path.Combine(Examples.Folder, "pottery.house.toml"))
            .Replace("[controller]", "[controller]\nscan_period = \"50 ms\"", StringComparison.Ordinal);

        HouseReading reading = HouseFile.Parse(text + "\n[board]\nac_contacts = [\"calls\"]\n", "x");

        Assert.Contains("scan period of 50 ms", Assert.Single(reading.Mistakes).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_pin_from_0_to_39_is_what_the_notes_say()
    {
        var text = new StringBuilder();
        foreach (string line in File.ReadAllLines(Path.Combine(Examples.Root, "hardware-notes", "pins.md")).Where(line => line.StartsWith("| GPIO ", StringComparison.Ordinal)))
            text.Append(line.Split('|')[1].Trim()).Append(": ").Append(line.Split('|')[2].Trim()).Append(", ").Append(line.Split('|')[3].Trim()).Append('\n');

        Assert.Equal(
            string.Concat(Enumerable.Range(0, 40).Select(pin => $"GPIO {pin}: {Word(pin, false)}, {Word(pin, true)}\n")), text.ToString());

        static string Word(int pin, bool output) => PinGuide.Look(BoardPlan.Esp32, pin, output) switch
        {
            PinGuide.Fine => "yes",
            PinGuide.Missing => "no such pin",
            PinGuide.Strapping => "strapping",
            PinGuide.Flash => "flash",
            PinGuide.Console => "console",
            _ => "input-only",
        };
    }

    [Fact]
    public void The_format_reference_names_every_key_of_the_board()
    {
        string reference = File.ReadAllText(Path.Combine(Examples.Folder, "README.md"));
        string[] keys =
        [
            .. ((string[])["[board]\nx = 1\n", "[board]\npins = \"direct\"\n[board.pin]\nx = 1\n", "[board]\npins = \"chains\"\n[board.pin]\nx = 1\n"])
                .SelectMany(board => Examples.WithBoard("pottery", board).Mistakes).Select(mistake => mistake.Hint)
                .SelectMany(hint => hint["known here: ".Length..].Split(", ")),
        ];

        Assert.InRange(keys.Length, 15, 40);
        Assert.All(keys, key => Assert.Contains($"`{key}`", reference, StringComparison.Ordinal));
    }

    [Fact]
    public void Given_pins_are_used_and_the_rest_kept_clear_of_them()
    {
        House house = Examples.WithBoard("pottery", "[board.pin]\npump = 25\ncall = { bath = 19 }\n").House!;

        BoardPlan plan = PinPlanner.Of(house);

        Assert.Equal(25, plan.OutputPlaces[Array.IndexOf(plan.OutputRoles, Role.Of(Role.Pump, 0))]);
        Assert.Equal(19, plan.InputPlaces[Array.IndexOf(plan.InputRoles, Role.Of(Role.Call, 5))]);
        Assert.Equal(0, PlanCheck.Of(plan).Count);
    }

    private static int Lines(string house) => File.ReadAllText(Path.Combine(Examples.Folder, house + ".house.toml")).Count(c => c == '\n') + 1;
}
