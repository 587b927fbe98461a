namespace ZoneControl.Logic;

/// <summary>Adds up ms as whole seconds, and stops at <see cref="int.MaxValue"/>, after 68 years, rather than turn negative.</summary>
internal sealed class WholeSeconds
{
    private int _partMs;

    /// <summary>Whole seconds so far.</summary>
    public int Count;

    /// <summary>Adds ms, at most <see cref="ControllerSettings.LongestMs"/>.</summary>
    public void Pass(int ms)
    {
        _partMs += ms;
        if (_partMs < 1000)
            return;
        int seconds = _partMs / 1000;
        _partMs -= seconds * 1000;
        Count = Count > int.MaxValue - seconds ? int.MaxValue : Count + seconds;
    }
}
