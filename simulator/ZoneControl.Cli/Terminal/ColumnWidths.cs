namespace ZoneControl.Cli.Terminal;

/// <summary>Widths for the columns of a table, so that words stay whole wherever the line is wide enough for them.</summary>
internal static class ColumnWidths
{
    private const int RoomForHyphen = 6;

    /// <summary>
    /// A width for each column. Where everything fits, each is as wide as its widest cell. Else the widest ones give way, but none
    /// below its longest word; only when even the words do not fit are the longest ones cut. Headings of numbers give way before
    /// names do: a heading of two lines costs one line, a name of two costs one in every row.
    /// </summary>
    /// <param name="rows">Cells, the headings first; every row has the same number.</param>
    /// <param name="room">Characters that all columns together may take.</param>
    /// <param name="numbers">Which columns hold numbers: they give way last, for a number without its unit is hard to read.</param>
    public static int[] Fit(IReadOnlyList<IReadOnlyList<string>> rows, int room, IReadOnlyList<bool>? numbers = null)
    {
        int[] wide = Widest(rows);
        int[] words = [.. Enumerable.Range(0, wide.Length).Select(i => Math.Max(1, rows.Max(row => row[i].Split(' ').Max(word => word.Length))))];
        if (numbers is not null)
        {
            int[] cells = [.. words.Select((word, i) => Math.Max(word, rows.Skip(1).Select(row => row[i].Length).DefaultIfEmpty(0).Max()))];
            Narrow(wide, [.. wide.Select((width, i) => numbers[i] ? cells[i] : width)], room);
            Narrow(wide, [.. wide.Select((width, i) => numbers[i] ? width : words[i])], room);
        }

        Narrow(wide, words, room);
        Narrow(wide, [.. words.Select(_ => 1)], room);
        return wide;
    }

    /// <summary>Characters that all columns together take where nothing is wrapped.</summary>
    public static int Natural(IReadOnlyList<IReadOnlyList<string>> rows) => Widest(rows).Sum();

    /// <summary>The text with line feeds between words, so that no line is longer; a longer word is cut, with a hyphen where there is room for one.</summary>
    public static string Wrap(string text, int width)
    {
        var lines = new List<string>();
        string line = "";
        foreach (string whole in text.Split(' '))
        {
            string word = whole;
            if (line.Length > 0 && line.Length + 1 + word.Length <= width)
            {
                line += " " + word;
                continue;
            }

            if (line.Length > 0)
                lines.Add(line);
            for (int keep = width >= RoomForHyphen ? width - 1 : width; word.Length > width; word = word[keep..])
                lines.Add(keep < width ? word[..keep] + "-" : word[..keep]);
            line = word;
        }

        lines.Add(line);
        return string.Join('\n', lines);
    }

    private static int[] Widest(IReadOnlyList<IReadOnlyList<string>> rows) =>
        [.. Enumerable.Range(0, rows[0].Count).Select(i => Math.Max(1, rows.Max(row => row[i].Length)))];

    private static void Narrow(int[] widths, int[] least, int room)
    {
        while (widths.Sum() > room)
        {
            int widest = Enumerable.Range(0, widths.Length).Where(i => widths[i] > least[i]).OrderByDescending(i => widths[i] - least[i])
                .ThenByDescending(i => widths[i]).Cast<int?>().FirstOrDefault() ?? -1;
            if (widest < 0)
                return;
            widths[widest]--;
        }
    }
}
