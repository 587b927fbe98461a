using Spectre.Console;

namespace ZoneControl.Cli.Tests;

/// <summary>Runs the program's command line in a folder of its own.</summary>
internal sealed class CommandLine : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("zonecontrol-").FullName;

    /// <summary>A person at the terminal; null for none.</summary>
    public IAnsiConsole? Person { get; init; }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    public string Path(string name) => System.IO.Path.Combine(Folder, name);

    /// <summary>A copy of an example in the folder, since some commands write beside it.</summary>
    public string Copy(string example)
    {
        string to = Path(example);
        File.Copy(System.IO.Path.Combine(AppContext.BaseDirectory, "examples", example), to, overwrite: true);
        return to;
    }

    public async Task<(int Exit, string Out, string Error)> Run(params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var streams = new Streams(output, error, OutIsTerminal: false) { Questions = () => Person };
        int exit = await App.RunAsync(args, streams, TestContext.Current.CancellationToken);
        return (exit, output.ToString(), error.ToString());
    }

    /// <summary>No line of a text is wider than a plain terminal, but for those that hold a path of the folder.</summary>
    public void AssertNarrow(string text) => Assert.All(
        text.Split('\n').Where(line => !line.Contains(Folder, StringComparison.Ordinal)),
        line => Assert.True(line.TrimEnd().Length <= 80, line));
}
