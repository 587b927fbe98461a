namespace ZoneControl.Plant;

/// <summary>
/// The circulator as it is set: its head by flow, and the speed and power that this takes. At another speed n (1: the
/// curve's) flow goes with n, head with n² and power with n³: the affinity laws, as in any pump handbook.
/// </summary>
/// <remarks>
/// Regulated, the head is what is asked for, but never more than at full speed nor less than at the lowest speed. Its own
/// reaction time, seconds in a real one, is left out.
/// </remarks>
public sealed class Circulator
{
    private readonly PumpCurve _full;
    private readonly RegulationDescription? _regulation;
    private readonly MonotoneCurve? _power;
    private readonly double _lastPowerFlow;
    private readonly double _plainPower;
    private readonly double _heatShare;
    private readonly double _pascalPerM;
    private readonly double _fullSpeed;
    private readonly double _setFlow;

    /// <summary>A circulator.</summary>
    /// <param name="description">What it is; as <see cref="PlantCheck"/> accepts it.</param>
    /// <param name="pascalPerM">Density of the liquid times gravity, Pa/m.</param>
    public Circulator(PumpDescription description, double pascalPerM)
    {
        _fullSpeed = description.Speed;
        _full = new PumpCurve([.. description.Curve.Select(
            p => new PumpPoint(p.FlowM3s * _fullSpeed, p.HeadM * _fullSpeed * _fullSpeed))]);
        _regulation = description.Regulation;
        _plainPower = description.PowerW;
        _heatShare = description.HeatToWaterShare;
        _pascalPerM = pascalPerM;
        LargestFlowM3s = description.Curve[^1].FlowM3s * _fullSpeed;
        if (description.PowerByFlow is { } power)
        {
            _power = new MonotoneCurve([.. power.Select(p => p.FlowM3s)], [.. power.Select(p => p.PowerW)]);
            _lastPowerFlow = power[^1].FlowM3s;
        }

        if (_regulation is { } set)
        {
            _setFlow = MonotoneRoot.Find(new Below(_full, set.SetHeadM), 0, LargestFlowM3s, LargestFlowM3s / 2, 1e-12, out _);
        }

        MostHeadM = _regulation is null
            ? _full.ShutoffHeadM
            : Math.Max(Math.Min(_regulation.SetHeadM, _full.ShutoffHeadM), Lowest(0, out _));
    }

    /// <summary>Highest head that it gives at any flow, m.</summary>
    public double MostHeadM { get; }

    /// <summary>Flow at which its head at full speed has come down to 0, m³/s.</summary>
    public double LargestFlowM3s { get; }

    /// <summary>Head, m.</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 or more.</param>
    /// <param name="slope">Derivative of head by flow, s/m²; above 0 only under proportional regulation.</param>
    public double Head(double flowM3s, out double slope)
    {
        double head = _full.Head(flowM3s, out slope);
        if (_regulation is null)
        {
            return head;
        }

        double atNoFlow = _regulation.HeadAtNoFlowM ?? _regulation.SetHeadM;
        double rise = _setFlow > 0 ? (_regulation.SetHeadM - atNoFlow) / _setFlow : 0;
        double wanted = atNoFlow + rise * flowM3s;
        if (wanted < head)
        {
            (head, slope) = (wanted, rise);
        }

        double lowest = Lowest(flowM3s, out double lowestSlope);
        if (lowest > head)
        {
            (head, slope) = (lowest, lowestSlope);
        }

        return head;
    }

    /// <summary>Speed at which it gives its head at that flow, of the curve's speed.</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 or more.</param>
    public double Speed(double flowM3s)
    {
        double head = Head(flowM3s, out _);
        if (_regulation is null || head >= _full.Head(flowM3s, out _))
        {
            return _fullSpeed;
        }

        double lowest = _regulation.LowestSpeed / _fullSpeed;
        return _fullSpeed * MonotoneRoot.Find(new AtSpeed(_full, flowM3s, head), lowest, 1, 0.8, 1e-12, out _);
    }

    /// <summary>Electrical power, W.</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 or more.</param>
    public double PowerW(double flowM3s)
    {
        double speed = Speed(flowM3s);
        double atCurveSpeed = _power?.At(Math.Min(flowM3s / speed, _lastPowerFlow), out _) ?? _plainPower;
        return atCurveSpeed * speed * speed * speed;
    }

    /// <summary>Part of that power which ends as heat in the water near the pump and along the circuit, W.</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 or more.</param>
    public double HeatToWaterW(double flowM3s)
    {
        // What moves the water is in it whatever the motor's casing gives to the air.
        double hydraulic = HydraulicW(flowM3s);
        return hydraulic + _heatShare * Math.Max(0, PowerW(flowM3s) - hydraulic);
    }

    /// <summary>Power given to the water as motion, W: density times gravity times flow times head.</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 or more.</param>
    public double HydraulicW(double flowM3s) => _pascalPerM * flowM3s * Head(flowM3s, out _);

    /// <summary>Hydraulic over electrical power, 0 to 1; 0 at no power.</summary>
    /// <param name="flowM3s">Flow, m³/s; 0 or more.</param>
    public double Efficiency(double flowM3s)
    {
        double power = PowerW(flowM3s);
        return power > 0 ? HydraulicW(flowM3s) / power : 0;
    }

    private double Lowest(double flow, out double slope)
    {
        slope = 0;
        double speed = _regulation!.LowestSpeed / _fullSpeed;
        if (speed <= 0)
        {
            return 0;
        }

        double head = _full.Head(flow / speed, out slope);
        slope *= speed;
        return speed * speed * head;
    }

    private readonly struct Below(PumpCurve curve, double head) : IRising
    {
        public double At(double x, out double slope)
        {
            double left = head - curve.Head(x, out slope);
            slope = -slope;
            return left;
        }
    }

    private readonly struct AtSpeed(PumpCurve curve, double flow, double head) : IRising
    {
        public double At(double x, out double slope)
        {
            double unit = x > 0 ? curve.Head(flow / x, out slope) : curve.Head(double.MaxValue, out slope);
            slope = 2 * x * unit - flow * slope;
            return x * x * unit - head;
        }
    }
}
