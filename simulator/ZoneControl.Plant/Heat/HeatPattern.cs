namespace ZoneControl.Plant.Heat;

/// <summary>
/// What one flow pattern joins: the source's water and the floors that it flows through, as one network. Body 0 is the source's
/// water; the floor of the n-th joined room is body 1 + 2n, the room above it 2 + 2n.
/// </summary>
internal sealed class HeatPattern
{
    public HeatPattern(PlantDescription plant, HeatDescription heat, FlowPattern flows, Liquid liquid, double conductivity, double sourceCapacity)
    {
        double[] floorWPerK = new double[heat.Rooms.Count];
        for (int i = 0; i < flows.LoopFlowM3s.Count; i++)
        {
            LoopDescription loop = plant.Loops[i];
            if (loop.Zone >= 0)
            {
                floorWPerK[loop.Zone] += TubeExchange.WPerK(
                    flows.LoopFlowM3s[i], loop.Tube, heat.Rooms[loop.Zone].Floor, liquid, conductivity);
            }
        }

        Rooms = [.. Enumerable.Range(0, floorWPerK.Length).Where(i => floorWPerK[i] > 0)];
        PumpHeatW = flows.PumpFlowM3s > 0 ? flows.PumpHeatToWaterW : 0;
        int n = 1 + 2 * Rooms.Length;
        double[] capacities = new double[n];
        double[] outward = new double[n];
        double[] outdoors = new double[n];
        double[] below = new double[n];
        double[] plantRoom = new double[n];
        var links = new (int, int, double)[n - 1];
        capacities[0] = sourceCapacity;
        outward[0] = plantRoom[0] = heat.Source.LossWPerK;
        for (int i = 0; i < Rooms.Length; i++)
        {
            RoomDescription room = heat.Rooms[Rooms[i]];
            (int floor, int air) = (1 + 2 * i, 2 + 2 * i);
            capacities[floor] = room.Floor.CapacityJPerK;
            capacities[air] = room.CapacityJPerK;
            outward[floor] = below[floor] = room.Floor.DownWPerK;
            outward[air] = outdoors[air] = room.LossWPerK;
            links[2 * i] = (0, floor, floorWPerK[Rooms[i]]);
            links[2 * i + 1] = (floor, air, room.Floor.UpWPerK);
        }

        Network = new RcNetwork(capacities, links, outward);
        OutdoorLoss = RcRun.ModeWeights(Network, outdoors);
        BelowLoss = RcRun.ModeWeights(Network, below);
        PlantRoomLoss = RcRun.ModeWeights(Network, plantRoom);
        OutdoorWPerK = outdoors.Sum();
        BelowWPerK = below.Sum();
    }

    /// <summary>Rooms whose floors the water flows through, in order.</summary>
    public int[] Rooms { get; }

    public RcNetwork Network { get; }

    /// <summary>Heat that the pump gives to flowing water, W.</summary>
    public double PumpHeatW { get; }

    public double[] OutdoorLoss { get; }

    public double[] BelowLoss { get; }

    public double[] PlantRoomLoss { get; }

    public double OutdoorWPerK { get; }

    public double BelowWPerK { get; }
}
