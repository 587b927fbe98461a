using System.Numerics;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>What the channels of a house are called in captures and channel maps: "bath.valve", "pump", "alarm.no_flow".</summary>
public sealed class ChannelNames
{
    private static readonly (string Word, ChannelKind Kind)[] _zoneWords =
    [
        ("call", ChannelKind.Call), ("end_switch", ChannelKind.EndSwitch), ("sense", ChannelKind.Sense),
        ("hand", ChannelKind.Hand), ("valve", ChannelKind.Valve), ("late", ChannelKind.Late),
        ("latched", ChannelKind.Latched), ("switch_early", ChannelKind.Early), ("switch_stuck", ChannelKind.Stuck),
        ("proven", ChannelKind.Proven), ("thermostat", ChannelKind.Thermostat),
        ("end_switch_contact", ChannelKind.EndSwitchWire), ("sense_contact", ChannelKind.SenseWire),
    ];

    private static readonly (string Word, Channel Channel)[] _houseWords =
    [
        ("pump", new(ChannelKind.Pump, 0)), ("heat_demand", new(ChannelKind.Heat, 0)),
        ("power_up", new(ChannelKind.PowerUp, 0)), ("powered", new(ChannelKind.Powered, 0)),
        ("scan", new(ChannelKind.Scan, 0)), ("clock_ahead", new(ChannelKind.ClockAhead, 0)), ("deadline", new(ChannelKind.Next, 0)),
    ];

    /// <summary>Other words for the same.</summary>
    private static readonly (string Word, string Means)[] _also =
    [
        ("heat", "heat_demand"), ("lockout", "accepted.season"), ("endswitch", "end_switch"), ("alarms", "alarm"),
        ("hold_reason", "hold"),
    ];

    private readonly Dictionary<string, Channel> _byName = new(StringComparer.Ordinal);
    private readonly Dictionary<Channel, string> _names = [];
    private readonly HashSet<string> _zones = new(StringComparer.Ordinal);

    /// <summary>The names for a house.</summary>
    public ChannelNames(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            _zones.Add(house.Zones[zone].Name);
            foreach ((string word, ChannelKind kind) in _zoneWords)
                Add($"{house.Zones[zone].Name}.{word}", new Channel(kind, zone));
        }

        foreach ((string word, Channel channel) in _houseWords)
            Add(word, channel);
        for (int place = 0; place < Contact.Count; place++)
        {
            Add($"accepted.{ContactWord(1 << place)}", new Channel(ChannelKind.Contact, place));
            Add($"contact.{ContactWord(1 << place)}", new Channel(ChannelKind.ContactWire, place));
        }

        foreach (HoldWord hold in HoldWords.All.Skip(1))
            Add($"hold.{Joined(hold.Word)}", new Channel(ChannelKind.Hold, (int)hold.Reason));
        foreach (AlarmWord alarm in AlarmWords.All)
            Add($"alarm.{Joined(alarm.Word)}", new Channel(ChannelKind.Alarm, BitOperations.TrailingZeroCount(alarm.Alarm)));
        _byName["hold"] = new Channel(ChannelKind.Hold, -1);
        _byName["alarm"] = new Channel(ChannelKind.Alarm, -1);
    }

    /// <summary>Every name, zones first.</summary>
    public IReadOnlyCollection<string> All => _byName.Keys;

    /// <summary>The channel of a name; null for a word that is none.</summary>
    public Channel? Find(string name)
    {
        foreach ((string word, string means) in _also)
        {
            if (name == word)
                return _byName[means];
            if (name.EndsWith("." + word, StringComparison.Ordinal) && _byName.TryGetValue(name[..^word.Length] + means, out Channel other))
                return other;
        }

        return _byName.TryGetValue(name, out Channel channel) ? channel : null;
    }

    /// <summary>
    /// The channel that a signal's own name stands for, its parts joined by points or spaces, with or without scopes before it;
    /// null when it stands for none.
    /// </summary>
    public Channel? FindSignal(string signal)
    {
        string[] words = signal.Split(' ');
        // Tables put the kind behind the contact: "flow accepted".
        string turned = words.Length == 2 ? $"{words[1]}.{words[0]}" : "";
        string name = string.Join('.', words);
        if ((Find(name) ?? Find(turned)) is { } whole)
            return whole;
        string rest = signal;
        for (int point = rest.IndexOf('.', StringComparison.Ordinal); point > 0; point = rest.IndexOf('.', StringComparison.Ordinal))
        {
            // What follows a zone's name is the zone's, whatever else it may be called.
            if (_zones.Contains(rest[..point]))
                return null;
            rest = rest[(point + 1)..];
            if (Find(rest) is { } found)
                return found;
        }

        return null;
    }

    /// <summary>The name of a channel.</summary>
    public string NameOf(Channel channel) => channel switch
    {
        { Kind: ChannelKind.Hold, Bit: < 0 } => "hold",
        { Kind: ChannelKind.Alarm, Bit: < 0 } => "alarm",
        _ => _names.GetValueOrDefault(channel, $"{channel.Kind} {channel.Bit}"),
    };

    /// <summary>The hold reason of its word in files; null for a word that is none.</summary>
    public static HoldReason? HoldOf(string word) =>
        HoldWords.All.FirstOrDefault(hold => hold.Word == word || Joined(hold.Word) == word)?.Reason;

    /// <summary>The alarm of its word in files; null for a word that is none.</summary>
    public static int? AlarmOf(string word) =>
        AlarmWords.All.FirstOrDefault(alarm => alarm.Word == word || Joined(alarm.Word) == word)?.Alarm;

    /// <summary>The families that a word names together: "late", "alarms", "hold"; null for a word that is none.</summary>
    public static ChannelKind? FamilyOf(string word) => word switch
    {
        "hold" or "hold_reason" => ChannelKind.Hold,
        "alarm" or "alarms" => ChannelKind.Alarm,
        "accepted" => ChannelKind.Contact,
        _ => _zoneWords.FirstOrDefault(pair => pair.Word == word) is { Word: not null } found ? found.Kind : null,
    };

    /// <summary>Words for <see cref="FamilyOf"/>.</summary>
    public static IReadOnlyList<string> Families { get; } = [.. _zoneWords.Select(pair => pair.Word), "accepted", "hold", "alarm"];

    /// <summary>A contact's word: its key in house files; "service" for the hand switch of the pump.</summary>
    public static string ContactWord(int contact) => contact == Contact.ServicePump ? "service" : ContactKind.Of(contact).Key;

    private static string Joined(string words) => words.Replace(' ', '_');

    private void Add(string name, Channel channel)
    {
        // A zone may be called like a part of the house; the house's own names come later and win.
        _byName[name] = channel;
        _names[channel] = name;
    }
}
