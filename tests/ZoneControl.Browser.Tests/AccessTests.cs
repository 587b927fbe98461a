using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace ZoneControl.Browser.Tests;

/// <summary>The page as people see it who do not see it as most do: axe-core's rules, widths, grounds, no motion.</summary>
public class AccessTests(Served served)
{
    public static TheoryData<string, string> Pages
    {
        get
        {
            var pages = new TheoryData<string, string>();
            foreach (string page in (string[])["/", "/side-by-side", "/lessons", "/lessons/01-two-wire-valves", "/lessons/sheet", "/files", "/compare", "/prove", "/rules", "/nowhere-at-all"])
            {
                pages.Add(page, "light");
                if (page is "/side-by-side" or "/files" or "/lessons/01-two-wire-valves")
                    pages.Add(page, "dark"); // between them every part of the page, on the other ground
            }

            return pages;
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Axe_finds_nothing_serious(string where, string ground)
    {
        string axe = Axe();
        IPage page = await served.OpenAsync(where, Options(1280, ground));
        await Served.PictureAsync(page, $"axe-{ground}-{where.Trim('/').Replace('/', '-')}");
        await page.EvaluateAsync(axe);
        string[] found = await page.EvaluateAsync<string[]>(
            """
            async () => (await axe.run()).violations
              .filter(v => v.impact === 'serious' || v.impact === 'critical')
              .map(v => v.id + ': ' + v.nodes.map(n => n.target.join(' ')).join(', '))
            """);
        Assert.Empty(found);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(768)]
    [InlineData(2560)]
    public async Task No_page_is_wider_than_its_window(int width)
    {
        foreach (string where in (string[])["/", "/side-by-side", "/lessons", "/files", "/compare", "/prove", "/rules"])
        {
            IPage page = await served.OpenAsync(where, Options(width, "light"));
            await Served.PictureAsync(page, $"width-{width}-{where.Trim('/')}");
            int over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(over <= 0, $"{where} is {over} px wider than its window of {width} px.");
            await page.Context.CloseAsync();
        }
    }

    [Fact]
    public async Task Water_moves_faster_where_more_flows_and_stands_still_where_no_motion_is_wanted()
    {
        IPage page = await served.OpenAsync();
        await page.SpeedAsync(300);
        await page.Part("run").ClickAsync();
        await Expect(page.Locator(".zone-column .pipe-flow")).ToHaveCountAsync(2);
        await page.Part("run").ClickAsync();
        Assert.True(await MovesAsync(page));

        // Speed is in proportion to the flow that is written beside the pipe.
        double[] each = await page.EvaluateAsync<double[]>(
            """
            () => [...document.querySelectorAll('.zone-column')].filter(zone => zone.querySelector('.pipe-flow')).map(zone =>
              Number(zone.querySelector('.pipe-flow').dataset.flow)
              / Math.max(...[...zone.querySelectorAll('text')].map(text => /^[0-9.]+$/.test(text.textContent) ? Number(text.textContent) : 0)))
            """);
        Assert.All(each, speedOfOne => Assert.Equal(each[0], speedOfOne, each[0] * 0.02));

        await page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        await page.WaitForTimeoutAsync(100);
        Assert.False(await MovesAsync(page));
    }

    private static async Task<bool> MovesAsync(IPage page)
    {
        const string Place = "() => document.querySelector('.pipe-flow').style.strokeDashoffset";
        string before = await page.EvaluateAsync<string>(Place);
        await page.WaitForTimeoutAsync(300);
        return before != await page.EvaluateAsync<string>(Place);
    }

    private static BrowserNewContextOptions Options(int width, string ground) => new()
    {
        ViewportSize = new ViewportSize { Width = width, Height = 900 },
        ColorScheme = ground == "dark" ? ColorScheme.Dark : ColorScheme.Light,
    };

    private static string Axe()
    {
        string? home = Environment.GetEnvironmentVariable("AXE_HOME");
        string file = Path.Combine(home ?? "", "node_modules", "axe-core", "axe.min.js");
        Assert.SkipWhen(home is null || !File.Exists(file), "AXE_HOME names no folder with axe-core in it (npm install axe-core).");
        return File.ReadAllText(file);
    }
}
