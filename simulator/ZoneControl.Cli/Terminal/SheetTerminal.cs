using Spectre.Console;
using ZoneControl.Web.View;
using ZoneControl.Web.View.Sheets;

namespace ZoneControl.Cli.Terminal;

/// <summary>Writes a document to a terminal, 80 columns wide, readable without colour.</summary>
internal static class SheetTerminal
{
    private const int BarCells = 30;
    private const int NameCells = 28;
    private const int WideGap = 3;
    private const int NarrowGap = 2;

    /// <summary>The whole document, its cautions last.</summary>
    public static void Write(IAnsiConsole console, SheetView sheet)
    {
        Screen.Say(console, $"ZoneControl: {sheet.Kind}", new Style(decoration: Decoration.Bold));
        Screen.Say(console, sheet.Title);
        Screen.Say(console, sheet.House);
        if (sheet.Lead.Length > 0)
        {
            console.WriteLine();
            Screen.Say(console, sheet.Lead);
        }

        foreach (SheetSection section in sheet.Sections)
        {
            Screen.Heading(console, section.Heading);
            foreach (SheetBlock block in section.Blocks)
                Block(console, block);
        }

        Screen.Heading(console, "Caution");
        Screen.Say(console, Sayings.Supervisory);
        Screen.Say(console, Sayings.Wiring);
        if (sheet.FromModel)
            Screen.Say(console, Sayings.Model);
        if (sheet.Verdict is { } verdict)
        {
            Screen.Heading(console, "Verdict");
            Color color = verdict.Good ? Color.Green : Color.Red;
            Screen.Say(console, $"{verdict.Word}  {verdict.Line}", new Style(color, decoration: Decoration.Bold));
        }
    }

    private static void Block(IAnsiConsole console, SheetBlock block)
    {
        switch (block)
        {
            case SheetText text:
                Screen.Say(console, text.Words);
                break;
            case SheetCaution caution:
                Screen.Say(console, $"CAUTION  {caution.Words}", Screen.Wrong);
                break;
            case SheetTable table:
                Table(console, table);
                break;
            case SheetSteps steps:
                Steps(console, steps);
                break;
            case SheetFindings findings:
                Findings(console, findings);
                break;
            case SheetBars bars:
                Bars(console, bars);
                break;
            case SheetLines lines:
                Lines(console, lines);
                break;
            default:
                throw new NotSupportedException($"The terminal shows no {block.GetType().Name}.");
        }
    }

    private static void Table(IAnsiConsole console, SheetTable sheet)
    {
        string[][] rows =
        [
            [.. sheet.Columns.Select(column => column.Heading)],
            .. sheet.Rows.Select(row => row.Select((cell, i) => sheet.Columns[i].Blank && cell.Length == 0 ? "......" : cell).ToArray()),
        ];
        int gap = ColumnWidths.Natural(rows) + Margins(sheet.Columns.Count, WideGap) <= console.Profile.Width ? WideGap : NarrowGap;
        int[] widths = ColumnWidths.Fit(
            rows, console.Profile.Width - Margins(sheet.Columns.Count, gap), [.. sheet.Columns.Select(column => column.Number)]);
        string[][] wrapped = [.. rows.Select(row => row.Select((cell, i) => ColumnWidths.Wrap(cell, widths[i])).ToArray())];
        var table = new Table { Border = TableBorder.Simple, Expand = false };
        for (int i = 0; i < sheet.Columns.Count; i++)
        {
            TableColumn head = new TableColumn(new Text(wrapped[0][i])).Width(widths[i]).PadLeft(i == 0 ? 1 : gap - 2).PadRight(1);
            if (sheet.Columns[i].Number)
                head.RightAligned();
            table.AddColumn(head);
        }

        // Rows of more than one line need a line between them, or nobody sees where one ends.
        if (wrapped.Skip(1).Any(row => row.Any(cell => cell.Contains('\n', StringComparison.Ordinal))))
            table.ShowRowSeparators();
        foreach (string[] row in wrapped.Skip(1))
            table.AddRow(row.Select(cell => Screen.Cell(cell)).ToArray());
        Screen.Say(console, sheet.Caption + ":");
        console.Write(table);
    }

    /// <summary>What borders and gaps of a table take of a line.</summary>
    private static int Margins(int columns, int gap) => 4 + ((columns - 1) * gap);

    private static void Steps(IAnsiConsole console, SheetSteps sheet)
    {
        for (int i = 0; i < sheet.Steps.Count; i++)
        {
            SheetStep step = sheet.Steps[i];
            string fields = string.Join("   ", step.Fields.Select(field => $"{field}: ........"));
            Indented(console, $"[ ] {i + 1,2}. ", fields.Length > 0 ? $"{step.Words}\n{fields}" : step.Words);
        }
    }

    private static void Findings(IAnsiConsole console, SheetFindings sheet)
    {
        foreach (SheetFinding finding in sheet.Findings)
        {
            string word = finding.Mark switch
            {
                SheetMark.Fault => "FAULT   ",
                SheetMark.Advice => "advice  ",
                _ => "fine    ",
            };
            Style style = Screen.WrongIf(finding.Mark == SheetMark.Fault);
            Indented(console, word, $"{finding.Topic}: {finding.Says}.", style);
            if (finding.Change.Length > 0)
                Indented(console, "        ", $"To do: {finding.Change}.", new Style(decoration: Decoration.Bold));
            if (finding.Basis.Length > 0)
                Indented(console, "        ", $"Rests on: {finding.Basis}.");
            console.WriteLine();
        }
    }

    private static void Bars(IAnsiConsole console, SheetBars sheet)
    {
        Screen.Say(console, sheet.Scale.Length > 0 ? $"{sheet.Title}; {sheet.Scale}:" : $"{sheet.Title}:");
        double most = sheet.Bars.Select(bar => bar.Value).DefaultIfEmpty(0).Max();
        foreach (SheetBar bar in sheet.Bars)
        {
            int cells = most > 0 ? (int)Math.Round(BarCells * bar.Value / most) : 0;
            string name = bar.Name.Length > NameCells ? bar.Name[..NameCells] : bar.Name;
            Screen.Say(console, $"  {name.PadRight(NameCells)} {new string('#', cells)} {bar.Words}");
        }
    }

    /// <summary>Lines to copy stand as they are, whatever their length.</summary>
    private static void Lines(IAnsiConsole console, SheetLines sheet)
    {
        Screen.Say(console, sheet.Caption + ":");
        console.WriteLine();
        foreach (string line in sheet.Lines)
            console.Profile.Out.Writer.WriteLine($"    {line}");
        console.WriteLine();
    }

    private static void Indented(IAnsiConsole console, string mark, string words, Style? style = null)
    {
        var grid = new Grid()
            .AddColumn(new GridColumn().NoWrap().PadRight(0).PadLeft(0).Width(mark.Length))
            .AddColumn(new GridColumn().PadRight(0).PadLeft(0));
        grid.AddRow(Screen.Cell(mark, style), Screen.Running(words, style));
        console.Write(grid);
    }
}
