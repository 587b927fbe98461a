namespace ZoneControl.Bench.Rules;

/// <summary>
/// How long something has been owed without a break. It is kept as one capped int, so that it can be part of a searched
/// state: 0 means that nothing is owed, n that it has been owed for n - 1 ms.
/// </summary>
internal struct DutyClock
{
    private int _owed;

    /// <summary>Something is owed now.</summary>
    public readonly bool Owed => _owed != 0;

    /// <summary>How long it has been owed, ms, never more than the limit plus 1; 0 when nothing is.</summary>
    public readonly int Ms => _owed == 0 ? 0 : _owed - 1;

    /// <summary>Says whether it is owed from this moment on; a duty that stands keeps its age.</summary>
    public void Set(bool owed) => _owed = !owed ? 0 : _owed == 0 ? 1 : _owed;

    /// <summary>The duty begins afresh at this moment, or ends.</summary>
    public void Restart(bool owed) => _owed = owed ? 1 : 0;

    /// <summary>Nothing is owed.</summary>
    public void Clear() => _owed = 0;

    /// <summary>
    /// Lets <paramref name="ms"/> pass. A duty must be done <i>by</i> the limit: one still owed at that very moment, with
    /// time passing, is overdue.
    /// </summary>
    /// <returns>How far into the span the duty ran out, ms; -1 when it did not, or had before.</returns>
    public int Pass(int ms, int limitMs)
    {
        if (_owed == 0)
            return -1;
        int left = limitMs - (_owed - 1);
        _owed = (int)Math.Min((long)_owed + ms, (long)limitMs + 2);
        return left >= 0 && left < ms ? left : -1;
    }

    /// <summary>Names the state for saving and loading.</summary>
    public void Walk(StateWalk walk) => walk.Int(ref _owed);
}
