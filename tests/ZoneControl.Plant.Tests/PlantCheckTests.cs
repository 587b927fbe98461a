namespace ZoneControl.Plant.Tests;

public class PlantCheckTests
{
    public static TheoryData<string, PlantDescription> Wrong => new()
    {
        { "WaterC is 100; expected more than 0 and less than 100 °C", Houses.Small with { WaterC = 100 } },
        { "PlantRoomC is NaN; expected at least -20 and at most 60", Houses.Small with { PlantRoomC = double.NaN } },
        { "Rules.Gravity is 0", Houses.Small with { Rules = new() { Gravity = 0 } } },
        { "Rules.KinematicViscosity is -1", Houses.Small with { Rules = new() { KinematicViscosity = -1 } } },
        { "Rules.Friction is 7; expected one of Colebrook, SwameeJainDunlop",
            Houses.Small with { Rules = new() { Friction = (FrictionLaw)7 } } },
        { "Mains.LengthM is -8; expected at least 0", Houses.Small with { Mains = Houses.Small.Mains with { LengthM = -8 } } },
        { "Mains.InsideDiameterM is 0", Houses.Small with { Mains = Houses.Small.Mains with { InsideDiameterM = 0 } } },
        { "Mains.RoughnessM is 0.002; expected between 0 and 0.05 of the inside diameter (0.02 m)",
            Houses.Small with { Mains = Houses.Small.Mains with { RoughnessM = 0.002 } } },
        { "Mains.FittingsK is Infinity",
            Houses.Small with { Mains = Houses.Small.Mains with { FittingsK = double.PositiveInfinity } } },
        { "Pump.PowerW is -1", Pump(Houses.Pump with { PowerW = -1 }) },
        { "Pump.MinimumFlowM3s is 0; expected more than 0", Pump(Houses.Pump with { MinimumFlowM3s = 0 }) },
        { "Pump.CasingWaterM3 is 0", Pump(Houses.Pump with { CasingWaterM3 = 0 }) },
        { "Pump.CasingIronKg is -1", Pump(Houses.Pump with { CasingIronKg = -1 }) },
        { "Pump.CasingLossWPerK is -1", Pump(Houses.Pump with { CasingLossWPerK = -1 }) },
        { "Pump.Curve[1].HeadM is 7 after 6; expected head never to rise",
            Pump(Houses.Pump with { Curve = [new(0, 6), new(1e-4, 7), new(2e-4, 0)] }) },
        { "Manifolds has no entry", Houses.Small with { Manifolds = [] } },
        { "Loops has no entry", Houses.Small with { Loops = [] } },
        { "Manifolds[0].Branch.LengthM is -1",
            Houses.Small with { Manifolds = [new("only", new PipeDescription(-1, 0.02, 0, 0))] } },
        { "Actuators has 32 entries; expected at most 31",
            Houses.Small with { Actuators = [.. Enumerable.Repeat(Houses.TwoWire, 32)] } },
        { "Actuators[0].OpenDeadTimeS is -1", Actuator(Houses.TwoWire with { OpenDeadTimeS = -1 }) },
        { "Actuators[0].OpenStrokeS is 0", Actuator(Houses.TwoWire with { OpenStrokeS = 0 }) },
        { "Actuators[0].CloseDeadTimeS is NaN", Actuator(Houses.TwoWire with { CloseDeadTimeS = double.NaN }) },
        { "Actuators[0].CloseStrokeS is -5", Actuator(Houses.TwoWire with { CloseStrokeS = -5 }) },
        { "Actuators[0].SwitchMakesAt is 1.2", Actuator(Houses.TwoWire with { SwitchMakesAt = 1.2 }) },
        { "Actuators[0].SwitchHysteresis is 0.3; expected between 0 and SwitchMakesAt (0.2)",
            Actuator(Houses.TwoWire with { SwitchMakesAt = 0.2, SwitchHysteresis = 0.3 }) },
        { "Loops[0].Zone is 2; expected one of 2 zones", Loop(Houses.Loop(2, 0, 60)) },
        { "Loops[0].Manifold is 1; expected one of 1 manifolds", Loop(Houses.Loop(0, 1, 60)) },
        { "Loops[0].Tube.LengthM is -60", Loop(Houses.Loop(0, 0, -60)) },
        { "Loops[0].ValveKvs is 0; expected at least 0.001", Loop(Houses.Loop(0, 0, 60) with { ValveKvs = 0 }) },
        { "Loops[0] resists nothing",
            Loop(new LoopDescription(0, 0, new PipeDescription(0, 0.012, 0, 0), double.PositiveInfinity)) },
        { "GlycolShare is 0.7; expected between 0 and 0.6", Houses.Small with { GlycolShare = 0.7 } },
        { "GlycolShare is NaN", Houses.Small with { GlycolShare = double.NaN } },
        { "WaterC is -13; expected more than -12.8 °C, where a share of 0.3 glycol begins to freeze",
            Houses.Small with { GlycolShare = 0.3, WaterC = -13 } },
        { "WaterC is -1; expected more than 0", Houses.Small with { WaterC = -1 } },
        { "HeatExchangerKv is 0; expected at least 0.001", Houses.Small with { HeatExchangerKv = 0 } },
        { "FixedBypassKv is -1", Houses.Small with { FixedBypassKv = -1 } },
        { "Bypass is a spring and Pump.Regulation is in proportion to flow: together they may balance at more than one flow",
            Pump(Houses.Pump with { Regulation = new(3) { HeadAtNoFlowM = 1 } }) with { Bypass = new(20_000, 10_000, 1) } },
        { "Pump.Speed is 2", Pump(Houses.Pump with { Speed = 2 }) },
        { "Pump.Speed is 1.5 on a curve from 60 m; expected a head at no flow of at most 100 m at that speed",
            Pump(Houses.Pump with { Speed = 1.5, Curve = [new(0, 60), new(1e-3, 0)] }) },
        { "Pump.HeatToWaterShare is 1.1", Pump(Houses.Pump with { HeatToWaterShare = 1.1 }) },
        { "Pump.Regulation.SetHeadM is 6; expected more than 0 and less than 6 m, the head at no flow",
            Pump(Houses.Pump with { Regulation = new(6) }) },
        { "Pump.Regulation.HeadAtNoFlowM is 4; expected more than 0 and at most 3 m, the set head",
            Pump(Houses.Pump with { Regulation = new(3) { HeadAtNoFlowM = 4 } }) },
        { "Pump.Regulation.LowestSpeed is 1.1", Pump(Houses.Pump with { Regulation = new(3) { LowestSpeed = 1.1 } }) },
        { "Pump.PowerByFlow has 1 points; expected 2 to 100", Pump(Houses.Pump with { PowerByFlow = [new(0, 20)] }) },
        { "Pump.PowerByFlow[0].FlowM3s is 0.1; expected 0",
            Pump(Houses.Pump with { PowerByFlow = [new(0.1, 20), new(0.2, 30)] }) },
        { "Pump.PowerByFlow[1].FlowM3s is 0 after 0; expected flow to rise",
            Pump(Houses.Pump with { PowerByFlow = [new(0, 20), new(0, 30)] }) },
        { "Pump.PowerByFlow[1].PowerW is 10; expected at least the 17.7 W that the water gets at that flow",
            Pump(Houses.Pump with { PowerByFlow = [new(0, 20), new(0.4e-3, 10)] }) },
        { "Loops[0].ValveTable has 1 points; expected 2 to 100", Table(new ValvePoint(0, 0)) },
        { "Loops[0].ValveTable goes from (0, 0.1) to (1, 1); expected from (0, 0), shut, to (1, 1), open",
            Table(new(0, 0.1), new(1, 1)) },
        { "Loops[0].ValveTable[2].Opening is 0.4 after 0.5; expected opening to rise with travel, without a kink back",
            Table(new(0, 0), new(0.3, 0.5), new(0.6, 0.4), new(1, 1)) },
        { "Loops[0].ValveTable[2].Travel is 0.3 after 0.3; expected travel to rise",
            Table(new(0, 0), new(0.3, 0.5), new(0.3, 0.6), new(1, 1)) },
        { "Loops[0].Balancing.Table has 0 points", Loop(Houses.Loop(0, 0, 60) with { Balancing = new(1, []) }) },
        { "Loops[0].Balancing.Table[0].Kv is 0",
            Loop(Houses.Loop(0, 0, 60) with { Balancing = BalancingValveDescription.AtKv(0) }) },
        { "Loops[0].Balancing.Table[1] is (2, 0.3) after (1, 0.4); expected setting and Kv to rise",
            Loop(Houses.Loop(0, 0, 60) with { Balancing = new(1, [new(1, 0.4), new(2, 0.3)]) }) },
        { "Manifolds[0].Balancing.Setting is 3; expected a setting of its table, 1 to 2",
            Houses.Small with { Manifolds = [new("only", null) { Balancing = new(3, [new(1, 0.4), new(2, 0.6)]) }] } },
        { "Bypass.OpeningPa is -1", Houses.Small with { Bypass = new(-1, 1000, 1) } },
        { "Bypass.BandPa is 0", Houses.Small with { Bypass = new(1000, 0, 1) } },
        { "Bypass.Kvs is 0", Houses.Small with { Bypass = new(1000, 1000, 0) } },
    };

    [Theory]
    [MemberData(nameof(Wrong), DisableDiscoveryEnumeration = true)]
    public void A_value_that_cannot_be_is_refused_by_name(string message, PlantDescription description)
    {
        var refusal = Assert.Throws<ArgumentException>(() => new PlantModel(description));
        Assert.Contains(message, refusal.Message, StringComparison.Ordinal);
        Assert.Single(PlantCheck.Mistakes(description));
    }

    [Fact]
    public void All_mistakes_are_told_at_once()
    {
        PlantDescription description = Houses.Small with { WaterC = -1, PlantRoomC = 99, Loops = [] };
        Assert.Equal(3, PlantCheck.Mistakes(description).Count);
        string message = Assert.Throws<ArgumentException>(() => new PlantModel(description)).Message;
        Assert.Contains("WaterC", message, StringComparison.Ordinal);
        Assert.Contains("PlantRoomC", message, StringComparison.Ordinal);
        Assert.Contains("Loops", message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sound_description_has_no_mistakes() => Assert.Empty(PlantCheck.Mistakes(Houses.Small));

    private static PlantDescription Pump(PumpDescription pump) => Houses.Small with { Pump = pump };

    private static PlantDescription Table(params ValvePoint[] table) => Loop(Houses.Loop(0, 0, 60) with { ValveTable = table });

    private static PlantDescription Actuator(ActuatorDescription actuator) =>
        Houses.Small with { Actuators = [actuator, Houses.FourWire] };

    private static PlantDescription Loop(LoopDescription loop) => Houses.Small with { Loops = [loop, Houses.Loop(1, 0, 90)] };
}
