namespace ZoneControl.Plant;

/// <summary>
/// Water, valves and pump of one house, moved along in virtual time by whoever drives its inputs. Results do not depend on
/// how the time between two input changes is cut into calls of <see cref="AdvanceTo"/>.
/// </summary>
/// <remarks>
/// While the pump runs, flows are solved anew at each change of input or fault, when a valve begins or ends to move, and
/// while one moves at every whole half second of absolute time; in between they stand. Everything else (travel, end switches,
/// casing temperature, counts) follows in closed form from the last such moment, so a still plant costs nothing.
/// </remarks>
public sealed class PlantModel
{
    /// <summary>The time, ms, of a change that never comes.</summary>
    public const long Never = long.MaxValue;

    private const double NoFlowM3s = 1e-9; // a drop a minute: what rounding leaves of shut valves, and no leak is modelled

    private const long GridMs = 500;
    private const double NoticeableKPerS = 0.005;

    private readonly Network _network;
    private readonly Actuator[] _actuators;
    private readonly double[] _travel;
    private readonly Casing _casing;
    private readonly WarmFront _front;
    private readonly PumpRecord _record = new();
    private readonly FlowBook? _book;
    private readonly int[] _positions;
    private readonly int _steps;
    private FlowPattern _pattern = FlowPattern.Still;

    private int _valves;
    private bool _pump;
    private bool _heat;
    private long _nextEventMs = Never;

    /// <summary>Builds the plant at time 0: every valve shut, pump off, casing at the water's temperature.</summary>
    /// <param name="description">What it is made of.</param>
    /// <param name="strokeSteps">
    /// 0 to solve flows every half second of a stroke. For seasons: 2 to 31, so many steps a stroke, at whose middle flows
    /// change; what was solved once is kept. <see cref="FirstWarmFlowMs"/> is not followed then.
    /// </param>
    /// <exception cref="ArgumentException">A value of the description cannot be used; the message names it.</exception>
    public PlantModel(PlantDescription description, int strokeSteps = 0)
    {
        PlantCheck.Demand(description);
        if (strokeSteps is not 0 and (< 2 or > FlowBook.MostSteps))
        {
            throw new ArgumentOutOfRangeException(
                nameof(strokeSteps), strokeSteps, $"expected 0, or 2 to {FlowBook.MostSteps} steps of a stroke");
        }

        Description = description;
        _network = new Network(description);
        _actuators = [.. description.Actuators.Select(a => new Actuator(a))];
        _travel = new double[_actuators.Length];
        _casing = new Casing(description);
        _front = new WarmFront(description);
        _steps = strokeSteps;
        _positions = new int[_actuators.Length];
        _book = strokeSteps > 0 ? new FlowBook(_network, description.Loops.Count, strokeSteps) : null;
    }

    /// <summary>What the plant is made of.</summary>
    public PlantDescription Description { get; }

    /// <summary>Time reached, ms.</summary>
    public long NowMs { get; private set; }

    /// <summary>Heat is asked of the heat source.</summary>
    public bool HeatAsked => _heat;

    /// <summary>When flows next change if the inputs stay, ms; <see cref="Never"/> while they stand.</summary>
    public long NextFlowChangeMs => _nextEventMs;

    /// <summary>The flows at this moment, where strokes are taken in steps; <see cref="FlowPattern.Still"/> otherwise.</summary>
    public FlowPattern Pattern => _pattern;

    /// <summary>Drives the inputs from this moment on: valves energised (one bit a zone), pump on, heat asked for.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A bit is set for a zone that the plant does not have.</exception>
    public void Drive(int valves, bool pump, bool heat)
    {
        if ((valves & ~(int)((1u << _actuators.Length) - 1)) != 0)
        {
            throw new ArgumentOutOfRangeException(
                nameof(valves), valves, $"expected bits for {_actuators.Length} zones only");
        }

        if (valves == _valves && pump == _pump && heat == _heat)
        {
            return;
        }

        (_valves, _pump, _heat) = (valves, pump, heat);
        for (int i = 0; i < _actuators.Length; i++)
        {
            _actuators[i].Energise(NowMs, (valves >> i & 1) != 0);
        }

        Begin(NowMs);
    }

    /// <summary>Plants or repairs a fault of one zone's actuator or switch, from this moment on.</summary>
    /// <exception cref="ArgumentException">
    /// There is no such zone, the slowness is not between 0.1 and 100, or a switch is to fail where none is fitted.
    /// </exception>
    public void SetFault(int zone, ActuatorFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        if (zone < 0 || zone >= _actuators.Length)
        {
            throw new ArgumentOutOfRangeException(
                nameof(zone), zone, $"expected one of {_actuators.Length} zones counted from 0");
        }

        if (!(fault.Slowness is >= 0.1 and <= 100))
        {
            throw new ArgumentOutOfRangeException(
                nameof(fault), fault.Slowness, $"slowness of zone {zone} is expected between 0.1 and 100");
        }

        if (fault.Switch != SwitchFault.None && !_actuators[zone].HasSwitch)
        {
            throw new ArgumentException($"zone {zone} has no end switch that could fail ({fault.Switch})", nameof(fault));
        }

        _actuators[zone].SetFault(NowMs, fault);
        Begin(NowMs);
    }

    /// <summary>Moves time on, ms; never back.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time lies before <see cref="NowMs"/>.</exception>
    public void AdvanceTo(long ms)
    {
        if (ms < NowMs)
        {
            throw new ArgumentOutOfRangeException(nameof(ms), ms, $"time has reached {NowMs} ms and cannot go back");
        }

        while (_nextEventMs <= ms)
        {
            Begin(_nextEventMs);
        }

        NowMs = ms;
    }

    /// <summary>The first time after <see cref="NowMs"/> at which an end switch changes if the inputs stay, ms.</summary>
    public long NextSwitchChangeMs
    {
        get
        {
            long next = Never;
            foreach (Actuator actuator in _actuators)
            {
                next = Math.Min(next, actuator.NextSwitchChange(NowMs));
            }

            return next;
        }
    }

    /// <summary>
    /// A valve moves (or waits out the dead time before it will), or the casing's temperature changes noticeably, by 0.3 K a
    /// minute or more: look again within a second.
    /// </summary>
    public bool IsMoving
    {
        get
        {
            if (Math.Abs(_casing.RateKPerS(NowMs)) >= NoticeableKPerS)
            {
                return true;
            }

            foreach (Actuator actuator in _actuators)
            {
                if (actuator.IsOnItsWay(NowMs))
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>End switches made, one bit a zone.</summary>
    public int EndSwitches
    {
        get
        {
            int made = 0;
            for (int i = 0; i < _actuators.Length; i++)
            {
                made |= _actuators[i].IsSwitchMade(NowMs) ? 1 << i : 0;
            }

            return made;
        }
    }

    /// <summary>Stem travel of a zone's valves, 0 shut to 1 open.</summary>
    public double Travel(int zone) => _actuators[zone].Travel(NowMs);

    /// <summary>Flow of a loop, m³/s.</summary>
    public double LoopFlowM3s(int loop) =>
        _book is null ? _network.LoopFlowM3s(loop) : _pattern == FlowPattern.Still ? 0 : _pattern.LoopFlowM3s[loop];

    /// <summary>Flow of a zone, all its loops together, m³/s.</summary>
    public double ZoneFlowM3s(int zone)
    {
        double sum = 0;
        for (int i = 0; i < Description.Loops.Count; i++)
        {
            sum += Description.Loops[i].Zone == zone ? LoopFlowM3s(i) : 0;
        }

        return sum;
    }

    /// <summary>Flow through the pump, m³/s.</summary>
    public double PumpFlowM3s => _book is null ? _network.PumpFlowM3s : _pattern.PumpFlowM3s;

    /// <summary>Flow through the bypasses together, m³/s.</summary>
    public double BypassFlowM3s => _book is null ? _network.BypassFlowM3s : _pattern.BypassFlowM3s;

    /// <summary>Head of the pump, m; 0 while it is off.</summary>
    public double PumpHeadM => _book is null ? _network.PumpHeadM : _pattern.PumpHeadM;

    /// <summary>
    /// Temperature of the water in the pump's casing, °C. An upper bound, and without boiling: beyond about 100 °C, more
    /// under pressure, a real casing may flash to steam.
    /// </summary>
    public double TrappedWaterC => _casing.TemperatureC(NowMs);

    /// <summary>Hottest <see cref="TrappedWaterC"/> so far, °C.</summary>
    public double HottestTrappedC => _casing.HottestC(NowMs);

    /// <summary>Time so far with the pump energised and less than its minimum flow, s.</summary>
    public double DeadheadS => _record.DeadheadMs(NowMs) / 1000.0;

    /// <summary>Time of that with every way shut, so that nothing flowed at all, s.</summary>
    public double ShutS => _record.ShutMs(NowMs) / 1000.0;

    /// <summary>Separate stretches of deadhead so far.</summary>
    public int DeadheadEvents => _record.Stretches(NowMs);

    /// <summary>Pump starts so far.</summary>
    public int PumpStarts => _record.Starts;

    /// <summary>Time so far that the pump was on, s.</summary>
    public double PumpRunS => _record.RunMs(NowMs) / 1000.0;

    /// <summary>Electrical energy of the pump so far, Wh.</summary>
    public double PumpEnergyWh => _record.EnergyWh(NowMs);

    /// <summary>Electrical power of the pump, W; 0 while it is off.</summary>
    public double PumpPowerW => !_pump ? 0 : _book is null ? _network.Pump.PowerW(PumpFlowM3s) : _pattern.PumpPowerW;

    /// <summary>Speed of the pump, of its curve's; 0 while it is off.</summary>
    public double PumpSpeed => _pump ? _network.Pump.Speed(PumpFlowM3s) : 0;

    /// <summary>Hydraulic over electrical power of the pump, 0 to 1; 0 while it is off or moves nothing.</summary>
    public double PumpEfficiency => _pump ? _network.Pump.Efficiency(PumpFlowM3s) : 0;

    /// <summary>Heat that the pump gives to the water, W.</summary>
    public double PumpHeatToWaterW =>
        !_pump ? 0 : _book is null ? _network.Pump.HeatToWaterW(PumpFlowM3s) : _pattern.PumpHeatToWaterW;

    /// <summary>
    /// Seconds until <see cref="TrappedWaterC"/> has reached a temperature (°C) if everything stays as it is; 0 when it has,
    /// null when it never will. An estimate from below: the heat is an upper bound, and a real casing may flash to
    /// steam, which may harm seals and bearings. It is no measure of how long a pump lasts.
    /// </summary>
    public double? SecondsToTrappedC(double celsius) => _casing.SecondsTo(NowMs, celsius);

    /// <summary>
    /// When warm water first reached a manifold that feeds an open loop: the volume of mains and branch moved while heat
    /// was asked for. ms; null while it has not.
    /// </summary>
    public long? FirstWarmFlowMs => _front.ReachedMs(NowMs);

    /// <summary>Flows change at this moment, for whatever reason: solves them and says when to look again.</summary>
    private void Begin(long ms)
    {
        if (_book is not null)
        {
            BeginPattern(ms);
        }
        else if (_pump)
        {
            for (int i = 0; i < _travel.Length; i++)
            {
                _travel[i] = _actuators[i].Travel(ms);
            }

            _network.Solve(_travel);
        }
        else
        {
            _network.Stop();
        }

        _casing.Begin(ms, _pump, PumpFlowM3s);
        if (_book is null)
        {
            _front.Begin(ms, _heat, _network);
        }

        double flow = PumpFlowM3s;
        _record.Begin(ms, _pump, _pump && flow < Description.Pump.MinimumFlowM3s, _pump && flow < NoFlowM3s, PumpPowerW);
        _nextEventMs = _pump ? NextEvent(ms) : Never;
    }

    private void BeginPattern(long ms)
    {
        if (!_pump)
        {
            _pattern = FlowPattern.Still;
            return;
        }

        for (int i = 0; i < _positions.Length; i++)
        {
            _positions[i] = _actuators[i].Position(ms, _steps);
        }

        _pattern = _book!.At(_positions, _travel);
    }

    private long NextEvent(long ms)
    {
        long next = Never;
        foreach (Actuator actuator in _actuators)
        {
            if (_book is not null)
            {
                next = Math.Min(next, actuator.NextPosition(ms, _steps));
                continue;
            }

            next = Math.Min(next, actuator.NextEvent(ms));
            if (actuator.IsInStroke(ms))
            {
                next = Math.Min(next, (ms / GridMs + 1) * GridMs);
            }
        }

        return next;
    }
}
