using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace ZoneControl.Browser.Tests;

/// <summary>Proofs and comparisons from the page: progress, stopping, and a found counterexample on the bench.</summary>
public class LongWorkTests(Served served)
{
    [Fact]
    public async Task A_counterexample_that_was_found_plays_on_the_bench_and_breaks_its_rule_there()
    {
        IPage page = await OpenTwoRoomsAsync("/prove");
        await page.Part("without").SelectOptionAsync("Proof");
        await page.Part("seconds").SelectOptionAsync("60");
        await page.Part("prove").ClickAsync();
        await Expect(page.Part("proof")).ToContainTextAsync("BROKEN", new() { Timeout = 90_000 });
        await Served.PictureAsync(page, "counterexample");
        await page.Part("play").ClickAsync();
        await page.SpeedAsync(0);
        await page.Part("run").ClickAsync();
        await Expect(page.Part("run")).ToHaveTextAsync("At the end", new() { Timeout = 30_000 });
        await page.Part("judge").ClickAsync();
        await page.SaysAsync("verdict", "FAIL");
    }

    [Fact]
    public async Task A_search_can_be_stopped_and_says_how_far_it_came()
    {
        IPage page = await served.OpenAsync("/prove");
        await page.Part("seconds").SelectOptionAsync("300");
        await page.Part("prove").ClickAsync();
        await Expect(page.Part("work")).ToContainTextAsync("states", new() { Timeout = 90_000 });
        await page.Part("stop").ClickAsync();
        await Expect(page.Part("proof")).ToContainTextAsync("EXPLORED", new() { Timeout = 30_000 });
        await page.SaysAsync("proof", "it was stopped");
    }

    [Fact]
    public async Task The_script_on_the_bench_is_compared_under_each_protection()
    {
        IPage page = await OpenTwoRoomsAsync("/compare");
        await page.Part("over").SelectOptionAsync("script");
        await page.Part("compare").ClickAsync();
        await Expect(page.Part("comparison")).ToContainTextAsync("Deadhead", new() { Timeout = 90_000 });
        await Served.PictureAsync(page, "compare");
    }

    private async Task<IPage> OpenTwoRoomsAsync(string where)
    {
        IPage page = await served.OpenAsync("/files");
        await page.Part("house-list").SelectOptionAsync("examples/two-rooms.house.toml");
        await page.Part("script-list").SelectOptionAsync("examples/two-rooms-evening.script.toml");
        await Expect(page.Part("script-text")).Not.ToHaveValueAsync("");
        await page.Part("open").ClickAsync();
        await page.WaitForSelectorAsync("[data-test='run']");
        await page.Locator($"nav a[href='{where.TrimStart('/')}']").ClickAsync();
        await page.WaitForSelectorAsync("main .main-button");
        return page;
    }
}
