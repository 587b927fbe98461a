using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>Makes lines of records, one at a time, outside the scan. Its grammar is in firmware/README.md.</summary>
public sealed class LogWriter
{
    private readonly EventLog _log;
    private readonly ControllerSettings _settings;
    private readonly string[] _names;
    private readonly string _boot;
    private readonly int[] _printed = new int[LogEvent.States];
    private int _name = int.MaxValue; // next zone name to print
    private int _bits; // bits of the record at hand still to print
    private string? _text; // detail that follows the fault at hand

    /// <summary>Reads from a log; the rest is what the boot lines say.</summary>
    public LogWriter(EventLog log, ControllerSettings settings, BoardPlan plan, string[] names, int fingerprint)
    {
        _log = log;
        _settings = settings;
        _names = names;
        _boot = "boot log=" + LogWords.Grammar.ToString() + " fp=" + Fingerprint.Text(fingerprint)
            + " zones=" + settings.ZoneCount.ToString() + " period=" + settings.ScanPeriodMs.ToString()
            + " pins=" + (plan.Arrangement == BoardPlan.Chains ? "chains" : "direct");
    }

    /// <summary>What follows the next fault, in one line; null for nothing.</summary>
    public string? FaultText { get; set; }

    /// <summary>The next line, or null when there is none.</summary>
    public string? NextLine()
    {
        if (_text != null)
        {
            string text = At(_log.Ms) + "text " + _text;
            _text = null;
            return text;
        }

        if (_name < _settings.ZoneCount)
        {
            string zone = LogWords.Zone(_name) + " " + (_name < _names.Length ? _names[_name] : "");
            _name++;
            return At(_log.Ms) + "name " + zone;
        }

        while (_bits == 0)
        {
            if (!_log.Take())
                return null;
            string? line = Begin();
            if (line != null)
                return line;
        }

        return NextBit();
    }

    private static string At(long ms) => "@" + ms.ToString() + " ";

    private static string LongOf(int high, int low) => (((long)high << 32) | (uint)low).ToString();

    private static string State(bool on) => on ? " on" : " off";

    /// <summary>Begins the record that was taken: the line that it makes, or null when it has bits to print or nothing new.</summary>
    private string? Begin()
    {
        string at = At(_log.Ms);
        int value = _log.Value;
        switch (_log.What)
        {
            case LogEvent.Boot:
                for (int i = 0; i < _printed.Length; i++)
                    _printed[i] = 0;
                _name = 0;
                return at + _boot;
            case LogEvent.Next:
                return at + "next " + (value < 0 ? "never" : (_log.Ms + value).ToString());
            case LogEvent.Hold:
                _printed[LogEvent.Hold] = value;
                return at + "hold " + LogWords.Hold(value);
            case LogEvent.Alive:
                return at + "alive scans=" + value.ToString() + " overruns=" + _log.Second.ToString();
            case LogEvent.Overrun:
                return at + "overrun us=" + value.ToString() + " n=" + _log.Second.ToString();
            case LogEvent.Waited:
                return at + "waited us=" + value.ToString() + " n=" + _log.Second.ToString();
            case LogEvent.Lost:
                return at + "lost n=" + value.ToString();
            case LogEvent.ClockBack:
                return at + "clock back was=" + LongOf(value, _log.Second);
            case LogEvent.ClockStands:
                return at + "clock stands was=" + LongOf(value, _log.Second);
            case LogEvent.ClockLate:
                return at + "clock late was=" + LongOf(value, _log.Second);
            case LogEvent.Fault:
                _text = FaultText;
                return at + "fault " + LogWords.Fault(value) + " scans=" + _log.Second.ToString();
            default:
                _bits = value ^ _printed[_log.What];
                return null;
        }
    }

    private string NextBit()
    {
        int bit = _bits & -_bits;
        _bits ^= bit;
        int what = _log.What;
        _printed[what] ^= bit;
        int place = Contact.Place(bit);
        string state = State((_printed[what] & bit) != 0);
        switch (what)
        {
            case LogEvent.Contacts:
                return At(_log.Ms) + "contact " + LogWords.Contact(place) + state;
            case LogEvent.Alarms:
                return At(_log.Ms) + "alarm " + LogWords.Alarm(place) + state;
            case LogEvent.Pump:
                return At(_log.Ms) + "pump" + state;
            case LogEvent.Heat:
                return At(_log.Ms) + "heat" + state;
            default:
                return At(_log.Ms) + ZoneWord(what) + " " + LogWords.Zone(place) + state;
        }
    }

    private static string ZoneWord(int what)
    {
        switch (what)
        {
            case LogEvent.Calls:
                return "call";
            case LogEvent.Switches:
                return "switch";
            case LogEvent.Senses:
                return "sense";
            case LogEvent.Hands:
                return "hand";
            case LogEvent.Valves:
                return "valve";
            case LogEvent.Late:
                return "late";
            case LogEvent.Latched:
                return "latched";
            case LogEvent.Early:
                return "early";
            case LogEvent.Stuck:
                return "stuck";
            default:
                return "proven";
        }
    }
}
