using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing;

/// <summary>The pump's operating point with a set of zones fully open.</summary>
/// <param name="Zones">The open zones, one bit each; standing loops and bypasses are there besides.</param>
/// <param name="PumpFlowM3s">Flow through the pump, m³/s.</param>
/// <param name="PumpHeadM">Its head, m.</param>
/// <param name="EndsHeadM">Head across the ends of the mains, where a bypass sits, m.</param>
/// <param name="BypassFlowM3s">Flow through bypasses, m³/s.</param>
public sealed record OperatingPoint(int Zones, double PumpFlowM3s, double PumpHeadM, double EndsHeadM, double BypassFlowM3s);

/// <summary>Flows of a house with zones fully open or fully shut, by the plant's own network.</summary>
public sealed class HouseFlows
{
    private readonly Network _network;
    private readonly double[] _travel;

    /// <summary>The flows of a house with water at a temperature, °C.</summary>
    public HouseFlows(House house, double waterC)
        : this(Describe(house, waterC))
    {
    }

    /// <summary>The flows of a plant.</summary>
    public HouseFlows(PlantDescription plant)
    {
        ArgumentNullException.ThrowIfNull(plant);
        Plant = plant;
        _network = new Network(plant);
        _travel = new double[plant.Actuators.Count];
        Liquid = new Liquid(plant.WaterC, plant.GlycolShare);
    }

    /// <summary>
    /// The flows that count: a bypass that counts for nothing is taken as shut, since a spring may stick, be set anew, or stay
    /// shut.
    /// </summary>
    /// <param name="house">The house.</param>
    /// <param name="waterC">Water temperature, °C.</param>
    public static HouseFlows ThatCount(House house, double waterC)
    {
        ArgumentNullException.ThrowIfNull(house);
        return new HouseFlows(
            house with
            {
                Bypass = house.Bypass is { CountsAs: > 0 } ? house.Bypass : null,
                FixedBypass = house.FixedBypass is { CountsAs: > 0 } ? house.FixedBypass : null,
            },
            waterC);
    }

    /// <summary>What the water flows through.</summary>
    public PlantDescription Plant { get; }

    /// <summary>What flows.</summary>
    public Liquid Liquid { get; }

    /// <summary>Pressure of a metre of what flows, Pa/m.</summary>
    public double PascalPerM => Liquid.Density * Plant.Rules.Gravity;

    /// <summary>The pump with its head by flow.</summary>
    public Circulator Pump => new(Plant.Pump, PascalPerM);

    /// <summary>The pump of a plant.</summary>
    public static Circulator PumpOf(PlantDescription plant)
    {
        ArgumentNullException.ThrowIfNull(plant);
        return new Circulator(plant.Pump, new Liquid(plant.WaterC, plant.GlycolShare).Density * plant.Rules.Gravity);
    }

    /// <summary>Every zone's bit.</summary>
    public int AllZones => (1 << _travel.Length) - 1;

    /// <summary>The plant of a house for such a look at it; the plant room's temperature moves no flow.</summary>
    public static PlantDescription Describe(House house, double waterC) => house.ToPlant(new ScriptConditions(waterC, 20));

    /// <summary>The operating point with these zones open.</summary>
    public OperatingPoint With(int zones)
    {
        for (int zone = 0; zone < _travel.Length; zone++)
            _travel[zone] = (zones >> zone) & 1;
        _network.Solve(_travel);
        return new OperatingPoint(
            zones, _network.PumpFlowM3s, _network.PumpHeadM, _network.HeadAcrossMainsEndsM, _network.BypassFlowM3s);
    }

    /// <summary>Flow of each loop, m³/s, in the plant's order, at the last operating point that was asked for.</summary>
    public double[] LoopFlows() => [.. Enumerable.Range(0, Plant.Loops.Count).Select(_network.LoopFlowM3s)];

    /// <summary>Head lost by the mains with what sits in them, m, at a flow in m³/s.</summary>
    public double MainsHead(double flowM3s) =>
        PathHead.Pipe(Plant.Mains, flowM3s, Plant.Rules, Viscosity)
        + (double.IsFinite(Plant.HeatExchangerKv) ? PathHead.Valve(Plant.HeatExchangerKv, flowM3s, Plant.Rules) : 0);

    /// <summary>Kinematic viscosity in force, m²/s.</summary>
    public double Viscosity => Plant.Rules.KinematicViscosity ?? Liquid.KinematicViscosity;
}
