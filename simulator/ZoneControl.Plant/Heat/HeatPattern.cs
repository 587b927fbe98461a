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
        List<double> capacities = [sourceCapacity];
        List<double> outward = [heat.Source.LossWPerK];
        List<(int, int, double)> links = [];
        List<double> outdoors = [0];
        List<double> below = [0];
        List<double> plantRoom = [heat.Source.LossWPerK];
        foreach (int i in Rooms)
        {
            RoomDescription room = heat.Rooms[i];
            int floor = capacities.Count;
            capacities.AddRange([room.Floor.CapacityJPerK, room.CapacityJPerK]);
            outward.AddRange([room.Floor.DownWPerK, room.LossWPerK]);
            outdoors.AddRange([0, room.LossWPerK]);
            below.AddRange([room.Floor.DownWPerK, 0]);
            plantRoom.AddRange([0, 0]);
            links.Add((0, floor, floorWPerK[i]));
            links.Add((floor, floor + 1, room.Floor.UpWPerK));
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
