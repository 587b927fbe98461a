using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Captures;

/// <summary>Mistakes of a map beside its capture. Thrown inside, never past the audit.</summary>
internal sealed class MapMistakes(IReadOnlyList<FileMistake> all) : Exception
{
    public IReadOnlyList<FileMistake> All => all;
}

/// <summary>Which signals carry which channels: those that the map names, then those named like a channel.</summary>
/// <param name="Bindings">Joined signals.</param>
/// <param name="Named">Channel and signal of each, for people.</param>
/// <param name="Unused">Signals that carry nothing known.</param>
internal sealed record SignalBindings(
    IReadOnlyList<Binding> Bindings, IReadOnlyList<(string Channel, string Signal)> Named, IReadOnlyList<string> Unused)
{
    private const int MostNamed = 200;

    /// <summary>Joins the signals of a capture to channels.</summary>
    /// <exception cref="MapMistakes">The map names signals that are not there.</exception>
    /// <exception cref="CaptureMistake">No signal carries a channel, or two carry one.</exception>
    public static SignalBindings Of(IReadOnlyList<CaptureSignal> signals, ChannelMap map, House house, string capture, bool isTable)
    {
        var names = new ChannelNames(house);
        var bindings = new List<Binding>();
        var mistakes = new List<FileMistake>();
        foreach (MappedSignal mapped in map.Signals)
        {
            if (Find(signals, mapped.Signal) is { } found)
                bindings.Add(new Binding(found.Signal, found.Bit, mapped.Channel, mapped.ActiveLow, mapped.GlitchMs));
            else
                mistakes.Add(Unknown(mapped, signals, map, capture));
        }

        if (mistakes.Count > 0)
            throw new MapMistakes(mistakes);
        HashSet<Channel> taken = [.. bindings.Select(binding => binding.Channel)];
        HashSet<int> used = [.. bindings.Select(binding => binding.Signal)];
        var named = new Dictionary<Channel, int>();
        for (int i = 0; i < signals.Count; i++)
        {
            if (used.Contains(i) || names.FindSignal(signals[i].Name) is not { } channel || taken.Contains(channel))
                continue;
            if (channel.IsText && !isTable)
                continue;
            if (!named.TryAdd(channel, i))
            {
                throw new CaptureMistake(0, $"two signals for {names.NameOf(channel)}: {Words.Quote(signals[named[channel]].Name)} and "
                    + Words.Quote(signals[i].Name), "one; say in a channel map (--map) which of them it is");
            }

            bindings.Add(new Binding(i, 0, channel));
        }

        if (bindings.Count == 0)
        {
            throw new CaptureMistake(0, $"no signal that carries a channel of this house; there are {Listed(signals)}",
                "signals named like channels, or a channel map (--map FILE)");
        }

        used.UnionWith(named.Values);
        return new SignalBindings(
            bindings,
            [.. bindings.Select(binding => (names.NameOf(binding.Channel), Words.Clean(signals[binding.Signal].Name)))],
            [.. signals.Where((_, i) => !used.Contains(i) && !(isTable && i == 0)).Take(MostNamed).Select(signal => Words.Clean(signal.Name))]);
    }

    // By its whole name, by the last part of it, or as one bit of a wider one: "bus[3]".
    private static (int Signal, int Bit)? Find(IReadOnlyList<CaptureSignal> signals, string name)
    {
        int at = Single(signals, signal => signal.Name == name);
        if (at < 0)
            at = Single(signals, signal => signal.Name.EndsWith("." + name, StringComparison.Ordinal));
        if (at >= 0)
            return (at, 0);
        int open = name.LastIndexOf('[');
        if (open <= 0 || !name.EndsWith(']') || !int.TryParse(name.AsSpan(open + 1, name.Length - open - 2), out int bit))
            return null;
        string bare = name[..open];
        at = Single(signals, signal => signal.Name == bare || signal.Name.EndsWith("." + bare, StringComparison.Ordinal));
        return at >= 0 && bit >= signals[at].LowBit && bit - signals[at].LowBit < signals[at].Width ? (at, bit - signals[at].LowBit) : null;
    }

    private static int Single(IReadOnlyList<CaptureSignal> signals, Func<CaptureSignal, bool> fits)
    {
        int found = -1;
        for (int i = 0; i < signals.Count; i++)
        {
            if (!fits(signals[i]))
                continue;
            if (found >= 0)
                throw new CaptureMistake(0, $"two signals named {Words.Quote(signals[i].Name)}", "names with their scopes in the map, one signal each");
            found = i;
        }

        return found;
    }

    private static FileMistake Unknown(MappedSignal mapped, IReadOnlyList<CaptureSignal> signals, ChannelMap map, string capture) => new(
        Words.Clean(map.FileName), mapped.Line, 1, "channel.signal", Words.Quote(mapped.Signal),
        $"a signal of {Words.Clean(capture)}: {Listed(signals)}",
        Words.DidYouMean(mapped.Signal, signals.Take(1000).Select(signal => Words.Clean(signal.Name[(signal.Name.LastIndexOf('.') + 1)..]))));

    private static string Listed(IReadOnlyList<CaptureSignal> signals)
    {
        const int Most = 12;
        string listed = string.Join(", ", signals.Take(Most).Select(signal => Words.Quote(signal.Name)));
        return signals.Count == 0 ? "none" : signals.Count > Most ? $"{listed} and {signals.Count - Most} more" : listed;
    }
}
