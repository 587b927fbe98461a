using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using static Microsoft.Playwright.Assertions;

namespace ZoneControl.Browser.Tests;

/// <summary>What people do on the page, in a real browser.</summary>
public class PeopleTests(Served served)
{
    [Fact]
    public async Task The_first_lesson_can_be_finished_without_reading_anything_else()
    {
        IPage page = await served.OpenAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Take the first lesson." }).ClickAsync();
        await page.Part("lessons").GetByRole(AriaRole.Link).First.ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Why two-wire valves fool the pump");

        await page.Part("choice-0").CheckAsync();
        await page.Part("guess").ClickAsync();
        await page.SpeedAsync(0);
        for (int halt = 0; halt < 3; halt++)
        {
            await page.Part("run").ClickAsync();
            await Expect(page.Part("note")).ToBeVisibleAsync();
            await Served.PictureAsync(page, $"lesson-1-halt-{halt + 1}");
        }

        await page.Part("run").ClickAsync();
        await page.SaysAsync("explanation", "You guessed right.");
        Assert.Equal(["0 s", "1 min 6 s"], await page.Part("deadhead").AllTextContentsAsync());
        await page.GetByRole(AriaRole.Link, new() { Name = "All lessons" }).ClickAsync();
        await page.SaysAsync("mark-01-two-wire-valves", "done, guessed right");

        // Progress is the browser's: it is there after a new start of the page.
        await page.ReloadAsync();
        await page.SaysAsync("mark-01-two-wire-valves", "done, guessed right");
    }

    [Fact]
    public async Task A_broken_end_switch_is_told_with_its_reason_and_its_causes()
    {
        IPage page = await OpenPotteryAsync();
        await page.Part("fault-bath").SelectOptionAsync("never");
        await page.SpeedAsync(0);
        await page.Part("call-bath").ClickAsync();
        await page.SaysAsync("reason", "nobody asks"); // the call is not accepted before its debounce
        await page.Part("step").ClickAsync();
        await page.SaysAsync("reason", "Held, season lockout."); // so soon after power-up its season switch is not accepted either
        await page.Part("step").ClickAsync();
        await page.SaysAsync("reason", "Held, valves opening.");
        await Expect(page.Part("conditions").Locator(".first-unmet")).ToContainTextAsync("enough valves proven open");
        await Expect(page.Part("conditions").Locator(".first-unmet")).ToContainTextAsync("left");

        for (int step = 0; step < 30 && !await page.Part("alarms").IsVisibleAsync(); step++)
        {
            await page.Part("step").ClickAsync();
            await page.WaitForTimeoutAsync(100);
        }

        await page.SaysAsync("alarms", "Bath: valve late");
        await page.SaysAsync("alarms", "broken end switch or its wire");
        await Served.PictureAsync(page, "broken-switch");
    }

    [Fact]
    public async Task A_broken_house_is_refused_with_each_mistake_at_its_line()
    {
        IPage page = await served.OpenAsync("/files");
        await page.Part("house-text").FillAsync("name = \"Shed\"\nunits = \"imperial\"\n\n[pump]\ncurve = 3\n");
        await page.Part("open").ClickAsync();
        await page.SaysAsync("open-answer", "The house has mistakes");
        ILocator list = page.Part("house-mistakes-list");
        await Expect(list.GetByRole(AriaRole.Button, new() { Name = "Line 2" })).ToBeVisibleAsync();
        await Expect(list).ToContainTextAsync("units = \"imperial\"");
        await Expect(list).ToContainTextAsync("curve");
        await list.GetByRole(AriaRole.Button, new() { Name = "Line 5" }).First.ClickAsync();
        Assert.Equal("curve = 3", await page.EvaluateAsync<string>(
            "() => { const t = document.getElementById('house-text'); return t.value.substring(t.selectionStart, t.selectionEnd); }"));
        await Served.PictureAsync(page, "broken-house");
    }

    [Fact]
    public async Task What_was_done_by_hand_is_saved_and_replays_to_the_same_verdict()
    {
        IPage page = await OpenPotteryAsync();
        await page.SpeedAsync(0);
        await page.Part("fault-throwing-room").SelectOptionAsync("stuck");
        await page.Part("call-bath").ClickAsync();
        for (int step = 0; step < 8; step++)
        {
            long before = await page.NowAsync();
            await page.Part("step").ClickAsync();
            await Expect(page.Part("clock")).Not.ToHaveAttributeAsync("data-ms", $"{before}");
        }

        await page.Part("fault-bath").SelectOptionAsync("dead");
        await page.Part("judge").ClickAsync();
        string verdict = await page.Part("verdict").InnerTextAsync();
        IDownload download = await page.RunAndWaitForDownloadAsync(() => page.Part("save").ClickAsync());
        string text = await page.Part("saved").InputValueAsync();
        Assert.Equal(text, await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken));

        // By the command line's own way: read the file, run it, judge it.
        House house = HouseFile.Read(Path.Combine(Served.Root, "simulator", "examples", "pottery.house.toml")).House!;
        ScriptReading reading = ScriptFile.Parse(text, "by-hand.script.toml", house);
        Assert.Empty(reading.Mistakes);
        Run run = Runner.Run(
            house, reading.Script!, settings => new LibraryController(settings), cancel: TestContext.Current.CancellationToken);
        Assert.Equal(3, reading.Script!.Events.Count);
        Assert.Contains(run.Passed ? "PASS" : "FAIL", verdict, StringComparison.Ordinal);

        // And on the page itself.
        await page.GotoAsync(served.Address + "/files");
        await page.Part("house-list").SelectOptionAsync("examples/pottery.house.toml");
        await page.Part("script-text").FillAsync(text);
        await page.Part("open").ClickAsync();
        await page.SpeedAsync(0);
        await page.Part("run").ClickAsync();
        await Expect(page.Part("run")).ToHaveTextAsync("At the end");
        await page.Part("judge").ClickAsync();
        Assert.Equal(verdict, await page.Part("verdict").InnerTextAsync());
    }

    [Fact]
    public async Task The_keyboard_alone_turns_a_thermostat_runs_and_reads_a_moment()
    {
        IPage page = await served.OpenAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Skip to the content" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator("main")).ToBeFocusedAsync();
        await TabToAsync(page, "call-shop");
        await page.Keyboard.PressAsync("Space");
        await Expect(page.Part("call-shop")).ToHaveAttributeAsync("aria-checked", "true");

        await page.Keyboard.PressAsync("Control+Home");
        await page.EvaluateAsync("() => document.activeElement.blur()");
        await TabToAsync(page, "run");
        long before = await page.NowAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Part("run")).ToHaveTextAsync("Pause");
        await Expect(page.Part("clock")).Not.ToHaveAttributeAsync("data-ms", $"{before}");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Part("run")).ToHaveTextAsync("Run");

        await page.Locator(".lanes-area").FocusAsync();
        await page.Keyboard.PressAsync("End");
        await page.Keyboard.PressAsync("ArrowLeft");
        await page.SaysAsync("moment", "in its casing");
    }

    [Fact]
    public async Task Two_sessions_know_nothing_of_each_other()
    {
        IPage one = await served.OpenAsync();
        IPage two = await served.OpenAsync();
        await one.Part("call-bath").ClickAsync();
        await Expect(one.Part("call-bath")).ToHaveAttributeAsync("aria-checked", "true");
        await one.Part("run").ClickAsync();
        await Expect(one.Part("clock")).Not.ToHaveAttributeAsync("data-ms", "0");
        await two.WaitForTimeoutAsync(600);

        Assert.Equal(0, await two.NowAsync());
        await Expect(two.Part("call-bath")).ToHaveAttributeAsync("aria-checked", "false");
        await Expect(two.Part("log")).ToBeHiddenAsync();
    }

    [Fact]
    public async Task Going_back_shows_what_was_shown_then()
    {
        IPage page = await served.OpenAsync();
        await page.SpeedAsync(300);
        for (int step = 0; step < 3; step++)
        {
            long before = await page.NowAsync();
            await page.Part("step").ClickAsync();
            await Expect(page.Part("clock")).Not.ToHaveAttributeAsync("data-ms", $"{before}");
        }

        long then = await page.NowAsync();
        string reason = await page.Part("reason").InnerTextAsync();
        await page.Part("step").ClickAsync();
        await Expect(page.Part("clock")).Not.ToHaveAttributeAsync("data-ms", $"{then}");
        await page.Part("back").ClickAsync();
        await Expect(page.Part("clock")).ToHaveAttributeAsync("data-ms", $"{then}");
        Assert.Equal(reason, await page.Part("reason").InnerTextAsync());
    }

    [Fact]
    public async Task Side_by_side_the_plain_house_deadheads_and_the_guarded_one_does_not()
    {
        IPage page = await served.OpenAsync("/side-by-side");
        await page.SpeedAsync(0);
        await page.Part("call-shop").ClickAsync();
        for (int step = 0; step < 12; step++)
        {
            long before = await page.NowAsync();
            await page.Part("step").ClickAsync();
            await Expect(page.Part("clock")).Not.ToHaveAttributeAsync("data-ms", $"{before}");
        }

        IReadOnlyList<string> deadhead = await page.Part("deadhead").AllTextContentsAsync();
        Assert.Equal(2, deadhead.Count);
        Assert.Equal("0 s", deadhead[0]);
        Assert.NotEqual("0 s", deadhead[1]);
        await Served.PictureAsync(page, "side-by-side");
    }

    private async Task<IPage> OpenPotteryAsync()
    {
        IPage page = await served.OpenAsync("/files");
        await page.Part("house-list").SelectOptionAsync("examples/pottery.house.toml");
        await Expect(page.Part("house-text")).ToHaveValueAsync(new Regex("The pottery"));
        await page.Part("open").ClickAsync();
        await page.WaitForSelectorAsync("[data-test='run']");
        return page;
    }

    private static async Task TabToAsync(IPage page, string part)
    {
        for (int i = 0; i < 120; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<string?>("() => document.activeElement?.dataset?.test ?? null") == part)
                return;
        }

        Assert.Fail($"120 Tabs do not reach {part}.");
    }
}
