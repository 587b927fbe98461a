namespace ZoneControl.Plant;

/// <summary>Counts what happens to the pump: running, starts, deadhead and what of it passed nothing at all, in whole milliseconds; and its energy.</summary>
internal sealed class PumpRecord
{
    private long _startMs;
    private bool _on;
    private bool _deadheaded;
    private bool _shut;
    private bool _countedStretch;
    private long _runBefore;
    private long _deadheadBefore;
    private long _shutBefore;
    private int _stretchesBefore;
    private double _powerW;
    private double _wattMsBefore;

    /// <summary>Pump starts so far.</summary>
    public int Starts { get; private set; }

    /// <summary>From this time on the pump is on or off, on with too little flow or not, with none at all or some, and takes that power.</summary>
    public void Begin(long ms, bool on, bool deadheaded, bool shut, double powerW)
    {
        // A state that lasted no time at all is no stretch: inputs set one after another at one moment are one change.
        if (ms > _startMs)
        {
            _wattMsBefore = WattMs(ms);
            (_runBefore, _deadheadBefore, _shutBefore, _stretchesBefore) = (RunMs(ms), DeadheadMs(ms), ShutMs(ms), Stretches(ms));
            _countedStretch = _deadheaded;
        }

        if (on && !_on)
        {
            Starts++;
        }

        (_startMs, _on, _deadheaded, _shut, _powerW) = (ms, on, deadheaded, shut, powerW);
    }

    /// <summary>Time so far that the pump was on, ms.</summary>
    public long RunMs(long ms) => _runBefore + (_on ? ms - _startMs : 0);

    /// <summary>Electrical energy so far, Wh.</summary>
    public double EnergyWh(long ms) => WattMs(ms) / 3_600_000;

    /// <summary>Time so far that it was on with less than its minimum flow, ms.</summary>
    public long DeadheadMs(long ms) => _deadheadBefore + (_deadheaded ? ms - _startMs : 0);

    /// <summary>Time so far that it was on with no flow at all, ms.</summary>
    public long ShutMs(long ms) => _shutBefore + (_shut ? ms - _startMs : 0);

    /// <summary>Separate stretches of that so far.</summary>
    public int Stretches(long ms) => _stretchesBefore + (_deadheaded && !_countedStretch && ms > _startMs ? 1 : 0);

    private double WattMs(long ms) => _wattMsBefore + _powerW * (ms - _startMs);
}
