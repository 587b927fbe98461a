using System.Text.Json;

namespace ZoneControl.Cli.Tests;

public sealed class WinterTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("zonecontrol-").FullName;

    private static string House => Path.Combine(AppContext.BaseDirectory, "examples", "pottery.house.toml");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static async Task<(int Exit, string Out, string Error)> Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int exit = await App.RunAsync(
            ["winter", .. args], new Streams(output, error, OutIsTerminal: false), TestContext.Current.CancellationToken);
        return (exit, output.ToString(), error.ToString());
    }

    private static async Task<JsonElement> Json(params string[] args)
    {
        (_, string output, string error) = await Run([.. args, "--json"]);
        Assert.Equal("", error);
        return JsonDocument.Parse(output).RootElement;
    }

    [Fact]
    public async Task A_winter_is_told_at_80_columns_and_passes()
    {
        (int exit, string output, string error) = await Run(House, "--days", "20");
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.All(output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.Contains("invented winter, seed 1, 20 days", output, StringComparison.Ordinal);
        Assert.Contains("Throwing", output, StringComparison.Ordinal);
        Assert.Contains("Where the heat went", output, StringComparison.Ordinal);
        Assert.Contains("PASS  The pump never ran with less than its minimum flow.", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wired_straight_it_fails_with_exit_code_1()
    {
        (int exit, string output, _) = await Run(House, "--days", "20", "--controller", "straight");
        Assert.Equal(ExitCode.Fail, exit);
        Assert.Contains("FAIL  The pump ran with less than its minimum flow.", output, StringComparison.Ordinal);
        Assert.DoesNotContain("Side by side", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_holds_both_controllers_and_a_balance_that_closes()
    {
        JsonElement json = await Json(House, "--days", "15", "--seed", "3");
        Assert.Equal(("zonecontrol.winter.1", true), (json.GetProperty("schema").GetString(), json.GetProperty("passed").GetBoolean()));
        JsonElement runs = json.GetProperty("winters")[0].GetProperty("runs");
        Assert.Equal(2, runs.GetArrayLength());
        Assert.Equal(0, runs[0].GetProperty("deadheadS").GetDouble());
        Assert.True(runs[1].GetProperty("deadheadS").GetDouble() > 600);
        Assert.Equal(6, runs[0].GetProperty("rooms").GetArrayLength());
        Assert.InRange(Math.Abs(runs[0].GetProperty("balanceError").GetDouble()), 0, 1e-3);
    }

    [Fact]
    public async Task Long_names_stay_whole_and_units_stand_in_the_heads()
    {
        const string Name = "Hauswirtschaftsraumnebenzimmer";
        string house = Path.Combine(_folder, "long.house.toml");
        await File.WriteAllTextAsync(house, (await File.ReadAllTextAsync(House, TestContext.Current.CancellationToken))
            .Replace("label = \"Glazing room\"", $"label = \"{Name}\"", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        (_, string output, _) = await Run(house, "--days", "2");
        Assert.Matches($"\n  {Name} +20 +[0-9.]+ +[0-9.]+ ", output);
        Assert.Matches("\n  hottest in the pump, °C +[0-9.]+ +[0-9.]+\n", output);
        Assert.Matches("\n  pump's energy, kWh +[0-9]+ +[0-9]+\n", output);
    }

    [Fact]
    public async Task The_report_is_one_page_that_prints_and_says_the_same()
    {
        string file = Path.Combine(_folder, "winter.html");
        (int exit, string output, _) = await Run(House, "--days", "5", "--report", file);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.EndsWith($"Written to {file}\n", output, StringComparison.Ordinal);
        string html = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        foreach (string said in (string[])["A house through a winter", "Glazing room", "Where the heat went", "PASS", "runs of the heat source"])
            Assert.Contains(said, html, StringComparison.Ordinal);
        Assert.DoesNotContain("src=", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Seeds_are_winters_of_their_own_and_many_are_told_as_a_range()
    {
        string one = (await Json(House, "--days", "10", "--seed", "5")).ToString();
        Assert.Equal(one, (await Json(House, "--days", "10", "--seed", "5")).ToString());
        JsonElement three = await Json(House, "--days", "10", "--seed", "4", "--winters", "3");
        Assert.Equal(3, three.GetProperty("winters").GetArrayLength());
        Assert.Equal(
            JsonDocument.Parse(one).RootElement.GetProperty("winters")[0].ToString(), three.GetProperty("winters")[1].ToString());
        (int exit, string output, _) = await Run(House, "--days", "10", "--winters", "3");
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Contains(" .. ", output, StringComparison.Ordinal);
        Assert.Contains("in any of 3 winters", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_weather_file_takes_the_invented_winters_place_and_units_can_be_chosen()
    {
        string file = Path.Combine(_folder, "w.csv");
        await File.WriteAllTextAsync(
            file, "outdoor_c\n" + string.Concat(Enumerable.Repeat("-4\n", 240)), TestContext.Current.CancellationToken);
        (int exit, string output, string error) = await Run(House, "--weather", file, "--days", "10", "--units", "us");
        Assert.Equal((ExitCode.Pass, ""), (exit, error));
        Assert.Contains("w.csv, 10 days, mean 25 °F, coldest 25 °F", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--days 0", "--days: found 0, expected 1 to 3660")]
    [InlineData("--winters 1001", "--winters: found 1001, expected 1 to 1000")]
    [InlineData("--units metric", "There is no system of units 'metric'. Known: si, us.")]
    [InlineData("--controller librari", "There is no controller 'librari'. Did you mean 'library'?")]
    [InlineData("--seed 1 --weather x", "--weather is one winter as it was")]
    [InlineData("--weather missing.csv", "missing.csv: found no such file, expected a weather file")]
    [InlineData("--sead 1", "There is no option '--sead'. Did you mean '--seed'?")]
    public async Task What_cannot_be_used_is_said_in_words_with_exit_code_2(string options, string message)
    {
        (int exit, string output, string error) = await Run([House, .. options.Split(' ')]);
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(message, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mistakes_of_a_weather_file_come_with_their_lines()
    {
        string file = Path.Combine(_folder, "bad.csv");
        await File.WriteAllTextAsync(file, "outdoor_c\n4\nwarm\n200\n", TestContext.Current.CancellationToken);
        (int exit, _, string error) = await Run(House, "--weather", file, "--days", "1");
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("bad.csv:3: outdoor_c: found \"warm\"", error, StringComparison.Ordinal);
        Assert.Contains("bad.csv:4: outdoor_c: found 200 °C", error, StringComparison.Ordinal);
        Assert.EndsWith("2 mistakes; nothing was run.\n", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stopped_it_ends_with_exit_code_130()
    {
        using var stop = new CancellationTokenSource();
        await stop.CancelAsync();
        using var output = new StringWriter();
        using var error = new StringWriter();
        int exit = await App.RunAsync(["winter", House], new Streams(output, error, false), stop.Token);
        Assert.Equal((ExitCode.Cancelled, ""), (exit, output.ToString()));
    }
}
