namespace ZoneControl.Bench.Files;

/// <summary>A value in a TOML file, with its place.</summary>
internal abstract record TomlNode(Place Place)
{
    /// <summary>What it is, for messages.</summary>
    public abstract string Found { get; }
}

/// <summary>A single value: a string, long, double or bool, or null for dates and times, which no file here uses.</summary>
internal sealed record TomlScalar(object? Value, string Raw, Place Place) : TomlNode(Place)
{
    /// <inheritdoc/>
    public override string Found => Value switch
    {
        string text => Words.Quote(text),
        null => "the date or time " + Words.Clean(Raw),
        bool => Words.Clean(Raw),
        _ => "the number " + Words.Clean(Raw),
    };
}

/// <summary>A list of values, or of tables made with double brackets.</summary>
internal sealed record TomlList(List<TomlNode> Items, Place Place) : TomlNode(Place)
{
    /// <inheritdoc/>
    public override string Found => "a list";
}

/// <summary>A table: keys in the file's order, each with the place of the key.</summary>
internal sealed record TomlTable(Place Place) : TomlNode(Place)
{
    /// <summary>Keys and values.</summary>
    public OrderedDictionary<string, TomlEntry> Entries { get; } = [];

    /// <inheritdoc/>
    public override string Found => "a table";
}

/// <summary>A value under a key.</summary>
internal sealed record TomlEntry(Place KeyPlace, TomlNode Node);
