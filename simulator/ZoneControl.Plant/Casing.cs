namespace ZoneControl.Plant;

/// <summary>
/// The water in the pump's casing, with the casing's iron at the same temperature: warmed by the pump's power, cooled by the
/// plant room, flushed by what flows through. C·dT/dt = P − UA·(T − room) − ρ·cp·Q·(T − water), solved exactly while
/// power and flow stay; with flow the time constant comes down to about the residence time.
/// </summary>
/// <remarks>
/// What of the electrical power goes into the water (<see cref="Circulator.HeatToWaterW"/>; all of it unless described
/// otherwise) is taken to end in the casing's: an upper bound, since what moves the water warms it along the circuit. The
/// liquid's ρ·cp is that at the circuit's temperature (from 20 to 60 °C it falls by 1.5 %). Nothing boils in this model: above
/// about 100 °C at atmospheric pressure, 120 °C at 1 bar above it (IAPWS-IF97), a real casing may flash to steam, and a
/// temperature shown beyond that only says how much heat had nowhere to go.
/// </remarks>
internal sealed class Casing
{
    /// <summary>Heat capacity of iron, J/(kg K); common engineering tables.</summary>
    public const double IronHeatCapacity = 460;

    private readonly double _capacity; // J/K
    private readonly double _heatPerM3; // J/(m³ K)
    private readonly double _loss; // W/K
    private readonly Circulator _pump;
    private readonly double _waterC;
    private readonly double _roomC;

    private long _startMs;
    private double _startC;
    private double _hottestBefore;
    private double _startRate; // K/s
    private double _perSecond; // 1/s

    public Casing(PlantDescription description)
    {
        PumpDescription pump = description.Pump;
        _waterC = description.WaterC;
        _roomC = description.PlantRoomC;
        _loss = pump.CasingLossWPerK;
        var liquid = new Liquid(_waterC, description.GlycolShare);
        _heatPerM3 = liquid.Density * liquid.HeatCapacity;
        _pump = new Circulator(pump, liquid.Density * description.Rules.Gravity);
        _capacity = _heatPerM3 * pump.CasingWaterM3 + IronHeatCapacity * pump.CasingIronKg;
        _startC = _waterC;
        _hottestBefore = _waterC;
        Begin(0, pumpOn: false, flowM3s: 0);
    }

    /// <summary>From this time on the pump is on or off and passes that flow, m³/s.</summary>
    public void Begin(long ms, bool pumpOn, double flowM3s)
    {
        (_hottestBefore, _startC) = (HottestC(ms), TemperatureC(ms));
        _startMs = ms;
        double flush = _heatPerM3 * flowM3s;
        double heat = pumpOn ? _pump.HeatToWaterW(flowM3s) : 0;
        _startRate = (heat - _loss * (_startC - _roomC) - flush * (_startC - _waterC)) / _capacity;
        _perSecond = (_loss + flush) / _capacity;
    }

    /// <summary>°C.</summary>
    public double TemperatureC(long ms)
    {
        double seconds = (ms - _startMs) / 1000.0;
        return _startC + _startRate * seconds * Fading(_perSecond * seconds);
    }

    /// <summary>Hottest so far, °C. Between two changes temperature only rises or only falls, so the ends say it.</summary>
    public double HottestC(long ms) => Math.Max(_hottestBefore, TemperatureC(ms));

    /// <summary>
    /// Seconds until it has reached a temperature (°C) if nothing changes; 0 when it has, null when it never will.
    /// </summary>
    public double? SecondsTo(long ms, double celsius)
    {
        double gap = celsius - TemperatureC(ms);
        if (gap <= 0)
        {
            return 0;
        }

        // T(t) = T + rate/k · (1 − e^−kt), turned round.
        double rate = RateKPerS(ms);
        double part = gap * _perSecond / rate;
        return rate <= 0 || part >= 1 ? null
            : part < 1e-9 ? gap / rate
            : -Math.Log(1 - part) / _perSecond;
    }

    /// <summary>How fast it changes, K/s.</summary>
    public double RateKPerS(long ms) => _startRate * Math.Exp(-_perSecond * (ms - _startMs) / 1000.0);

    /// <summary>(1 − e^−z)/z: 1 at 0, where the plain form would divide rounding by rounding.</summary>
    private static double Fading(double z) => z < 1e-5 ? 1 - z / 2 + z * z / 6 : (1 - Math.Exp(-z)) / z;
}
