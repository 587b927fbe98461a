using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(ZoneControl.Browser.Tests.Served))]

namespace ZoneControl.Browser.Tests;

/// <summary>The real program serving the page, and a real browser; both started once for all tests.</summary>
public sealed partial class Served : IAsyncLifetime
{
    private static readonly string[] _browsers = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private readonly StringBuilder _said = new();
    private Process? _program;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Where the page is.</summary>
    public string Address { get; private set; } = "";

    /// <summary>The folder given to the page.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("zonecontrol-page-").FullName;

    /// <summary>Why there is no browser to test with; null when there is one.</summary>
    public string? NoBrowser { get; private set; }

    /// <summary>Root of the source tree.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The built program.</summary>
    public static string Program { get; } = Path.Combine(
        Root, "simulator", "ZoneControl.Cli", "bin", Configuration, "net10.0", "zonecontrol.dll");

    private static string Configuration => AppContext.BaseDirectory.Contains("Release", StringComparison.Ordinal) ? "Release" : "Debug";

    public async ValueTask InitializeAsync()
    {
        string? chromium = _browsers.Prepend(Environment.GetEnvironmentVariable("CHROMIUM") ?? "").FirstOrDefault(File.Exists);
        if (chromium is null)
        {
            NoBrowser = "No Chromium is installed; its package is called chromium, and CHROMIUM may name another place.";
            return;
        }

        (_program, Address) = await StartAsync(["serve", "--port", "0", "--folder", Folder], _said);
        _playwright = await Playwright.CreateAsync();
        // A busy machine is slow, not wrong.
        Assertions.SetDefaultExpectTimeout(30_000);
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = chromium,
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                "--disable-component-update", "--disable-sync",
            ],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
        if (_program is { HasExited: false } program)
        {
            program.Kill(entireProcessTree: true);
            await program.WaitForExitAsync();
        }

        _program?.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>A page in a browser profile of its own, opened at an address of the program.</summary>
    public async Task<IPage> OpenAsync(string where = "/", BrowserNewContextOptions? options = null)
    {
        Assert.SkipWhen(NoBrowser is not null, NoBrowser ?? "");
        IBrowserContext context = await _browser!.NewContextAsync(options ?? new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = 1280, Height = 900 },
        });
        context.SetDefaultTimeout(20_000);
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(Address + where);
        await page.WaitForSelectorAsync("h1");
        return page;
    }

    /// <summary>Keeps a picture of the page in artifacts/screens, which is not part of the source.</summary>
    public static async Task PictureAsync(IPage page, string name)
    {
        string folder = Path.Combine(Root, "artifacts", "screens");
        Directory.CreateDirectory(folder);
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, name + ".png"), FullPage = true });
    }

    /// <summary>Starts the program and waits until it says where its page is.</summary>
    public static async Task<(Process Program, string Address)> StartAsync(IEnumerable<string> arguments, StringBuilder said)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in arguments.Prepend(Program))
            start.ArgumentList.Add(argument);
        Process program = Process.Start(start)!;
        var found = new TaskCompletionSource<string>();
        void Hear(string? line)
        {
            lock (said)
                said.AppendLine(line);
            if (line is not null && PageAt().Match(line) is { Success: true } match)
                found.TrySetResult(match.Groups[1].Value);
        }

        program.OutputDataReceived += (_, e) => Hear(e.Data);
        program.ErrorDataReceived += (_, e) => Hear(e.Data);
        program.BeginOutputReadLine();
        program.BeginErrorReadLine();
        Task first = await Task.WhenAny(found.Task, Task.Delay(TimeSpan.FromSeconds(30)));
        if (first != found.Task)
            throw new InvalidOperationException($"The program did not say where its page is within 30 s. It said: {said}");
        return (program, await found.Task);
    }

    private static string FindRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "ZoneControl.sln")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("The tests do not lie in the source tree.");
    }

    [GeneratedRegex(@"^The page is at (http://\S+)$")]
    private static partial Regex PageAt();
}
