namespace ZoneControl.Logic;

/// <summary>What an alarm is about.</summary>
public enum AlarmKind
{
    /// <summary>A zone's valve did not prove within its limit (VALVE-LATE).</summary>
    Late = 0,

    /// <summary>A zone's valve is no longer driven (VALVE-LATE).</summary>
    Latched = 1,

    /// <summary>A zone's end switch made too soon (VALVE-EARLY).</summary>
    Early = 2,

    /// <summary>A zone's end switch stays made (VALVE-STUCK).</summary>
    StuckSwitch = 3,

    /// <summary>The house as a whole; the place is that of the bit in <see cref="Alarm"/>.</summary>
    House = 4,
}

/// <summary>
/// When each alarm was last raised and how often. Apart from the controller's state: nothing is decided by it. Times are
/// whole seconds since power-up (<see cref="WholeSeconds"/>).
/// </summary>
public sealed class AlarmBook
{
    private const int Kinds = 5;
    private const int Places = ControllerSettings.MostZones;

    private readonly int[] _standing = new int[Kinds];
    private readonly int[] _raisedS = new int[Kinds * Places];
    private readonly int[] _times = new int[Kinds * Places];
    internal readonly WholeSeconds Uptime = new WholeSeconds();

    internal AlarmBook()
    {
    }

    /// <summary>Seconds since power-up.</summary>
    public int UptimeS => Uptime.Count;

    /// <summary>Places at which an alarm of a kind stands now: a bit a zone, or the bits of <see cref="Alarm"/>.</summary>
    public int Standing(AlarmKind kind) => _standing[(int)kind];

    /// <summary>When an alarm was last raised, s since power-up; 0 if never.</summary>
    /// <param name="kind">What it is about.</param>
    /// <param name="place">Zone, or place of the bit in <see cref="Alarm"/>; 0 to 15.</param>
    public int RaisedS(AlarmKind kind, int place) => _raisedS[(int)kind * Places + place];

    /// <summary>How often an alarm was raised since power-up.</summary>
    public int Times(AlarmKind kind, int place) => _times[(int)kind * Places + place];

    internal void Note(AlarmKind kind, int standing)
    {
        int before = _standing[(int)kind];
        if (standing == before)
            return;
        int raised = standing & ~before;
        _standing[(int)kind] = standing;
        for (int place = 0; raised != 0; place++, raised >>= 1)
        {
            if ((raised & 1) == 0)
                continue;
            int at = (int)kind * Places + place;
            _raisedS[at] = Uptime.Count;
            _times[at] = Counters.Next(_times[at]);
        }
    }
}
