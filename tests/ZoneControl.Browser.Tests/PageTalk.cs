using System.Globalization;
using Microsoft.Playwright;

namespace ZoneControl.Browser.Tests;

/// <summary>What tests do and read on the page, in the page's own words.</summary>
internal static class PageTalk
{
    /// <summary>A part of the page by its test name.</summary>
    public static ILocator Part(this IPage page, string name) => page.Locator($"[data-test='{name}']");

    /// <summary>Bench time, ms.</summary>
    public static async Task<long> NowAsync(this IPage page) =>
        long.Parse((await page.Part("clock").GetAttributeAsync("data-ms"))!, CultureInfo.InvariantCulture);

    /// <summary>Chooses a speed; 0 for as fast as it goes.</summary>
    public static Task SpeedAsync(this IPage page, int speed) =>
        page.Part("speed").SelectOptionAsync(speed.ToString(CultureInfo.InvariantCulture));

    /// <summary>Waits until a part says something.</summary>
    public static Task SaysAsync(this IPage page, string part, string text) =>
        Assertions.Expect(page.Part(part)).ToContainTextAsync(text, new() { Timeout = 20_000 });
}
