using System.Text.Json;

namespace ZoneControl.Cli.Tests;

public sealed class CompareCommandTests : IDisposable
{
    private readonly CommandLine _line = new();

    public void Dispose() => _line.Dispose();

    [Fact]
    public async Task The_same_seed_gives_the_same_bytes_on_screen_in_JSON_and_on_paper()
    {
        string house = _line.Copy("pottery.house.toml");
        string[] args = ["compare", house, "--days", "7", "--seed", "4", "--price", "controller=90", "--price", "bypass=60", "--electricity", "0.30"];
        (int exit, string output, string error) = await _line.Run([.. args, "--report", _line.Path("a.html")]);
        Assert.Equal(ExitCode.Pass, exit);
        Assert.Equal("", error);
        _line.AssertNarrow(output);
        Assert.Contains("is not predicted", output, StringComparison.Ordinal);
        Assert.Contains("10 runs", output, StringComparison.Ordinal);

        Assert.Equal(output.Split('\n')[..^2], (await _line.Run([.. args, "--report", _line.Path("b.html")])).Out.Split('\n')[..^2]);
        Assert.Equal(await File.ReadAllBytesAsync(_line.Path("a.html"), TestContext.Current.CancellationToken),
            await File.ReadAllBytesAsync(_line.Path("b.html"), TestContext.Current.CancellationToken));
        string json = (await _line.Run([.. args, "--json"])).Out;
        Assert.Equal(json, (await _line.Run([.. args, "--json"])).Out);
        using JsonDocument read = JsonDocument.Parse(json);
        JsonElement none = read.RootElement.GetProperty("protections")[0];
        Assert.Equal("no protection", none.GetProperty("name").GetString());
        Assert.True(none.GetProperty("deadheadS").GetDouble() > 0);
        Assert.Equal(4, read.RootElement.GetProperty("seed").GetInt64());
    }

    [Fact]
    public async Task A_week_of_the_owners_script_can_be_compared_instead()
    {
        (int exit, string output, _) = await _line.Run(
            "compare", _line.Copy("two-rooms.house.toml"), "--script", _line.Copy("two-rooms-evening.script.toml"));
        Assert.Equal(ExitCode.Pass, exit);
        _line.AssertNarrow(output);
        Assert.Contains("the script", output, StringComparison.Ordinal);
        Assert.Contains("°F", output, StringComparison.Ordinal);
        Assert.DoesNotContain("The rooms", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--days", "0", "1 to 366")]
    [InlineData("--years", "99", "1 to 50")]
    [InlineData("--price", "contoller=5", "Did you mean 'controller'?")]
    [InlineData("--price", "bypass=dear", "expected a price")]
    [InlineData("--electricity", "-1", "expected a price")]
    [InlineData("--script", "nowhere.toml", "no such file")]
    public async Task Bad_options_get_one_message_and_exit_code_2(string option, string value, string expected)
    {
        (int exit, string output, string error) = await _line.Run("compare", _line.Copy("pottery.house.toml"), $"{option}={value}");
        Assert.Equal((ExitCode.BadInput, ""), (exit, output));
        Assert.Contains(expected, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_script_takes_the_place_of_a_winters_days_and_seed()
    {
        (int exit, _, string error) = await _line.Run("compare", _line.Copy("two-rooms.house.toml"), "--script", "any.toml", "--days", "3");
        Assert.Equal(ExitCode.BadInput, exit);
        Assert.Contains("Give one or the other.", error, StringComparison.Ordinal);
    }
}
