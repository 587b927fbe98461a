using Spectre.Console.Testing;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Cli.Tests;

public sealed class NewCommandTests : IDisposable
{
    private readonly CommandLine _line = new();

    public void Dispose() => _line.Dispose();

    [Fact]
    public async Task Options_make_a_house_that_check_run_and_board_accept()
    {
        string house = _line.Path("my.house.toml");
        (int exit, string output, string error) = await _line.Run(
            "new", house, "--name", "Mine", "--zone", "Bath: four-wire, 60 m", "--zone", "Living room: two-wire 5 min, 80 m, 75 m",
            "--zone", "Hall: motorised with switch, 90 m", "--contacts", "season,reset,service", "--transformer", "60 VA");
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.Contains("minimum_open = ", output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Pass, (await _line.Run("check", house)).Exit);
        Assert.Equal(ExitCode.Pass, (await _line.Run("board", house)).Exit);
        string script = _line.Path("my.script.toml");
        await File.WriteAllTextAsync(
            script, "title = \"x\"\nduration = \"40 min\"\n[[event]]\nat = \"1 min\"\ncall = \"living-room\"\n", TestContext.Current.CancellationToken);
        Assert.Equal(ExitCode.Pass, (await _line.Run("run", house, script)).Exit);
        Assert.Equal(ExitCode.Pass, (await _line.Run("season", house, "commission")).Exit);
    }

    [Fact]
    public async Task A_file_that_is_there_is_not_replaced_without_being_told()
    {
        string house = _line.Path("my.house.toml");
        await File.WriteAllTextAsync(house, "mine", TestContext.Current.CancellationToken);
        (int exit, _, string error) = await _line.Run("new", house, "--zone", "Bath: four-wire, 60 m");
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("is there already", error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync(house, TestContext.Current.CancellationToken));
        Assert.Equal(ExitCode.Pass, (await _line.Run("new", house, "--zone", "Bath: four-wire, 60 m", "--replace")).Exit);
        Assert.NotNull(HouseFile.Read(house).House);
    }

    [Theory]
    [InlineData("Bath four-wire 60 m", "expected a name, a kind of actuator")]
    [InlineData("Bath: fourwire, 60 m", "kinds are")]
    [InlineData("Bath: four-wire, 60 kg", "\"60 kg\", a mass")]
    public async Task A_zone_that_cannot_be_read_is_told_and_nothing_is_written(string zone, string expected)
    {
        (int exit, string output, string error) = await _line.Run("new", _line.Path("x.toml"), "--zone", zone);
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_line.Folder));
    }

    [Fact]
    public async Task Without_a_person_and_without_zones_it_says_what_is_missing()
    {
        (int exit, _, string error) = await _line.Run("new", _line.Path("x.toml"));
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("No zone", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Questions_are_explained_wrong_answers_asked_again_and_Enter_takes_the_common_value()
    {
        using var console = new TestConsole { Profile = { Width = 80 } };
        console.Interactive();
        string[] answers =
        [
            "By the brook", "", "", "", "much", "75 W", "", "", "", "", "n",
            "Bath", "four-wire", "", "60 m", "Living room", "two-wire", "", "80 kg", "80 m, 75 m", "",
            "", "", "60 VA", "y", "n", "n", "n", "n", "y", "n", "y",
        ];
        foreach (string answer in answers)
            console.Input.PushTextWithEnter(answer);
        using var line = new CommandLine { Person = console };
        string house = line.Path("brook.house.toml");
        (int exit, _, string error) = await line.Run("new", house);
        Assert.Equal((ExitCode.Pass, ""), (exit, error));

        House made = HouseFile.Read(house).House!;
        Assert.Equal("By the brook", made.Name);
        Assert.Equal(75, made.Pump.PowerW);
        Assert.Equal(5, made.Pump.Curve[0].HeadM);
        Assert.Equal(["bath", "living-room"], made.Zones.Select(zone => zone.Name));
        Assert.Equal([60.0], made.Zones[0].Loops.Select(loop => loop.Tube.LengthM));
        Assert.Equal(TimeSpan.FromMinutes(4), made.Zones[1].Actuator.OpeningTime);
        Assert.Equal(["season", "reset"], made.Contacts.Fitted.Select(contact => contact.Kind.Key));
        Assert.True(made.Contacts.Service);
        Assert.Contains("found \"much\"", console.Output, StringComparison.Ordinal);
        Assert.Contains("a mass", console.Output, StringComparison.Ordinal);
        Assert.Contains("Count its wires", console.Output, StringComparison.Ordinal);
    }
}
