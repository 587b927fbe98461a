namespace ZoneControl.Plant;

/// <summary>
/// A normally closed actuator with its end switch. Energised, it stands still for its opening dead time and then moves
/// evenly to open; released, it stands still for its closing dead time and then moves evenly to shut; a change in mid-stroke
/// turns it round after the other dead time, from where it is.
/// </summary>
/// <remarks>
/// Everything follows in closed form from the last change of input or fault, so it makes no difference how often one looks.
/// A thermal actuator in truth creeps at both ends and remembers its warmth; even motion and whole dead times are
/// common practice for timing.
/// </remarks>
internal sealed class Actuator(ActuatorDescription description)
{
    // Sums of decimal seconds miss whole milliseconds by rounding; a nanosecond is none.
    private const double RoundingMs = 1e-6;

    // Whole milliseconds after the middle of a step must count as after it.
    private const double PositionRounding = 1e-9;

    private ActuatorFault _fault = ActuatorFault.None;
    private bool _energised;

    // The last change: when, and how things stood.
    private long _startMs;
    private double _startTravel;
    private bool _startMade;
    private double _deadLeftMs; // at slowness 1

    // What follows from it, ms after it.
    private double _deadEndMs;
    private double _strokeMs = description.OpenStrokeS * 1000;
    private double _arrivalMs;
    private long _switchMs = PlantModel.Never; // absolute

    /// <summary>The end switch exists.</summary>
    public bool HasSwitch => description.SwitchMakesAt is not null;

    private bool Opens => _energised && !_fault.Dead;

    private double Target => Opens ? 1 : 0;

    /// <summary>Energises or releases it at a time; true when that changed anything.</summary>
    public bool Energise(long ms, bool energised)
    {
        if (energised == _energised)
        {
            return false;
        }

        Change(ms, energised, _fault);
        return true;
    }

    /// <summary>Plants a fault at a time, or repairs one. Progress made so far is kept.</summary>
    public void SetFault(long ms, ActuatorFault fault) => Change(ms, _energised, fault);

    /// <summary>Stem travel, 0 shut to 1 open.</summary>
    public double Travel(long ms)
    {
        double since = ms - _startMs;
        if (_fault.Stuck || since <= _deadEndMs)
        {
            return _startTravel;
        }

        if (since >= _arrivalMs - RoundingMs)
        {
            return Target;
        }

        double moved = (since - _deadEndMs) / _strokeMs;
        return Math.Clamp(Opens ? _startTravel + moved : _startTravel - moved, 0, 1);
    }

    /// <summary>The end switch's contact is made.</summary>
    public bool IsSwitchMade(long ms) => HasSwitch && _fault.Switch switch
    {
        SwitchFault.NeverMakes => false,
        SwitchFault.AlwaysMade => true,
        _ => StemHasMade(ms),
    };

    /// <summary>When the end switch changes next after a time, if nothing else changes; ms.</summary>
    public long NextSwitchChange(long ms) =>
        _fault.Switch == SwitchFault.None && _switchMs > ms ? _switchMs : PlantModel.Never;

    /// <summary>It stands in its dead time or moves, and will arrive somewhere else than it is.</summary>
    public bool IsOnItsWay(long ms) =>
        !_fault.Stuck && _startTravel != Target && ms - _startMs < _arrivalMs - RoundingMs;

    /// <summary>Its stem moves.</summary>
    public bool IsInStroke(long ms) => IsOnItsWay(ms) && ms - _startMs >= _deadEndMs - RoundingMs;

    /// <summary>When it next begins or ends to move, after a time; ms.</summary>
    public long NextEvent(long ms)
    {
        if (!IsOnItsWay(ms))
        {
            return PlantModel.Never;
        }

        long deadEnd = After(_deadEndMs);
        return deadEnd > ms ? deadEnd : After(_arrivalMs);
    }

    /// <summary>Travel to the nearest of so many steps of the stroke; it changes where travel passes the middle of a step.</summary>
    public int Position(long ms, int steps)
    {
        double travel = Travel(ms) * steps;
        return (int)(Opens ? Math.Floor(travel + 0.5 + PositionRounding) : Math.Ceiling(travel - 0.5 - PositionRounding));
    }

    /// <summary>When <see cref="Position"/> changes next after a time, if nothing else changes; ms.</summary>
    public long NextPosition(long ms, int steps)
    {
        if (!IsOnItsWay(ms))
        {
            return PlantModel.Never;
        }

        double middle = (Position(ms, steps) + (Opens ? 0.5 : -0.5)) / steps;
        double way = Opens ? middle - _startTravel : _startTravel - middle;
        return middle is > 0 and < 1 ? Math.Max(ms + 1, After(_deadEndMs + _strokeMs * way)) : PlantModel.Never;
    }

    private bool StemHasMade(long ms) => ms >= _switchMs ? Opens : _startMade;

    private long After(double sinceMs) => _startMs + (long)Math.Ceiling(sinceMs - RoundingMs);

    private void Change(long ms, bool energised, ActuatorFault fault)
    {
        bool opened = Opens;
        _startTravel = Travel(ms);
        _startMade = StemHasMade(ms);
        _deadLeftMs = Math.Max(0, _deadLeftMs - (ms - _startMs) / _fault.Slowness);
        _startMs = ms;
        _energised = energised;
        _fault = fault;
        if (Opens != opened)
        {
            _deadLeftMs = 1000 * (Opens ? description.OpenDeadTimeS : description.CloseDeadTimeS);
        }

        Plan();
    }

    private void Plan()
    {
        _deadEndMs = _deadLeftMs * _fault.Slowness;
        _strokeMs = 1000 * _fault.Slowness * (Opens ? description.OpenStrokeS : description.CloseStrokeS);
        _arrivalMs = _deadEndMs + _strokeMs * Math.Abs(Target - _startTravel);
        _switchMs = PlantModel.Never;
        if (description.SwitchMakesAt is { } makesAt && !_fault.Stuck && Opens != _startMade)
        {
            double way = Opens ? makesAt - _startTravel : _startTravel - (makesAt - description.SwitchHysteresis);
            _switchMs = After(_deadEndMs + _strokeMs * Math.Max(0, way));
        }
    }
}
