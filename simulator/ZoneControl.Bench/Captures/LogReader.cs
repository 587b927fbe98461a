using System.Buffers.Text;
using System.Text;
using ZoneControl.Bench.Houses;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>Told what a board's log says.</summary>
internal interface ILogEvents
{
    /// <summary>A board powered up or was reset; everything is off.</summary>
    void Boot(string fingerprint);

    /// <summary>A scan's group is complete: the state is what it showed.</summary>
    void Scan(long clockMs, bool powerUp);

    /// <summary>The scan whose lines follow found its clock at fault; the scan before it was at this time.</summary>
    void ClockFault(Rules.ClockSign sign, long wasMs);

    /// <summary>Records were lost; nothing is known until the next boot.</summary>
    void Lost(long clockMs, string why);

    /// <summary>The board has put every output to safe and scans no more.</summary>
    void Fault(long clockMs, string word);

    /// <summary>The board goes on, and nothing has changed since its last scan's lines.</summary>
    void Alive(long clockMs);

    /// <summary>Something for people.</summary>
    void Note(long clockMs, string text, bool isAlarm);
}

/// <summary>
/// Reads the console log of ZoneControl's board: ASCII lines "@ms event fields", one group a scan that changed anything,
/// closed by "next". Lines that do not begin with @ are not the board's and are skipped.
/// </summary>
internal sealed class LogReader(ByteWords words, House house, ChannelState state, ILogEvents events)
{
    private static readonly string[] _holds =
    [
        "none", "service", "priority", "lockout", "valve-latched", "limit", "flow-latched", "pump-stuck", "supply",
        "too-few-valves", "proof", "start-delay", "rest", "reset",
    ];

    private static readonly string[] _alarms =
    [
        "flow-trip", "flow-latched", "pump-stuck", "limit-latched", "frost-in-lockout", "priority-long", "exercise-put-off",
        "time-fault", "no-supply", "service-ended",
    ];

    private static readonly (string Word, int Contact)[] _contacts =
    [
        ("season", Contact.Lockout), ("flow", Contact.Flow), ("limit", Contact.Limit), ("freeze", Contact.Freeze),
        ("priority", Contact.Priority), ("reset", Contact.Reset), ("supply", Contact.Supply), ("service-pump", Contact.ServicePump),
    ];

    private static readonly (string Word, ChannelKind Kind)[] _zoneEvents =
    [
        ("call", ChannelKind.Call), ("switch", ChannelKind.EndSwitch), ("sense", ChannelKind.Sense), ("hand", ChannelKind.Hand),
        ("valve", ChannelKind.Valve), ("late", ChannelKind.Late), ("latched", ChannelKind.Latched), ("early", ChannelKind.Early),
        ("stuck", ChannelKind.Stuck), ("proven", ChannelKind.Proven),
    ];

    private bool _booted;
    private bool _open;
    private bool _powerUp;
    private bool _knowsAll;
    private long _groupMs;

    /// <summary>Lines that were the board's.</summary>
    public long Records { get; private set; }

    /// <summary>Lines of the board before its first boot line, of which nobody knows from where they went on.</summary>
    public long BeforeBoot { get; private set; }

    /// <summary>Whether a line looks like one of the board's.</summary>
    public static bool IsRecord(ReadOnlySpan<byte> line) =>
        line.Length > 3 && line[0] == (byte)'@' && (line[1] == (byte)'-' || char.IsAsciiDigit((char)line[1])) && line.Contains((byte)' ');

    /// <summary>Reads to the end.</summary>
    /// <exception cref="CaptureMistake">A line that begins like the board's cannot be one.</exception>
    public void Play(Func<bool> tick)
    {
        int untilTick = 0;
        while (words.TryLine(out ReadOnlySpan<byte> line))
        {
            if (line.Length == 0 || line[0] != (byte)'@')
                continue;
            if (words.EndsWithoutLineEnd)
            {
                // The last line may have been cut short anywhere, and a number cut short is another number.
                events.Note(_groupMs, "the log's last line is cut short and was left out", false);
                break;
            }

            Records++;
            Read(line);
            if (--untilTick < 0)
            {
                untilTick = 256;
                if (!tick())
                    return;
            }
        }

        if (_open)
            events.Note(_groupMs, "the log ends within the lines of one scan; that scan was left out", false);
    }

    private void Read(ReadOnlySpan<byte> line)
    {
        string[] fields = Encoding.UTF8.GetString(line).Split(' ');
        if (!Utf8Parser.TryParse(line[1..], out long ms, out int used) || used != fields[0].Length - 1 || fields.Length < 2
            || Math.Abs(ms) > VcdReader.LongestMs)
        {
            throw Mistake(line, "@, a time in ms, and an event");
        }

        if (fields[1] == "boot")
        {
            Boot(fields, ms, line);
            return;
        }

        if (!_booted || !_knowsAll)
        {
            BeforeBoot += _booted ? 0 : 1;
            if (_booted && fields[1] is "fault")
                Say(fields, ms, line);
            return;
        }

        if (fields[1] is "alive" or "overrun" or "waited" or "lost" or "fault" or "text")
        {
            Say(fields, ms, line);
            return;
        }

        if (_open && ms != _groupMs)
            throw Mistake(line, $"\"next\" at the end of the scan at {_groupMs} ms first");
        _open = true;
        _groupMs = ms;
        if (fields[1] == "next")
            Close(fields, line);
        else
            Set(fields, line);
    }

    private void Boot(string[] fields, long ms, ReadOnlySpan<byte> line)
    {
        string FieldOf(string key) => fields.FirstOrDefault(field => field.StartsWith(key + "=", StringComparison.Ordinal))?[(key.Length + 1)..] ?? "";
        if (FieldOf("log") != "1")
            throw Mistake(line, "log=1, the grammar that this program reads");
        if (FieldOf("zones") != $"{house.Zones.Count}")
            throw Mistake(line, $"zones={house.Zones.Count}, as the house file has", "is it the log of another house?");
        state.Clear();
        _booted = _open = _powerUp = _knowsAll = true;
        _groupMs = ms;
        events.Boot(FieldOf("fp"));
    }

    private void Close(string[] fields, ReadOnlySpan<byte> line)
    {
        long next = 0;
        if (fields.Length != 3 || (fields[2] != "never" && !long.TryParse(fields[2], out next)))
            throw Mistake(line, "next and a time in ms, or never");
        state.SetNumber(new Channel(ChannelKind.Next, 0), fields[2] == "never" ? ZoneController.Never : next);
        state.Set(new Channel(ChannelKind.PowerUp, 0), _powerUp);
        events.Scan(_groupMs, _powerUp);
        _powerUp = _open = false;
    }

    private void Set(string[] fields, ReadOnlySpan<byte> line)
    {
        string what = fields[1];
        int place = Array.FindIndex(_zoneEvents, pair => pair.Word == what);
        if (place >= 0)
        {
            if (fields.Length != 4)
                throw Mistake(line, $"{what}, a zone and on or off");
            state.Set(new Channel(_zoneEvents[place].Kind, Zone(fields[2], line)), OnOff(fields[3], line));
            return;
        }

        switch (what)
        {
            case "name" when fields.Length >= 3:
                Name(Zone(fields[2], line), string.Join(' ', fields[3..]), line);
                break;
            case "contact" when fields.Length == 4:
                int contact = Array.FindIndex(_contacts, pair => pair.Word == fields[2]);
                if (contact < 0)
                    throw Mistake(line, "a contact: " + string.Join(", ", _contacts.Select(pair => pair.Word)));
                state.Set(new Channel(ChannelKind.Contact, Contact.Place(_contacts[contact].Contact)), OnOff(fields[3], line));
                break;
            case "clock" when fields.Length == 4:
                ClockFault(fields, line);
                break;
            case "pump" or "heat" when fields.Length == 3:
                state.Set(new Channel(what == "pump" ? ChannelKind.Pump : ChannelKind.Heat, 0), OnOff(fields[2], line));
                break;
            case "hold" when fields.Length == 3:
                int hold = Array.IndexOf(_holds, fields[2]);
                if (hold < 0)
                    throw Mistake(line, "a hold reason: " + string.Join(", ", _holds));
                state.SetAll(ChannelKind.Hold, hold == 0 ? 0 : 1 << hold);
                break;
            case "alarm" when fields.Length == 4:
                int alarm = Array.IndexOf(_alarms, fields[2]);
                if (alarm < 0)
                    throw Mistake(line, "an alarm: " + string.Join(", ", _alarms));
                state.Set(new Channel(ChannelKind.Alarm, alarm), OnOff(fields[3], line));
                break;
            default:
                throw Mistake(line, "an event of the board's log with its fields");
        }
    }

    private void ClockFault(string[] fields, ReadOnlySpan<byte> line)
    {
        Rules.ClockSign sign = fields[2] switch
        {
            "back" => Rules.ClockSign.RunsBack,
            "stands" => Rules.ClockSign.StandsStill,
            "late" => Rules.ClockSign.ComesLate,
            _ => throw Mistake(line, "clock back, clock stands or clock late"),
        };
        if (!fields[3].StartsWith("was=", StringComparison.Ordinal) || !long.TryParse(fields[3].AsSpan(4), out long was))
            throw Mistake(line, "was= and the time of the scan before, ms");
        events.ClockFault(sign, was);
    }

    private void Say(string[] fields, long ms, ReadOnlySpan<byte> line)
    {
        string rest = string.Join(' ', fields[2..]);
        switch (fields[1])
        {
            case "lost":
                _knowsAll = false;
                _open = false;
                events.Lost(ms, $"the board's console lost records ({rest})");
                break;
            case "fault":
                if (fields.Length < 3)
                    throw Mistake(line, "fault and its word");
                if (_knowsAll)
                    events.Fault(ms, fields[2]);
                _knowsAll = false;
                _open = false;
                break;
            case "alive":
                events.Alive(ms);
                break;
            case "overrun":
                events.Note(ms, $"a scan took longer than its period ({rest})", true);
                break;
            case "waited":
                events.Note(ms, $"a scan began more than a period late ({rest})", true);
                break;
            case "text":
                events.Note(ms, $"the board says: {rest}", true);
                break;
        }
    }

    private void Name(int zone, string name, ReadOnlySpan<byte> line)
    {
        if (house.Zones[zone].Name != name)
            throw Mistake(line, $"\"{house.Zones[zone].Name}\", zone {zone + 1} of the house file", "is it the log of another house?");
    }

    private int Zone(string word, ReadOnlySpan<byte> line) =>
        word.Length > 1 && word[0] == 'z' && int.TryParse(word.AsSpan(1), out int zone) && zone >= 1 && zone <= house.Zones.Count
            ? zone - 1
            : throw Mistake(line, $"a zone from z1 to z{house.Zones.Count}");

    private bool OnOff(string word, ReadOnlySpan<byte> line) => word switch
    {
        "on" => true,
        "off" => false,
        _ => throw Mistake(line, "on or off"),
    };

    private CaptureMistake Mistake(ReadOnlySpan<byte> line, string expected, string hint = "") =>
        new(words.Line, CaptureMistake.Quote(line), expected, hint);
}
