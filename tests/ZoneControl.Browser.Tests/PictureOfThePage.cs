using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace ZoneControl.Browser.Tests;

/// <summary>The README's picture of the page: side by side, while one pump is held and the other deadheads.</summary>
public class PictureOfThePage(Served served)
{
    [Fact]
    public async Task Shows_one_pump_held_and_the_other_against_shut_valves()
    {
        IPage page = await served.OpenAsync("/side-by-side", new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = 1500, Height = 1000 },
            ColorScheme = ColorScheme.Light,
        });
        await page.Part("call-throwing-room").ClickAsync();
        await page.SpeedAsync(10);
        await page.Part("run").ClickAsync();
        await Expect(page.Locator(".circuit .deadhead")).ToHaveCountAsync(1);
        await page.WaitForTimeoutAsync(3000);
        await page.Part("run").ClickAsync();
        await page.SaysAsync("reason", "Held");

        string file = Environment.GetEnvironmentVariable("PICTURE_FILE")
            ?? Path.Combine(Directory.CreateDirectory(Path.Combine(Served.Root, "artifacts", "screens")).FullName, "page.png");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = file });
        Assert.True(new FileInfo(file).Length > 20_000);
    }
}
