using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// How long each valve has been energised or released without a break, and what that proves: timed valves by their opening
/// time, switched ones by their end switch, or by both where the switch made too soon. Ages are capped where nothing more
/// depends on them.
/// </summary>
internal sealed class ValveStretches(ControllerSettings house)
{
    private readonly int[] _energisedMs = new int[house.ZoneCount];
    private readonly int[] _unprovenMs = new int[house.ZoneCount];
    private readonly int[] _releasedMs = new int[house.ZoneCount];
    private int _valves;
    private int _switches;
    private int _early;

    public int Early => _early;

    public int Proven { get; private set; }

    public int Confirmed { get; private set; }

    public int Overdue { get; private set; }

    public int Doubted { get; private set; }

    public int FullyOpened { get; private set; }

    public int Shut { get; private set; }

    /// <summary>Every valve counts as released this moment.</summary>
    public void Forget()
    {
        Array.Clear(_energisedMs);
        Array.Clear(_unprovenMs);
        Array.Clear(_releasedMs);
        _valves = _switches = _early = 0;
        Derive();
    }

    /// <summary>A scan reads its contacts, with the valves still as they stood before it.</summary>
    public void ReadSwitches(in Frame was, in Frame now)
    {
        int made = now.EndSwitches & ~was.EndSwitches & _valves;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((made & (1 << zone)) != 0 && _energisedMs[zone] < BelievableMs(zone))
                _early |= 1 << zone;
        }

        _switches = now.EndSwitches;
        Derive();
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((Proven & (1 << zone)) != 0)
                _unprovenMs[zone] = 0;
        }
    }

    /// <summary>The same scan moves its valves.</summary>
    public void Move(in Frame was, in Frame now)
    {
        int moved = was.Valves ^ now.Valves;
        int energised = moved & now.Valves;
        // A contact read as made may still be settling: the channels show it only by the alarm.
        int read = house.SwitchDebounceMs > 0 ? now.EarlySwitches & house.SwitchedZones : 0;
        _early = (_early & ~moved) | (energised & (now.EndSwitches | read));
        _valves = now.Valves;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((moved & (1 << zone)) != 0)
                _energisedMs[zone] = _unprovenMs[zone] = _releasedMs[zone] = 0;
        }

        Derive();
    }

    /// <summary>Time until a mask here changes by itself, ms; <see cref="int.MaxValue"/> when none does.</summary>
    public int MsToNextChange()
    {
        int next = int.MaxValue;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((_valves & bit) == 0)
            {
                Sooner(ref next, house.ClosingMs[zone] - _releasedMs[zone]);
                continue;
            }

            Sooner(ref next, house.OpeningMs[zone] - _energisedMs[zone]);
            Sooner(ref next, house.OpeningMs[zone] + house.ScanPeriodMs - _energisedMs[zone]);
            if ((house.SwitchedZones & ~Proven & bit) != 0)
                Sooner(ref next, house.SwitchLimitMs[zone] - _unprovenMs[zone]);
        }

        return next;
    }

    /// <summary>Lets time pass, no further than <see cref="MsToNextChange"/>.</summary>
    public void Pass(int ms)
    {
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((_valves & (1 << zone)) == 0)
            {
                Age(ref _releasedMs[zone], ms, house.ClosingMs[zone]);
                continue;
            }

            Age(ref _energisedMs[zone], ms, Math.Max(house.OpeningMs[zone] + house.ScanPeriodMs, BelievableMs(zone)));
            AgeWait(zone, ms);
        }

        Derive();
    }

    /// <summary>Names the state for saving and loading; the masks of the present frame are its owner's to keep.</summary>
    public void Walk(StateWalk walk, in Frame now)
    {
        walk.Ints(_energisedMs);
        walk.Ints(_unprovenMs);
        walk.Ints(_releasedMs);
        walk.Int(ref _early);
        _valves = now.Valves;
        _switches = now.EndSwitches;
        Derive();
    }

    public static void Sooner(ref int next, int left)
    {
        if (left > 0 && left < next)
            next = left;
    }

    public static void Age(ref int age, int ms, int cap) => age = (int)Math.Min((long)age + ms, cap);

    // Only a wait that no scan has ended counts on: a confirmed proof keeps it at none.
    private void AgeWait(int zone, int ms)
    {
        int bit = 1 << zone;
        if (((Confirmed | ~house.SwitchedZones) & bit) != 0)
            return;
        Age(ref _unprovenMs[zone], ms, house.SwitchLimitMs[zone]);
        bool stood = _energisedMs[zone] >= house.OpeningMs[zone] + house.ScanPeriodMs;
        if ((Proven & bit) != 0 && stood)
            _unprovenMs[zone] = 0;
    }

    // A contact is accepted one debounce after it made, seen a scan late at most: one accepted sooner than both together was
    // made when its valve was energised.
    private int BelievableMs(int zone) =>
        Math.Max(house.SwitchMinMs[zone], house.SwitchDebounceMs + house.ScanPeriodMs);

    private void Derive()
    {
        Proven = Confirmed = Overdue = FullyOpened = Shut = 0;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((_valves & bit) != 0)
                DeriveEnergised(zone, bit);
            else if (_releasedMs[zone] >= house.ClosingMs[zone])
                Shut |= bit;
        }

        Doubted = _early & _switches & ~Proven;
    }

    private void DeriveEnergised(int zone, int bit)
    {
        bool fully = _energisedMs[zone] >= house.OpeningMs[zone];
        bool switched = (house.SwitchedZones & bit) != 0;
        bool made = (_switches & bit) != 0;
        bool proven = switched ? made && (fully || (_early & bit) == 0) : fully;
        if (fully)
            FullyOpened |= bit;
        if (proven)
            Proven |= bit;
        if (proven && switched && _unprovenMs[zone] == 0)
            Confirmed |= bit;
        if (!proven && switched && _unprovenMs[zone] >= house.SwitchLimitMs[zone])
            Overdue |= bit;
    }
}
