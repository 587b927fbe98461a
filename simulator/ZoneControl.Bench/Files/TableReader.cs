namespace ZoneControl.Bench.Files;

/// <summary>
/// Reads one table key by key, notes every mistake, and at the end every key that nobody asked for. A read that fails, or
/// finds nothing, answers null.
/// </summary>
internal sealed class TableReader(TomlTable table, string path, MistakeList mistakes)
{
    private readonly HashSet<string> _asked = [];

    /// <summary>Where the table begins.</summary>
    public Place Start => table.Place;

    /// <summary>The table's own path: "zone.kitchen"; "" for the file.</summary>
    public string Path => path;

    /// <summary>The file's mistakes.</summary>
    public MistakeList Mistakes => mistakes;

    /// <summary>Whether the key is there at all.</summary>
    public bool Has(string key) => table.Entries.ContainsKey(key);

    /// <summary>Line of a key; the table's when it is not there.</summary>
    public Place PlaceOf(string key) => table.Entries.TryGetValue(key, out TomlEntry? entry) ? entry.KeyPlace : table.Place;

    /// <summary>Path of a key.</summary>
    public string PathOf(string key) => path.Length == 0 ? key : $"{path}.{key}";

    /// <summary>Notes an error about a key.</summary>
    public void Error(string key, string found, string expected, string hint = "") =>
        mistakes.Error(PlaceOf(key), PathOf(key), found, expected, hint);

    /// <summary>Notes a warning about a key.</summary>
    public void Warning(string key, string found, string expected, string hint = "") =>
        mistakes.Warning(PlaceOf(key), PathOf(key), found, expected, hint);

    /// <summary>Notes that a key is missing, unless text was lost that may have held it.</summary>
    public void Missing(string key, string expected)
    {
        if (!mistakes.LostText)
            Error(key, "nothing", expected);
    }

    /// <summary>The node under a key; null, and a mistake when required, without one.</summary>
    public TomlNode? Node(string key, string expected, bool required = false)
    {
        _asked.Add(key);
        if (table.Entries.TryGetValue(key, out TomlEntry? entry))
            return entry.Node;
        if (required)
            Missing(key, expected);
        return null;
    }

    /// <summary>A quantity within a range that both ends belong to, in the dimension's own unit.</summary>
    public double? Quantity(string key, Dimension dimension, string least, string most, bool required = false)
    {
        TomlNode? node = Node(key, $"{dimension.Name} such as {dimension.Examples}", required);
        return node is null ? null : NodeReader.Quantity(node, PathOf(key), dimension, least, most, mistakes);
    }

    /// <summary>A time within a range, to the millisecond.</summary>
    public TimeSpan? Time(string key, string least, string most, bool required = false) =>
        Quantity(key, Dimension.Time, least, most, required) is { } ms ? TimeSpan.FromMilliseconds(Math.Round(ms)) : null;

    /// <summary>A plain number within a range.</summary>
    public double? Number(string key, double least, double most, bool required = false)
    {
        string expected = $"a number from {least:#,0.###} to {most:#,0.###}";
        double? value = Node(key, expected, required) switch
        {
            null => null,
            TomlScalar { Value: double number } => number,
            TomlScalar { Value: long number } => number,
            TomlNode other => Wrong(key, other, expected),
        };
        if (value is not { } found || (found >= least && found <= most))
            return value;
        return Wrong(key, table.Entries[key].Node, expected);
    }

    /// <summary>A whole number within a range.</summary>
    public int? Whole(string key, int least, int most, bool required = false)
    {
        string expected = $"a whole number from {least:#,0} to {most:#,0}";
        TomlNode? node = Node(key, expected, required);
        if (node is null)
            return null;
        if (node is TomlScalar { Value: long number } && number >= least && number <= most)
            return (int)number;
        Wrong(key, node, expected);
        return null;
    }

    /// <summary>true or false.</summary>
    public bool? Flag(string key)
    {
        TomlNode? node = Node(key, "true or false");
        if (node is TomlScalar { Value: bool flag })
            return flag;
        if (node is not null)
            Wrong(key, node, "true or false");
        return null;
    }

    /// <summary>Text for people, on one line unless it may have several.</summary>
    public string? Text(string key, int longest, bool required = false, bool severalLines = false)
    {
        string expected = severalLines
            ? $"text of at most {longest:#,0} characters"
            : $"one line of text, 1 to {longest:#,0} characters";
        TomlNode? node = Node(key, expected, required);
        if (node is null)
            return null;
        if (node is TomlScalar { Value: string text } && NodeReader.IsText(text, longest, severalLines))
            return severalLines ? text.ReplaceLineEndings("\n").Trim() : text;
        Wrong(key, node, expected);
        return null;
    }

    /// <summary>A string; what it says is the caller's to judge.</summary>
    public string? Word(string key, string expected, bool required = false)
    {
        TomlNode? node = Node(key, expected, required);
        if (node is TomlScalar { Value: string text })
            return text;
        if (node is not null)
            Wrong(key, node, expected);
        return null;
    }

    /// <summary>One of several words.</summary>
    public T? Choice<T>(string key, IReadOnlyList<(string Word, T Value)> choices, bool required = false)
        where T : struct
    {
        string[] words = [.. choices.Select(choice => choice.Word)];
        string? found = Word(key, Words.OneOf(words), required);
        if (found is null)
            return null;
        foreach ((string word, T value) in choices)
        {
            if (word == found)
                return value;
        }

        Error(key, Words.Quote(found), Words.OneOf(words), Words.DidYouMean(found, words));
        return null;
    }

    /// <summary>A table under a key.</summary>
    public TableReader? Table(string key, bool required = false)
    {
        TomlNode? node = Node(key, "a table", required);
        if (node is TomlTable inner)
            return new TableReader(inner, PathOf(key), mistakes);
        if (node is not null)
            Wrong(key, node, "a table");
        return null;
    }

    /// <summary>A list of tables under a key, each called by its name where it has one, else by its number from 1.</summary>
    public IReadOnlyList<TableReader> Tables(string key)
    {
        const string Expected = "a list of tables";
        TomlNode? node = Node(key, Expected);
        if (node is not TomlList list)
        {
            if (node is not null)
                Error(key, node.Found, Expected, node is TomlTable ? $"write [[{key}]] with double brackets" : "");
            return [];
        }

        var readers = new List<TableReader>();
        for (int i = 0; i < list.Items.Count; i++)
        {
            if (list.Items[i] is TomlTable inner)
                readers.Add(new TableReader(inner, ItemPath(key, inner, i), mistakes));
            else
                mistakes.Error(list.Items[i].Place, $"{PathOf(key)}[{i + 1}]", list.Items[i].Found, "a table");
        }

        return readers;
    }

    /// <summary>Notes every key that nobody asked for.</summary>
    public void End()
    {
        foreach ((string key, TomlEntry entry) in table.Entries)
        {
            if (_asked.Contains(key))
                continue;
            string kind = entry.Node is TomlTable or TomlList { Items: [TomlTable, ..] } ? "an unknown table" : "an unknown key";
            string near = Words.DidYouMean(key, _asked.Where(known => !Has(known)));
            string hint = near.Length > 0 ? near : $"known here: {string.Join(", ", _asked)}";
            mistakes.Error(entry.KeyPlace, Words.Clean(PathOf(key)), kind, "", hint);
        }
    }

    private double? Wrong(string key, TomlNode node, string expected)
    {
        mistakes.Error(node.Place, PathOf(key), node.Found, expected);
        return null;
    }

    private string ItemPath(string key, TomlTable inner, int index) =>
        inner.Entries.TryGetValue("name", out TomlEntry? entry)
        && entry.Node is TomlScalar { Value: string name } && NodeReader.IsName(name)
            ? $"{PathOf(key)}.{name}"
            : $"{PathOf(key)}[{index + 1}]";
}
