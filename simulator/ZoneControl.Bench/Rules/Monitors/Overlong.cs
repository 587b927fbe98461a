namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// Something asserted that counts for so long and is then alarmed and ignored until it is let go: hand commands and priority.
/// The alarm comes no sooner than the limit, within two scans of it, and stays as long as the contact is asserted.
/// </summary>
internal struct Overlong(int limitMs, int graceMs)
{
    private DutyClock _standing;
    private DutyClock _wrong;
    private bool _alarmed;

    /// <summary>Asserted for its limit or longer.</summary>
    private readonly bool Over => _standing.Owed && _standing.Ms >= limitMs;

    /// <summary>How long it has stood, ms, capped a little above the limit.</summary>
    public readonly int Ms => _standing.Ms;

    public void Clear()
    {
        _standing.Clear();
        _wrong.Clear();
        _alarmed = false;
    }

    /// <summary>
    /// After a time fault it counts from there, as if asserted only now; but what was ignored already stays so until it is let
    /// go, or a clock that fails would bring a forgotten hand back.
    /// </summary>
    public void ForgetTimes()
    {
        if (!_alarmed)
            _standing.Restart(_standing.Owed);
        _wrong.Clear();
    }

    /// <summary>True when the alarm comes before the limit.</summary>
    public bool Judge(bool asserted, bool alarmed)
    {
        _standing.Set(asserted);
        bool tooSoon = alarmed && !_alarmed && !Over;
        _alarmed = alarmed;
        _wrong.Set(alarmed != Over);
        return tooSoon;
    }

    /// <summary>How far into the span the alarm had been wrong for too long, ms; -1 when it had not, or had before.</summary>
    public int Pass(int ms)
    {
        int left = _standing.Owed ? limitMs - _standing.Ms : int.MaxValue;
        if (left <= 0 || left > ms)
        {
            _standing.Pass(ms, limitMs);
            return _wrong.Pass(ms, graceMs);
        }

        // The limit comes within the span: the alarm is wrong before it or after.
        int before = _wrong.Pass(left, graceMs);
        _standing.Pass(ms, limitMs);
        _wrong.Restart(!_alarmed);
        int after = _wrong.Pass(ms - left, graceMs);
        return before >= 0 ? before : after >= 0 ? left + after : -1;
    }

    public void Walk(StateWalk walk)
    {
        _standing.Walk(walk);
        _wrong.Walk(walk);
        walk.Bool(ref _alarmed);
    }
}
