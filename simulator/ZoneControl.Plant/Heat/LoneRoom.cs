namespace ZoneControl.Plant.Heat;

/// <summary>A floor and its room while no water flows in it: two bodies that nothing else moves but the weather.</summary>
internal sealed class LoneRoom
{
    public const int FloorBody = 0;
    public const int RoomBody = 1;

    private readonly RcNetwork _network;
    private readonly double _loss;
    private readonly double _gains;
    private readonly double[] _outdoorLoss;
    private readonly double[] _belowLoss;

    public LoneRoom(RoomDescription room)
    {
        (Down, Up, _loss, _gains) = (room.Floor.DownWPerK, room.Floor.UpWPerK, room.LossWPerK, room.GainsW);
        _network = new RcNetwork([room.Floor.CapacityJPerK, room.CapacityJPerK], [(FloorBody, RoomBody, Up)], [Down, _loss]);
        _outdoorLoss = RcRun.ModeWeights(_network, [0, _loss]);
        _belowLoss = RcRun.ModeWeights(_network, [Down, 0]);
    }

    /// <summary>Conductance downwards, W/K.</summary>
    public double Down { get; }

    /// <summary>Conductance from floor to room, W/K.</summary>
    public double Up { get; }

    public RcRun Run { get; } = new(2);

    public void Begin(long ms, double floorC, double roomC, double outdoorC, double belowC) =>
        Run.Begin(ms, _network, [floorC, roomC], [Down * belowC, _loss * outdoorC + _gains]);

    public (double FloorC, double RoomC) End(long ms, double outdoorC, double belowC, HeatSums sums)
    {
        double seconds = (ms - Run.StartMs) / 1000.0;
        if (seconds > 0)
        {
            sums.GainsJ += _gains * seconds;
            sums.OutdoorsJ += Run.Integral(ms, _outdoorLoss) - _loss * outdoorC * seconds;
            sums.BelowJ += Run.Integral(ms, _belowLoss) - Down * belowC * seconds;
        }

        return (Run.CelsiusAt(FloorBody, ms), Run.CelsiusAt(RoomBody, ms));
    }
}
