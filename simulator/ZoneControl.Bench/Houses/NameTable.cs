using ZoneControl.Bench.Files;

namespace ZoneControl.Bench.Houses;

/// <summary>Names of one kind of thing, in the file's order, and who refers to them.</summary>
internal sealed class NameTable(string kind)
{
    private readonly List<string> _names = [];
    private readonly List<(int Index, TableReader Table)> _owners = [];
    private readonly HashSet<int> _used = [];
    private int _count;
    private bool _missed;

    /// <summary>How many things there are, named or not.</summary>
    public int Count => _count;

    /// <summary>Reads the name of the next thing and gives it the next number, from 0.</summary>
    public string? Add(TableReader table)
    {
        int index = _count++;
        string? name = table.Word("name", NodeReader.NameExpected, required: true);
        string entry = "";
        if (name is not null && !NodeReader.IsName(name))
            table.Error("name", Words.Quote(name), NodeReader.NameExpected);
        else if (name is not null && _names.Contains(name))
            table.Error("name", $"{Words.Quote(name)} for the second time", $"another name for each {kind}");
        else if (name is not null)
            entry = name;

        _names.Add(entry);
        if (entry.Length > 0)
            _owners.Add((index, table));
        return entry.Length > 0 ? entry : null;
    }

    /// <summary>The number of the thing that a key names; null after noting a mistake, or without the key.</summary>
    public int? Find(TableReader table, string key, bool required = false)
    {
        string? name = table.Word(key, $"the name of {Article} {kind}", required);
        return name is null ? null : Find(name, table.PlaceOf(key), table.PathOf(key), table.Mistakes);
    }

    /// <summary>The number of the thing of that name; null after noting a mistake.</summary>
    public int? Find(string name, Place place, string path, MistakeList mistakes)
    {
        int index = name.Length == 0 ? -1 : _names.IndexOf(name);
        if (index >= 0)
        {
            _used.Add(index);
            return index;
        }

        _missed = true;
        List<string> known = [.. _names.Where(candidate => candidate.Length > 0)];
        if (!mistakes.LostText)
            mistakes.Error(place, path, Words.Quote(name), $"{Article} {kind}: {Words.OneOf(known)}", Words.DidYouMean(name, known));
        return null;
    }

    /// <summary>Counts a thing as used without a key that names it.</summary>
    public void Use(int index) => _used.Add(index);

    /// <summary>Warns of things that nothing refers to.</summary>
    public void WarnOfUnused(MistakeList mistakes)
    {
        // Whoever misspelt a name meant one of these, so it may be used after all.
        if (mistakes.LostText || _missed)
            return;
        foreach ((int index, TableReader table) in _owners)
        {
            if (!_used.Contains(index))
                table.Warning("name", $"{Article} {kind} that nothing uses", "a zone or loop that names it");
        }
    }

    private string Article => kind[0] is 'a' ? "an" : "a";
}
