using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// How long each valve has been open or shut without a break, and what that proves: timed valves by their opening time,
/// switched ones by their end switch, or by both where the switch made too soon. A driven valve is open while it is
/// energised, a gated one while its panel is sensed to energise it. Ages are capped where nothing more depends on them.
/// </summary>
internal sealed class ValveStretches(ControllerSettings house)
{
    private readonly int[] _energisedMs = new int[house.ZoneCount];
    private readonly int[] _unprovenMs = new int[house.ZoneCount];
    private readonly int[] _releasedMs = new int[house.ZoneCount];
    private readonly int _driven = house.DrivenZones;
    private int _open;
    private int _switches;
    private int _early;
    private int _stuck;
    private int _undated;
    private bool _supplied;

    public int Open => _open;

    public int Early => _early;

    /// <summary>Switches made when their valve had been shut for its closing time, and not seen open since.</summary>
    public int Stuck => _stuck;

    public int Proven { get; private set; }

    public int Confirmed { get; private set; }

    public int Overdue { get; private set; }

    public int Doubted { get; private set; }

    public int FullyOpened { get; private set; }

    public int Shut { get; private set; }

    /// <summary>Every valve counts as released this moment, and the supply as absent where it is sensed.</summary>
    public void Forget()
    {
        Array.Clear(_energisedMs);
        Array.Clear(_unprovenMs);
        Array.Clear(_releasedMs);
        _open = _switches = _early = _stuck = _undated = 0;
        _supplied = !house.Has(Contact.Supply);
        Derive();
    }

    /// <summary>Valves as this frame has them: open ones have been so for long, shut ones only now.</summary>
    public void Presume(in Frame now)
    {
        Forget();
        _open = (now.Valves & _driven) | (now.Senses & house.GatedZones);
        _switches = now.EndSwitches;
        _supplied = !house.Has(Contact.Supply) || (now.Contacts & Contact.Supply) != 0;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((_open & (1 << zone)) != 0)
                _energisedMs[zone] = Math.Max(house.OpeningMs[zone] + house.ScanPeriodMs, BelievableMs(zone));
        }

        Derive();
    }

    /// <summary>TIME-FAULT: no time that has passed counts any more; valves and switches stand as they are.</summary>
    public void ForgetTimes(in Frame now)
    {
        Array.Clear(_energisedMs);
        Array.Clear(_unprovenMs);
        Array.Clear(_releasedMs);
        _early = _open & Read(now);
        Derive();
    }

    /// <summary>The clock stands: the valves that are open now have been seen by more scans than their time says.</summary>
    public void NoteStandingClock() => _undated |= _open;

    /// <summary>A scan reads its contacts, with the valves that are driven still as they stood before it.</summary>
    public void ReadContacts(in Frame was, in Frame now)
    {
        _supplied = !house.Has(Contact.Supply) || (now.Contacts & Contact.Supply) != 0;
        Turn((_open ^ now.Senses) & house.GatedZones, now);
        int made = now.EndSwitches & ~was.EndSwitches & _open;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((made & (1 << zone)) != 0 && _energisedMs[zone] < BelievableMs(zone))
                _early |= 1 << zone;
        }

        _switches = now.EndSwitches;
        _stuck &= _switches;
        Derive();
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((Proven & (1 << zone)) != 0)
                _unprovenMs[zone] = 0;
        }
    }

    /// <summary>The same scan moves the valves that it drives.</summary>
    public void Move(in Frame now)
    {
        Turn((_open ^ now.Valves) & _driven, now);
        Derive();
    }

    /// <summary>Time until a mask here changes by itself, ms; <see cref="int.MaxValue"/> when none does.</summary>
    public int MsToNextChange()
    {
        int next = int.MaxValue;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((_open & bit) == 0)
            {
                Sooner(ref next, house.ClosingMs[zone] - _releasedMs[zone]);
                continue;
            }

            Sooner(ref next, house.OpeningMs[zone] - _energisedMs[zone]);
            if (house.TransformerDeciVa > 0)
                Sooner(ref next, house.InrushMs[zone] - _energisedMs[zone]);
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
            if ((_open & (1 << zone)) == 0)
            {
                Age(ref _releasedMs[zone], ms, house.ClosingMs[zone]);
                continue;
            }

            // VALVE-SUPPLY: opening time counts only with supply present.
            if (Powered(zone))
                Age(ref _energisedMs[zone], ms, Math.Max(house.OpeningMs[zone] + house.ScanPeriodMs, BelievableMs(zone)));
            else
                _energisedMs[zone] = 0;
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
        walk.Int(ref _open);
        walk.Int(ref _early);
        walk.Int(ref _stuck);
        walk.Int(ref _undated);
        walk.Bool(ref _supplied);
        _switches = now.EndSwitches;
        Derive();
    }

    /// <summary>How long a valve has been energised as far as times can be trusted, ms; capped.</summary>
    public int EnergisedMs(int zone) => _energisedMs[zone];

    public static void Sooner(ref int next, int left)
    {
        if (left > 0 && left < next)
            next = left;
    }

    public static void Age(ref int age, int ms, int cap) => age = (int)Math.Min((long)age + ms, cap);

    private bool Powered(int zone) => _supplied || (_driven & (1 << zone)) == 0;

    private void Turn(int turned, in Frame now)
    {
        _open ^= turned;
        _undated &= ~turned;
        _early = (_early & ~turned) | (turned & _open & Read(now));
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            if ((turned & (1 << zone)) != 0)
                _energisedMs[zone] = _unprovenMs[zone] = _releasedMs[zone] = 0;
        }
    }

    // Switches that this scan reads as made. One that is still settling shows only by the alarm.
    private int Read(in Frame now) =>
        now.EndSwitches | (house.SwitchDebounceMs > 0 ? now.EarlySwitches & house.SwitchedZones : 0);

    // Only a wait that no scan has ended counts on: a confirmed proof keeps it at none. Without supply no valve is to blame.
    private void AgeWait(int zone, int ms)
    {
        int bit = 1 << zone;
        if (!_supplied || ((Confirmed | ~house.SwitchedZones) & bit) != 0)
            return;
        Age(ref _unprovenMs[zone], ms, house.SwitchLimitMs[zone]);
        bool stood = _energisedMs[zone] >= house.OpeningMs[zone] + house.ScanPeriodMs;
        if ((Proven & bit) != 0 && stood)
            _unprovenMs[zone] = 0;
    }

    // A contact is accepted one debounce after it made, seen a scan late at most: one accepted sooner than both together was
    // made when its valve was energised; unless the clock stood between.
    private int BelievableMs(int zone) => (_undated & (1 << zone)) != 0
        ? house.SwitchMinMs[zone]
        : Math.Max(house.SwitchMinMs[zone], house.SwitchDebounceMs + house.ScanPeriodMs);

    private void Derive()
    {
        Proven = Confirmed = Overdue = FullyOpened = Shut = 0;
        for (int zone = 0; zone < house.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((_open & bit) != 0)
                DeriveOpen(zone, bit);
            else if (_releasedMs[zone] >= house.ClosingMs[zone])
                Shut |= bit;
        }

        _stuck |= Shut & _switches;
        Doubted = _early & _switches & ~_stuck & ~Proven;
    }

    private void DeriveOpen(int zone, int bit)
    {
        bool fully = _energisedMs[zone] >= house.OpeningMs[zone];
        bool switched = (house.SwitchedZones & bit) != 0;
        bool made = (_switches & ~_stuck & bit) != 0;
        bool proven = Powered(zone) && (switched ? made && (fully || (_early & bit) == 0) : fully);
        if (fully)
            FullyOpened |= bit;
        if (proven)
            Proven |= bit;
        if (proven && switched && _unprovenMs[zone] == 0)
            Confirmed |= bit;
        if (!proven && switched && _supplied && _unprovenMs[zone] >= house.SwitchLimitMs[zone])
            Overdue |= bit;
    }
}
