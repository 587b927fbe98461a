using ZoneControl.Bench.Files;
using ZoneControl.Cli.Files;
using ZoneControl.Cli.Terminal;
using ZoneControl.Web;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Cli.Commands;

/// <summary>What commands that make a document share: they show the document and write it.</summary>
internal sealed class SheetDesk(Streams streams)
{
    /// <summary>Shows a document on standard output, or its JSON there, and writes the HTML file where one is asked for.</summary>
    /// <param name="settings">Where to.</param>
    /// <param name="sheet">The document.</param>
    /// <param name="json">The result for programs, as text that ends with a line feed.</param>
    public async Task ShowAsync(SheetSettings settings, SheetView sheet, Func<string> json)
    {
        using PendingFile? file = Pending(settings.Report, settings.House);
        SheetView dated = sheet.Date.Length > 0 ? sheet : sheet with { Date = RecordByHand.Written(RecordByHand.Day(null)) };
        string? html = file is null ? null : await HtmlSheet.RenderAsync(dated);
        if (settings.Json)
            streams.Out.Write(json());
        else
            SheetTerminal.Write(streams.Terminal(), sheet);
        if (file is null)
            return;
        file.Commit(writer => writer.Write(html));
        (settings.Json ? streams.Error : streams.Out).WriteLine($"Written to {settings.Report}");
    }

    /// <summary>A result file that does not replace what it was made from; null when none is asked for.</summary>
    public static PendingFile? Pending(string? path, params IEnumerable<string> inputs)
    {
        if (path is null)
            return null;
        foreach (string input in inputs)
        {
            if (path.Trim().Length > 0 && Path.GetFullPath(path) == Path.GetFullPath(input))
                throw new BadInputException($"{path}: is also what it would be made from; choose another name.");
        }

        return new PendingFile(path);
    }

    /// <summary>A quantity of an option.</summary>
    /// <exception cref="BadInputException">It is none, or out of its range.</exception>
    public static double? Measure(string option, string? text, Dimension dimension, double least, double most, string range)
    {
        if (text is null)
            return null;
        QuantityReading reading = Quantities.Read(text, dimension);
        if (reading.Value is not { } value)
        {
            string hint = reading.Hint.Length > 0 ? $" ({reading.Hint})" : "";
            throw new BadInputException($"{option}: found {reading.Found}, expected {dimension.Name} such as {dimension.Examples}{hint}");
        }

        return value >= least && value <= most
            ? value
            : throw new BadInputException($"{option}: found \"{text}\", expected {range}");
    }
}
