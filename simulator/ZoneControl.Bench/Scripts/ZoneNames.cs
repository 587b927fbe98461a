using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Scripts;

/// <summary>Finds the house's zones by the names that a script uses.</summary>
internal sealed class ZoneNames(House house)
{
    private readonly List<(Place Place, string Path, string Name)> _unknown = [];
    private readonly HashSet<string> _found = [];
    private readonly string[] _names = [.. house.Zones.Select(zone => zone.Name)];

    /// <summary>The house.</summary>
    public House House => house;

    /// <summary>The zone that a key names; null after noting a mistake, or without the key.</summary>
    public int? One(TableReader table, string key, bool required = false)
    {
        string? name = table.Word(key, "the name of a zone", required);
        return name is null ? null : Find(name, table.PlaceOf(key), table.PathOf(key));
    }

    /// <summary>The zones that a key names, one or a list, as a mask; null after noting a mistake, or without the key.</summary>
    public int? Several(TableReader table, string key)
    {
        const string Expected = "the name of a zone or a list of names";
        TomlNode? node = table.Node(key, Expected);
        switch (node)
        {
            case null:
                return null;
            case TomlScalar { Value: string name }:
                return Find(name, node.Place, table.PathOf(key)) is { } one ? 1 << one : null;
            case TomlList { Items.Count: > 0 } list:
                return Mask(list, table, key);
            default:
                table.Error(key, node is TomlList ? "an empty list" : node.Found, Expected);
                return null;
        }
    }

    /// <summary>Notes the names that are no zone's: each one, or, where most are unknown, once that this is another house's script.</summary>
    public void NoteUnknown(MistakeList mistakes)
    {
        string[] names = [.. _unknown.Select(unknown => unknown.Name).Distinct()];
        if (names.Length >= 2 && names.Length > _found.Count)
        {
            mistakes.Error(
                _unknown[0].Place, _unknown[0].Path, $"{names.Length} names that are no zone of this house, the first {Words.Quote(names[0])}",
                $"zones of this house: {Words.OneOf(_names)}", $"is this the script of another house? {_found.Count} of its {_found.Count + names.Length} names are known here");
            return;
        }

        foreach ((Place place, string path, string name) in _unknown)
            mistakes.Error(place, path, Words.Quote(name), $"a zone of this house: {Words.OneOf(_names)}", Words.DidYouMean(name, _names));
    }

    private int? Mask(TomlList list, TableReader table, string key)
    {
        int mask = 0;
        bool good = true;
        for (int i = 0; i < list.Items.Count; i++)
        {
            string path = $"{table.PathOf(key)}[{i + 1}]";
            int? zone = null;
            if (list.Items[i] is TomlScalar { Value: string name })
                zone = Find(name, list.Items[i].Place, path);
            else
                table.Mistakes.Error(list.Items[i].Place, path, list.Items[i].Found, "the name of a zone");
            good &= zone is not null;
            mask |= zone is { } bit ? 1 << bit : 0;
        }

        return good ? mask : null;
    }

    private int? Find(string name, Place place, string path)
    {
        int zone = house.ZoneIndex(name);
        if (zone >= 0)
            _found.Add(name);
        else
            _unknown.Add((place, path, name));
        return zone >= 0 ? zone : null;
    }
}
