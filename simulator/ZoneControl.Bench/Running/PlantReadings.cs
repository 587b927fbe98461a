using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>Reads off a plant what runs and captures tell of the water.</summary>
internal static class PlantReadings
{
    /// <summary>What it is like now.</summary>
    /// <param name="plant">The plant.</param>
    /// <param name="ms">The moment, ms from the start of what is told.</param>
    /// <param name="wires">The contacts at that moment.</param>
    /// <param name="zones">How many zones it has.</param>
    public static PlantSample Sample(PlantModel plant, long ms, in WireMasks wires, int zones)
    {
        var travel = new double[zones];
        var flow = new double[zones];
        for (int zone = 0; zone < zones; zone++)
        {
            travel[zone] = plant.Travel(zone);
            flow[zone] = plant.ZoneFlowM3s(zone);
        }

        return new PlantSample
        {
            Ms = ms,
            RawCalls = wires.Calls,
            RawSwitches = wires.EndSwitches,
            RawSenses = wires.Senses,
            RawContacts = wires.Contacts,
            Travel = travel,
            ZoneFlowM3s = flow,
            PumpFlowM3s = plant.PumpFlowM3s,
            BypassFlowM3s = plant.BypassFlowM3s,
            PumpHeadM = plant.PumpHeadM,
            TrappedWaterC = plant.TrappedWaterC,
            DeadheadS = plant.DeadheadS,
        };
    }

    /// <summary>What it adds up to.</summary>
    /// <param name="plant">The plant.</param>
    /// <param name="firstCallMs">The first call, ms; null when nobody called.</param>
    /// <param name="valveStrokes">Valves that were energised, counted by who watched them.</param>
    public static RunTotals Totals(PlantModel plant, long? firstCallMs, int valveStrokes) => new()
    {
        DeadheadS = plant.DeadheadS,
        ShutS = plant.ShutS,
        DeadheadEvents = plant.DeadheadEvents,
        HottestTrappedC = plant.HottestTrappedC,
        PumpStarts = plant.PumpStarts,
        PumpRunS = plant.PumpRunS,
        PumpEnergyWh = plant.PumpEnergyWh,
        FirstWarmFlowS = (plant.FirstWarmFlowMs - firstCallMs) / 1000.0,
        ValveStrokes = valveStrokes,
    };
}
