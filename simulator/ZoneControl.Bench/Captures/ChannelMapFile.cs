using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Captures;

/// <summary>What came of reading a channel map.</summary>
/// <param name="Map">The map; null when a mistake is an error.</param>
/// <param name="Mistakes">Every mistake found, in the order of the file.</param>
public sealed record ChannelMapReading(ChannelMap? Map, IReadOnlyList<FileMistake> Mistakes);

/// <summary>Reads channel maps. Bad content is a list of mistakes, never an exception.</summary>
public static class ChannelMapFile
{
    private static readonly (string, bool)[] _levels = [("high", false), ("low", true)];

    private static readonly (string, TimeUnit)[] _units =
    [
        ("s", TimeUnit.Seconds), ("ms", TimeUnit.Milliseconds), ("us", TimeUnit.Microseconds), ("ns", TimeUnit.Nanoseconds),
    ];

    /// <summary>Reads a channel map from disk (UTF-8, at most 1 MiB); its channels are those of <paramref name="house"/>.</summary>
    public static ChannelMapReading Read(string path, House house)
    {
        var mistakes = new MistakeList(path);
        string? text = TextFile.Read(path, mistakes);
        return text is null ? new ChannelMapReading(null, mistakes.InOrder()) : Parse(text, path, house);
    }

    /// <summary>Reads a channel map from text; <paramref name="fileName"/> is what messages call it.</summary>
    public static ChannelMapReading Parse(string text, string fileName, House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        var mistakes = new MistakeList(fileName);
        var file = new TableReader(TomlText.Read(text, mistakes), "", mistakes);
        var names = new ChannelNames(house);
        TimeSpan glitch = file.Time("glitch", "0 s", "1 min") ?? TimeSpan.Zero;
        var map = new ChannelMap
        {
            FileName = fileName,
            Title = file.Text("title", 60) ?? "",
            Text = file.Text("text", 4000, severalLines: true) ?? "",
            TimeColumn = file.Text("time_column", 200),
            TimeUnit = file.Choice("time_unit", _units),
            Conditions = ScriptReader.ReadConditions(file.Table("conditions")),
            Never = ReadNever(file, names),
            Signals = [.. file.Tables("channel").Select(table => ReadSignal(table, names, glitch)).OfType<MappedSignal>()],
        };
        Twice(map.Signals, names, mistakes);
        file.End();
        return new ChannelMapReading(mistakes.HasErrors ? null : map, mistakes.InOrder());
    }

    private static MappedSignal? ReadSignal(TableReader table, ChannelNames names, TimeSpan glitch)
    {
        string? signal = table.Text("signal", 200, required: true);
        Channel? channel = null;
        const string Expected = "a channel such as \"pump\" or \"bath.valve\"";
        if (table.Word("is", Expected, required: true) is { } word)
        {
            channel = names.Find(word);
            if (channel is null or { IsText: true })
            {
                channel = null;
                table.Error("is", Words.Quote(word), Expected, Words.DidYouMean(word, names.All));
            }
        }

        bool low = table.Choice("active", _levels) ?? false;
        TimeSpan own = table.Time("glitch", "0 s", "1 min") ?? glitch;
        table.End();
        return signal is not null && channel is { } found
            ? new MappedSignal(signal, found, low, (int)own.TotalMilliseconds, table.Start.Line)
            : null;
    }

    private static List<(ChannelKind, int)> ReadNever(TableReader file, ChannelNames names)
    {
        const string Expected = "a list of channels, or of what all zones have: \"late\", \"hold\", \"alarm\"";
        var never = new List<(ChannelKind, int)>();
        TomlNode? node = file.Node("never", Expected);
        if (node is null)
            return never;
        if (node is not TomlList list)
        {
            file.Error("never", node.Found, Expected);
            return never;
        }

        foreach (TomlNode item in list.Items)
        {
            if (item is TomlScalar { Value: string word })
            {
                if (ChannelNames.FamilyOf(word) is { } family)
                    never.Add((family, -1));
                else if (names.Find(word) is { } channel)
                    never.Add((channel.Kind, channel.Mask));
                else
                    file.Mistakes.Error(item.Place, "never", Words.Quote(word), Expected, Words.DidYouMean(word, [.. ChannelNames.Families, .. names.All]));
            }
            else
            {
                file.Mistakes.Error(item.Place, "never", item.Found, Expected);
            }
        }

        return never;
    }

    private static void Twice(IReadOnlyList<MappedSignal> signals, ChannelNames names, MistakeList mistakes)
    {
        foreach (IGrouping<Channel, MappedSignal> same in signals.GroupBy(signal => signal.Channel).Where(group => group.Count() > 1))
        {
            MappedSignal second = same.ElementAt(1);
            mistakes.Error(
                new Place(second.Line, 1), "channel", $"\"{names.NameOf(same.Key)}\" for the second time",
                $"one signal for each channel; line {same.First().Line} has one");
        }
    }
}
