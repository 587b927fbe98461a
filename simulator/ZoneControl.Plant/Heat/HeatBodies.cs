namespace ZoneControl.Plant.Heat;

/// <summary>
/// The masses of a house, each at one temperature: source water, floors, rooms. Those that flowing water joins are one network,
/// every other room is one by itself; between two changes each goes on in closed form (<see cref="RcRun"/>).
/// </summary>
internal sealed class HeatBodies
{
    private readonly PlantDescription _plant;
    private readonly HeatDescription _heat;
    private readonly HeatSource _source;
    private readonly Liquid _liquid;
    private readonly double _conductivity;
    private readonly double _sourceCapacity;
    private readonly HeatPattern _still;
    private readonly List<HeatPattern?> _patterns = [];
    private readonly LoneRoom[] _lone;
    private readonly int[] _body; // of a room's floor in the joined network; -1 while it is alone
    private readonly double[] _celsius;
    private readonly double[] _watts;
    private readonly double[] _floorC; // at the last change, as the next
    private readonly double[] _roomC;
    private readonly HeatSums _sums = new();
    private readonly double _storedAtStart;

    private HeatPattern _pattern;
    private bool _sourceWasOn;

    /// <summary>All at their temperatures of the start, with nothing flowing.</summary>
    public HeatBodies(PlantDescription plant, HeatDescription heat, HeatSource source, double outdoorC)
    {
        (_plant, _heat, _source, OutdoorC) = (plant, heat, source, outdoorC);
        _liquid = new Liquid(plant.WaterC, plant.GlycolShare);
        _conductivity = LiquidConductivity.WPerMK(plant.WaterC, plant.GlycolShare);
        _sourceCapacity = _liquid.Density * _liquid.HeatCapacity * (heat.Source.WaterM3 + heat.Source.TankM3);
        int rooms = heat.Rooms.Count;
        _body = new int[rooms];
        Array.Fill(_body, -1);
        _celsius = new double[1 + 2 * rooms];
        _watts = new double[1 + 2 * rooms];
        _floorC = [.. heat.Rooms.Select(room => room.StartC)];
        _roomC = [.. heat.Rooms.Select(room => room.StartC)];
        _lone = [.. heat.Rooms.Select(room => new LoneRoom(room))];
        Joined = new RcRun(1 + 2 * rooms);
        SourceC = heat.Source.StartC;
        _pattern = _still = new HeatPattern(plant, heat, FlowPattern.Still, _liquid, _conductivity, _sourceCapacity);
        _storedAtStart = Stored();
        BeginJoined(0);
        for (int i = 0; i < rooms; i++)
        {
            BeginLone(0, i);
        }
    }

    /// <summary>The joined network since its last change; body 0 is the source's water.</summary>
    public RcRun Joined { get; }

    /// <summary>Rooms that are part of it.</summary>
    public int[] JoinedRooms => _pattern.Rooms;

    /// <summary>Outdoor temperature, °C.</summary>
    public double OutdoorC { get; private set; }

    /// <summary>Water temperature of source and tank at the last change, °C.</summary>
    public double SourceC { get; private set; }

    /// <summary>Whether a room is part of the joined network.</summary>
    public bool IsJoined(int room) => _body[room] >= 0;

    /// <summary>Where a room's air goes on, and which body it is there.</summary>
    public (RcRun Run, int Body) RunOf(int room) =>
        _body[room] is >= 0 and var body ? (Joined, body + 1) : (_lone[room].Run, LoneRoom.RoomBody);

    /// <summary>Temperature of a room, °C, at a moment since the last change, ms.</summary>
    public double RoomC(int room, long ms)
    {
        (RcRun run, int body) = RunOf(room);
        return run.CelsiusAt(body, ms);
    }

    /// <summary>Temperature of a floor at its tubes' level, °C, at a moment since the last change, ms.</summary>
    public double FloorC(int room, long ms) => _body[room] is >= 0 and var body
        ? Joined.CelsiusAt(body, ms)
        : _lone[room].Run.CelsiusAt(LoneRoom.FloorBody, ms);

    /// <summary>Temperature of the supply water, °C, at a moment since the last change, ms.</summary>
    public double SupplyC(long ms) => Joined.CelsiusAt(0, ms);

    /// <summary>Heat that a floor gives its room, W.</summary>
    public double OutputW(int room, double floorC, double roomC) => _lone[room].Up * (floorC - roomC);

    /// <summary>Surface of a floor, °C: from its output by EN 1264-2's characteristic.</summary>
    public double SurfaceC(int room, double floorC, double roomC) =>
        roomC + FloorOutput.SurfaceAboveRoomK(OutputW(room, floorC, roomC) / _heat.Rooms[room].Floor.AreaM2);

    /// <summary>The source changed.</summary>
    public void Rejoin(long ms)
    {
        EndJoined(ms);
        BeginJoined(ms);
    }

    /// <summary>Water flows otherwise from now on: the rooms that were joined before, or null where nothing changed.</summary>
    public int[]? SetFlows(long ms, FlowPattern flows)
    {
        HeatPattern next = PatternOf(flows);
        if (next == _pattern)
        {
            return null;
        }

        EndJoined(ms);
        foreach (int room in next.Rooms)
        {
            if (_body[room] < 0)
            {
                EndLone(ms, room);
            }
        }

        HeatPattern before = _pattern;
        _pattern = next;
        Array.Fill(_body, -1);
        for (int i = 0; i < next.Rooms.Length; i++)
        {
            _body[next.Rooms[i]] = 1 + 2 * i;
        }

        BeginJoined(ms);
        foreach (int room in before.Rooms)
        {
            if (_body[room] < 0)
            {
                BeginLone(ms, room);
            }
        }

        return before.Rooms;
    }

    /// <summary>The weather changes.</summary>
    public void SetOutdoor(long ms, double celsius)
    {
        EndAll(ms);
        OutdoorC = celsius;
        BeginAll(ms);
    }

    /// <summary>Where heat came from and went, up to a moment.</summary>
    public HeatSums Sums(long ms)
    {
        EndAll(ms);
        BeginAll(ms);
        _sums.StoredJ = Stored() - _storedAtStart;
        return _sums with { };
    }

    private void EndAll(long ms)
    {
        EndJoined(ms);
        for (int i = 0; i < _lone.Length; i++)
        {
            if (_body[i] < 0)
            {
                EndLone(ms, i);
            }
        }
    }

    private void BeginAll(long ms)
    {
        BeginJoined(ms);
        for (int i = 0; i < _lone.Length; i++)
        {
            if (_body[i] < 0)
            {
                BeginLone(ms, i);
            }
        }
    }

    private HeatPattern PatternOf(FlowPattern flows)
    {
        if (flows.Id < 0)
        {
            return _still;
        }

        while (_patterns.Count <= flows.Id)
        {
            _patterns.Add(null);
        }

        return _patterns[flows.Id] ??= new HeatPattern(_plant, _heat, flows, _liquid, _conductivity, _sourceCapacity);
    }

    private void BeginJoined(long ms)
    {
        SourceDescription source = _heat.Source;
        _celsius[0] = SourceC;
        _watts[0] = source.LossWPerK * _plant.PlantRoomC + _pattern.PumpHeatW + (_source.IsOn ? source.PowerW : 0);
        for (int i = 0; i < _pattern.Rooms.Length; i++)
        {
            int room = _pattern.Rooms[i];
            _celsius[1 + 2 * i] = _floorC[room];
            _celsius[2 + 2 * i] = _roomC[room];
            _watts[1 + 2 * i] = _lone[room].Down * _heat.BelowC;
            _watts[2 + 2 * i] = _heat.Rooms[room].LossWPerK * OutdoorC + _heat.Rooms[room].GainsW;
        }

        _sourceWasOn = _source.IsOn;
        Joined.Begin(ms, _pattern.Network, _celsius, _watts);
    }

    private void EndJoined(long ms)
    {
        double seconds = (ms - Joined.StartMs) / 1000.0;
        if (seconds > 0)
        {
            SourceDescription source = _heat.Source;
            _sums.SourceJ += _sourceWasOn ? source.PowerW * seconds : 0;
            _sums.PumpJ += _pattern.PumpHeatW * seconds;
            _sums.PlantRoomJ += Joined.Integral(ms, _pattern.PlantRoomLoss) - source.LossWPerK * _plant.PlantRoomC * seconds;
            _sums.OutdoorsJ += Joined.Integral(ms, _pattern.OutdoorLoss) - _pattern.OutdoorWPerK * OutdoorC * seconds;
            _sums.BelowJ += Joined.Integral(ms, _pattern.BelowLoss) - _pattern.BelowWPerK * _heat.BelowC * seconds;
            foreach (int room in _pattern.Rooms)
            {
                _sums.GainsJ += _heat.Rooms[room].GainsW * seconds;
            }
        }

        Joined.CelsiusAt(ms, _celsius);
        SourceC = _celsius[0];
        for (int i = 0; i < _pattern.Rooms.Length; i++)
        {
            _floorC[_pattern.Rooms[i]] = _celsius[1 + 2 * i];
            _roomC[_pattern.Rooms[i]] = _celsius[2 + 2 * i];
        }
    }

    private void BeginLone(long ms, int room) => _lone[room].Begin(ms, _floorC[room], _roomC[room], OutdoorC, _heat.BelowC);

    private void EndLone(long ms, int room) =>
        (_floorC[room], _roomC[room]) = _lone[room].End(ms, OutdoorC, _heat.BelowC, _sums);

    private double Stored()
    {
        double stored = _sourceCapacity * SourceC;
        for (int i = 0; i < _roomC.Length; i++)
        {
            RoomDescription room = _heat.Rooms[i];
            stored += room.Floor.CapacityJPerK * _floorC[i] + room.CapacityJPerK * _roomC[i];
        }

        return stored;
    }
}
