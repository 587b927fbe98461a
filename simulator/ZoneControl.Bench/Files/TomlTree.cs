using Tomlyn.Syntax;

namespace ZoneControl.Bench.Files;

/// <summary>
/// Turns the TOML library's syntax into plain nodes with places. Keys given twice have been reported before; the first counts.
/// </summary>
internal static class TomlTree
{
    public static TomlTable From(DocumentSyntax document)
    {
        var root = new TomlTable(new Place(1, 1));
        foreach (KeyValueSyntax pair in document.KeyValues)
            Put(root, pair);
        foreach (TableSyntaxBase table in document.Tables)
        {
            if (table.Name is null || Open(root, table) is not { } open)
                continue;
            foreach (KeyValueSyntax pair in table.Items)
                Put(open, pair);
        }

        return root;
    }

    private static TomlTable? Open(TomlTable root, TableSyntaxBase table)
    {
        Place place = PlaceOf(table);
        List<string> keys = KeysOf(table.Name!);
        TomlTable? parent = Descend(root, keys, place);
        if (parent is null)
            return null;
        if (table is not TableArraySyntax)
            return Descend(parent, [keys[^1], ""], place);

        if (!parent.Entries.TryGetValue(keys[^1], out TomlEntry? entry))
            parent.Entries.Add(keys[^1], entry = new TomlEntry(place, new TomlList([], place)));
        if (entry.Node is not TomlList list)
            return null;
        var item = new TomlTable(place);
        list.Items.Add(item);
        return item;
    }

    private static void Put(TomlTable table, KeyValueSyntax pair)
    {
        if (pair.Key is null || pair.Value is null)
            return;
        Place place = PlaceOf(pair.Key);
        List<string> keys = KeysOf(pair.Key);
        Descend(table, keys, place)?.Entries.TryAdd(keys[^1], new TomlEntry(place, NodeOf(pair.Value)));
    }

    /// <summary>
    /// The table that holds the last of the keys, made on the way where there is none; null when something else is in the way.
    /// </summary>
    private static TomlTable? Descend(TomlTable from, List<string> keys, Place place)
    {
        TomlTable table = from;
        foreach (string key in keys.Take(keys.Count - 1))
        {
            if (!table.Entries.TryGetValue(key, out TomlEntry? entry))
                table.Entries.Add(key, entry = new TomlEntry(place, new TomlTable(place)));
            TomlNode node = entry.Node is TomlList { Items.Count: > 0 } list ? list.Items[^1] : entry.Node;
            if (node is not TomlTable next)
                return null;
            table = next;
        }

        return table;
    }

    private static TomlNode NodeOf(ValueSyntax value)
    {
        Place place = PlaceOf(value);
        switch (value)
        {
            case StringValueSyntax text:
                return new TomlScalar(text.Value ?? "", text.ToString(), place);
            case IntegerValueSyntax whole:
                return new TomlScalar(whole.Value, Raw(whole.Token, whole), place);
            case FloatValueSyntax number:
                return new TomlScalar(number.Value, Raw(number.Token, number), place);
            case BooleanValueSyntax flag:
                return new TomlScalar(flag.Value, flag.Value ? "true" : "false", place);
            case ArraySyntax array:
                return new TomlList([.. array.Items.Select(item => item.Value).OfType<ValueSyntax>().Select(NodeOf)], place);
            case InlineTableSyntax inline:
                var table = new TomlTable(place);
                foreach (InlineTableItemSyntax item in inline.Items)
                {
                    if (item.KeyValue is not null)
                        Put(table, item.KeyValue);
                }

                return table;
            default:
                return new TomlScalar(null, value.ToString().Trim(), place);
        }
    }

    private static string Raw(SyntaxToken? token, ValueSyntax value) => token?.Text ?? value.ToString().Trim();

    private static List<string> KeysOf(KeySyntax key) =>
        [KeyText(key.Key), .. key.DotKeys.Select(item => KeyText(item.Key))];

    private static string KeyText(BareKeyOrStringValueSyntax? key) => key switch
    {
        BareKeySyntax bare => bare.Key?.Text?.Trim() ?? "",
        StringValueSyntax text => text.Value ?? "",
        _ => "",
    };

    private static Place PlaceOf(SyntaxNode node) => new(node.Span.Start.Line + 1, node.Span.Start.Column + 1);
}
