namespace ZoneControl.Logic.Tests;

/// <summary>Who asks, in order of precedence, as the judge sees it.</summary>
internal sealed class JudgedDemand(ControllerSettings s, JudgedInputs inputs)
{
    private const long LongAgo = long.MinValue / 4;

    private readonly JudgedExercise _exercise = new(s);
    private long _handSince = LongAgo;
    private long _prioritySince = LongAgo;

    public bool Service { get; private set; }

    public bool Priority { get; private set; }

    /// <summary>Zones that calls or the freeze contact ask for, or an exercise.</summary>
    public int Asked { get; private set; }

    public bool ForHeat { get; private set; }

    public bool Frost { get; private set; }

    public bool Demand { get; private set; }

    /// <summary>When demand last came or went, or a reset made it begin anew.</summary>
    public long Since { get; private set; } = LongAgo;

    public bool PutOff => _exercise.PutOff;

    public bool PumpWanted => Service ? inputs.Is(Contact.ServicePump) : Demand;

    public void ForgetPutOff() => _exercise.PutOff = false;

    /// <summary>Times begin anew; what had ended stays ended, and idleness is counted as if the scan had not been.</summary>
    public void Begin(long now, long last)
    {
        _handSince = Service ? now : _handSince;
        _prioritySince = Priority ? now : _prioritySince;
        Since = Demand ? now : Since + now - last;
        _exercise.Skip(now);
    }

    /// <summary>Demand of the scan before, or a hand, lets a running pump run on.</summary>
    public bool KeepsPumpOn => Service ? inputs.Is(Contact.ServicePump) : Demand && (!Priority || inputs.Is(Contact.Freeze));

    /// <summary>Whether a hand governs and whether priority withholds calls.</summary>
    public void Govern(long now)
    {
        if (inputs.AnyHand && !inputs.AnyHandBefore)
            _handSince = now;
        if ((inputs.Contacts.Rose & Contact.Priority) != 0)
            _prioritySince = now;
        // What has ended stays so until all is let go, whatever the clock does.
        Service = inputs.AnyHand && (Service || !inputs.AnyHandBefore) && now - _handSince < s.ServiceLimitMs;
        Priority = inputs.Is(Contact.Priority) && (Priority || !inputs.Was(Contact.Priority)) && now - _prioritySince < s.PriorityMaxMs;
    }

    public void Look(long now, int latched, bool pumpOn, JudgedValves valves, bool reset, bool forbidden)
    {
        bool demandBefore = Demand;
        int driven = (1 << s.ZoneCount) - 1 & ~s.GatedZones & ~latched;
        int calls = inputs.Calls & ~latched;
        Frost = !Service && inputs.Is(Contact.Freeze) && (calls | driven) != 0;
        bool withheld = Service || (!inputs.Is(Contact.Freeze) && (Priority || inputs.Is(Contact.Lockout)));
        Asked = withheld ? 0 : inputs.Is(Contact.Freeze) ? calls | driven : calls;
        ForHeat = Asked != 0;
        forbidden |= Priority || !inputs.Supplied || driven == 0;
        _exercise.Look(now, pumpOn, busy: ForHeat || Service, forbidden, (driven & ~(valves.ProvenBefore | valves.Late | valves.Stuck)) == 0);
        if (_exercise.Going)
            Asked = driven;

        Demand = Asked != 0;
        if (Demand != demandBefore || (reset && Demand && !pumpOn))
            Since = now;
    }
}

/// <summary>Exercise as the judge sees it. Whoever asks ends it; what forbids it puts it off.</summary>
internal sealed class JudgedExercise(ControllerSettings s)
{
    private long _idleMs;
    private long _ranMs;
    private long _goingMs;
    private long _last = long.MinValue;

    public bool Going { get; private set; }

    public bool PutOff { get; set; }

    public void Skip(long now) => _last = now;

    public void Look(long now, bool pumpOn, bool busy, bool forbidden, bool allMoved)
    {
        long passed = _last == long.MinValue ? 0 : now - _last;
        _last = now;
        if (s.ExerciseIntervalS == 0)
            return;
        _idleMs = pumpOn ? 0 : _idleMs + passed;
        bool wasGoing = Going;
        if (Going)
        {
            _goingMs += passed;
            _ranMs += pumpOn ? passed : 0;
            Going = !busy;
        }
        else if (_idleMs >= 1000L * s.ExerciseIntervalS && !busy)
        {
            (Going, _goingMs, _ranMs) = (true, 0, 0);
        }

        if (!Going)
            return;
        bool done = wasGoing && !forbidden && _ranMs >= s.ExerciseRunMs && allMoved;
        if (done)
        {
            (Going, PutOff) = (false, false);
        }
        else if (forbidden || _goingMs >= s.ExerciseLimitMs)
        {
            (Going, PutOff) = (false, true);
            _idleMs = 1000L * (s.ExerciseIntervalS - s.ExerciseRetryS);
        }
    }
}
