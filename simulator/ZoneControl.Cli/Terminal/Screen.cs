using Spectre.Console;
using Spectre.Console.Rendering;
using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>What the sections of the terminal report share.</summary>
internal static class Screen
{
    /// <summary>The report's width, characters: fits a plain terminal, and a wider one gains nothing from longer lines.</summary>
    public const int Width = 80;

    /// <summary>For what went wrong; the words say so too.</summary>
    public static readonly Style Wrong = new(Color.Red, decoration: Decoration.Bold);

    /// <summary>The style for what went wrong, or the plain one.</summary>
    public static Style WrongIf(bool wrong) => wrong ? Wrong : Style.Plain;

    /// <summary>A heading with an empty line before it.</summary>
    public static void Heading(IAnsiConsole console, string text)
    {
        console.WriteLine();
        console.Write(new Rule($"[bold]{Markup.Escape(text)}[/]") { Justification = Justify.Left, Border = BoxBorder.Square });
    }

    /// <summary>Plain text with a style, wrapped at words.</summary>
    public static void Say(IAnsiConsole console, string text, Style? style = null) =>
        console.Write(new Rows(new Text(Unparted.Of(text, ScreenWriter.Joint), style)));

    /// <summary>A table without side lines.</summary>
    public static Table Plain(params string[] headings)
    {
        var table = new Table { Border = TableBorder.Simple, Expand = false };
        foreach (string heading in headings)
            table.AddColumn(new TableColumn(new Text(heading)));
        return table;
    }

    /// <summary>A cell.</summary>
    public static IRenderable Cell(string text, Style? style = null) => new Text(Unparted.Of(text, ScreenWriter.Joint, alsoTimes: false), style);

    /// <summary>A piece of running text, for a grid: as <see cref="Say"/> lays it out.</summary>
    public static IRenderable Running(string text, Style? style = null) => new Text(Unparted.Of(text, ScreenWriter.Joint), style);
}
