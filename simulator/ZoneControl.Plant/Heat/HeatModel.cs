namespace ZoneControl.Plant.Heat;

/// <summary>
/// Floors, rooms, thermostats and heat source in time. Between two changes of what drives them everything is in closed form, and
/// rooms without flow go on by themselves; thermostats and source look once a second, and the model knows beforehand at which
/// look something switches.
/// </summary>
/// <remarks>
/// Results do not depend on how time is cut, nor on whether every look is made (<see cref="LooksEverySecond"/>) or only those that
/// were found by <see cref="RcRun.FirstLook"/>. Water properties are those at the plant's water temperature throughout.
/// </remarks>
public sealed class HeatModel
{
    private const long SampleMs = 900_000;
    private const double SampleH = SampleMs / 3_600_000.0;

    private readonly PlantDescription _plant;
    private readonly HeatDescription _heat;
    private readonly Liquid _liquid;
    private readonly double _conductivity;
    private readonly double _sourceCapacity;
    private readonly HeatPattern _still;
    private readonly List<HeatPattern?> _patterns = [];
    private readonly LoneRoom[] _lone;
    private readonly RcRun _joined;
    private readonly int[] _body; // of a room's floor in the joined network; -1 while it is alone
    private readonly double[] _celsius;
    private readonly double[] _watts;
    private readonly double[] _floorC;
    private readonly double[] _roomC;
    private readonly Thermostat[] _thermostats;
    private readonly HeatSource _source;
    private readonly RoomSums[] _rooms;
    private readonly HeatSums _sums = new();
    private readonly double _storedAtStart;
    private readonly long[] _lookMs;

    private HeatPattern _pattern;
    private double _outdoorC;
    private long _sourceLookMs = PlantModel.Never;
    private long _nextLookMs = PlantModel.Never;
    private long _nextSampleMs = SampleMs;
    private long _horizonMs;

    /// <summary>The warm side of a plant at time 0, with nothing flowing and nobody asking yet.</summary>
    /// <param name="plant">The plant; its zones are the rooms.</param>
    /// <param name="heat">The warm side.</param>
    /// <param name="outdoorC">Outdoor temperature from the start on, °C.</param>
    /// <param name="horizonMs">When <see cref="SetOutdoor"/> will be called next, ms: looks are searched until then.</param>
    /// <exception cref="ArgumentException">A value cannot be used; the message names it.</exception>
    public HeatModel(PlantDescription plant, HeatDescription heat, double outdoorC, long horizonMs)
    {
        ArgumentNullException.ThrowIfNull(plant);
        ArgumentNullException.ThrowIfNull(heat);
        HeatCheck.Demand(heat, plant.Actuators.Count);
        (_plant, _heat, _outdoorC, _horizonMs) = (plant, heat, outdoorC, horizonMs);
        _liquid = new Liquid(plant.WaterC, plant.GlycolShare);
        _conductivity = LiquidConductivity.WPerMK(plant.WaterC, plant.GlycolShare);
        SourceDescription source = heat.Source;
        _sourceCapacity = _liquid.Density * _liquid.HeatCapacity * (source.WaterM3 + source.TankM3);
        int rooms = heat.Rooms.Count;
        _body = new int[rooms];
        Array.Fill(_body, -1);
        _celsius = new double[1 + 2 * rooms];
        _watts = new double[1 + 2 * rooms];
        _floorC = [.. heat.Rooms.Select(room => room.StartC)];
        _roomC = [.. heat.Rooms.Select(room => room.StartC)];
        _joined = new RcRun(1 + 2 * rooms);
        _lone = [.. heat.Rooms.Select(room => new LoneRoom(room))];
        _thermostats = [.. heat.Rooms.Select(room => new Thermostat(room.Thermostat))];
        _rooms = [.. heat.Rooms.Select(_ => new RoomSums())];
        _lookMs = new long[rooms];
        _source = new HeatSource(source);
        _source.Outdoor(outdoorC);
        _pattern = _still = new HeatPattern(plant, heat, FlowPattern.Still, _liquid, _conductivity, _sourceCapacity);
        SourceC = source.StartC;
        _storedAtStart = Stored();
        BeginJoined(0);
        for (int i = 0; i < rooms; i++)
        {
            BeginLone(0, i);
        }

        Plan();
    }

    /// <summary>Make every look instead of the ones that change something; slower, for comparison.</summary>
    public bool LooksEverySecond { get; init; }

    /// <summary>Time reached, ms.</summary>
    public long NowMs { get; private set; }

    /// <summary>The next moment at which a thermostat or the source may switch if nothing else changes, ms.</summary>
    public long NextLookMs => LooksEverySecond ? (NowMs / 1000 + 1) * 1000 : _nextLookMs;

    /// <summary>Thermostats that ask for heat, one bit a zone.</summary>
    public int Calls { get; private set; }

    /// <summary>The heat source gives heat.</summary>
    public bool SourceIsOn => _source.IsOn;

    /// <summary>Set point of the source's water for this weather, °C.</summary>
    public double SourceSetC => _source.SetC;

    /// <summary>Runs of the heat source that began so far.</summary>
    public int SourceStarts => _source.Starts;

    /// <summary>Runs that the source's own high limit ended so far.</summary>
    public int SourceLimitTrips => _source.LimitTrips;

    /// <summary>Outdoor temperature, °C.</summary>
    public double OutdoorC => _outdoorC;

    /// <summary>Water temperature of source and tank, which is that of the supply, °C; as of the last change before now.</summary>
    public double SourceC { get; private set; }

    /// <summary>What each room went through so far.</summary>
    public IReadOnlyList<RoomSums> Rooms => _rooms;

    /// <summary>Where heat came from and went, up to now.</summary>
    public HeatSums Sums()
    {
        EndJoined(NowMs);
        BeginJoined(NowMs);
        for (int i = 0; i < _lone.Length; i++)
        {
            if (_body[i] < 0)
            {
                EndLone(NowMs, i);
                BeginLone(NowMs, i);
            }
        }

        _sums.StoredJ = Stored() - _storedAtStart;
        Plan();
        return _sums with { };
    }

    /// <summary>Temperature of a room now, °C.</summary>
    public double RoomC(int room) => _body[room] is >= 0 and var body
        ? _joined.CelsiusAt(body + 1, NowMs)
        : _lone[room].Run.CelsiusAt(LoneRoom.RoomBody, NowMs);

    /// <summary>Temperature of a floor at its tubes' level now, °C.</summary>
    public double FloorC(int room) => _body[room] is >= 0 and var body
        ? _joined.CelsiusAt(body, NowMs)
        : _lone[room].Run.CelsiusAt(LoneRoom.FloorBody, NowMs);

    /// <summary>Temperature of the supply water now, °C.</summary>
    public double SupplyC => _joined.CelsiusAt(0, NowMs);

    /// <summary>Surface of a floor now, °C: from its output by EN 1264-2's characteristic.</summary>
    public double FloorSurfaceC(int room) => Surface(room, FloorC(room), RoomC(room));

    /// <summary>Moves time on to at most the next look, and looks if it is due; true when a thermostat changed its mind.</summary>
    public bool AdvanceTo(long ms)
    {
        while (_nextSampleMs <= ms)
        {
            Sample(_nextSampleMs);
            _nextSampleMs += SampleMs;
        }

        NowMs = ms;
        if (LooksEverySecond ? ms % 1000 != 0 : ms < _nextLookMs)
        {
            return false;
        }

        int calls = Calls;
        for (int i = 0; i < _thermostats.Length; i++)
        {
            if (LooksEverySecond || _lookMs[i] <= ms)
            {
                LookAtRoom(ms, i);
            }
        }

        if ((LooksEverySecond || _sourceLookMs <= ms) && _source.Look(_joined, ms))
        {
            Rejoin(ms);
        }
        else if (!LooksEverySecond && _sourceLookMs <= ms)
        {
            PlanSource();
        }

        FindNext();
        return Calls != calls;
    }

    /// <summary>Water flows otherwise from now on.</summary>
    public void SetFlows(FlowPattern flows)
    {
        ArgumentNullException.ThrowIfNull(flows);
        HeatPattern next = PatternOf(flows);
        if (next == _pattern)
        {
            return;
        }

        EndJoined(NowMs);
        foreach (int room in next.Rooms)
        {
            if (_body[room] < 0)
            {
                EndLone(NowMs, room);
            }
        }

        HeatPattern before = _pattern;
        _pattern = next;
        Array.Fill(_body, -1);
        for (int i = 0; i < next.Rooms.Length; i++)
        {
            _body[next.Rooms[i]] = 1 + 2 * i;
        }

        BeginJoined(NowMs);
        PlanJoined();
        foreach (int room in before.Rooms)
        {
            if (_body[room] < 0)
            {
                BeginLone(NowMs, room);
                PlanRoom(room);
            }
        }

        FindNext();
    }

    /// <summary>Heat is asked of the source from now on, or no longer.</summary>
    public void SetHeatAsked(bool asked)
    {
        if (asked == _source.Asked)
        {
            return;
        }

        _source.Asked = asked;
        if (_source.Look(_joined, NowMs))
        {
            Rejoin(NowMs);
        }
        else
        {
            PlanSource();
        }

        FindNext();
    }

    /// <summary>The weather changes now.</summary>
    /// <param name="celsius">Outdoor temperature, °C.</param>
    /// <param name="horizonMs">When it will change next, ms.</param>
    public void SetOutdoor(double celsius, long horizonMs)
    {
        _horizonMs = horizonMs;
        EndJoined(NowMs);
        for (int i = 0; i < _lone.Length; i++)
        {
            if (_body[i] < 0)
            {
                EndLone(NowMs, i);
            }
        }

        _outdoorC = celsius;
        _source.Outdoor(celsius);
        BeginJoined(NowMs);
        for (int i = 0; i < _lone.Length; i++)
        {
            if (_body[i] < 0)
            {
                BeginLone(NowMs, i);
            }
        }

        Plan();
    }

    private void LookAtRoom(long ms, int room)
    {
        bool joined = _body[room] >= 0;
        RcRun run = joined ? _joined : _lone[room].Run;
        int body = joined ? _body[room] + 1 : LoneRoom.RoomBody;
        if (_thermostats[room].Look(run, body, ms))
        {
            bool asks = _thermostats[room].Asks;
            Calls = asks ? Calls | 1 << room : Calls & ~(1 << room);
            _rooms[room].Calls += asks ? 1 : 0;
        }

        PlanRoom(room);
    }

    private void Rejoin(long ms)
    {
        EndJoined(ms);
        BeginJoined(ms);
        PlanJoined();
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

        return _patterns[flows.Id] ??=
            new HeatPattern(_plant, _heat, flows, _liquid, _conductivity, _sourceCapacity);
    }

    private void BeginJoined(long ms)
    {
        _celsius[0] = SourceC;
        _watts[0] = _heat.Source.LossWPerK * _plant.PlantRoomC + _pattern.PumpHeatW + (_source.IsOn ? _heat.Source.PowerW : 0);
        for (int i = 0; i < _pattern.Rooms.Length; i++)
        {
            int room = _pattern.Rooms[i];
            _celsius[1 + 2 * i] = _floorC[room];
            _celsius[2 + 2 * i] = _roomC[room];
            _watts[1 + 2 * i] = _lone[room].Down * _heat.BelowC;
            _watts[2 + 2 * i] = _heat.Rooms[room].LossWPerK * _outdoorC + _heat.Rooms[room].GainsW;
        }

        _sourceWasOn = _source.IsOn;
        _joined.Begin(ms, _pattern.Network, _celsius, _watts);
    }

    private bool _sourceWasOn;

    private void EndJoined(long ms)
    {
        double seconds = (ms - _joined.StartMs) / 1000.0;
        if (seconds > 0)
        {
            _sums.SourceJ += _sourceWasOn ? _heat.Source.PowerW * seconds : 0;
            _sums.PumpJ += _pattern.PumpHeatW * seconds;
            _sums.PlantRoomJ += _joined.Integral(ms, _pattern.PlantRoomLoss) - _heat.Source.LossWPerK * _plant.PlantRoomC * seconds;
            _sums.OutdoorsJ += _joined.Integral(ms, _pattern.OutdoorLoss) - _pattern.OutdoorWPerK * _outdoorC * seconds;
            _sums.BelowJ += _joined.Integral(ms, _pattern.BelowLoss) - _pattern.BelowWPerK * _heat.BelowC * seconds;
            foreach (int room in _pattern.Rooms)
            {
                _sums.GainsJ += _heat.Rooms[room].GainsW * seconds;
            }
        }

        _joined.CelsiusAt(ms, _celsius);
        SourceC = _celsius[0];
        for (int i = 0; i < _pattern.Rooms.Length; i++)
        {
            _floorC[_pattern.Rooms[i]] = _celsius[1 + 2 * i];
            _roomC[_pattern.Rooms[i]] = _celsius[2 + 2 * i];
        }
    }

    private void BeginLone(long ms, int room) => _lone[room].Begin(ms, _floorC[room], _roomC[room], _outdoorC, _heat.BelowC);

    private void EndLone(long ms, int room) =>
        (_floorC[room], _roomC[room]) = _lone[room].End(ms, _outdoorC, _heat.BelowC, _sums);

    private void Plan()
    {
        PlanJoined();
        for (int i = 0; i < _body.Length; i++)
        {
            if (_body[i] < 0)
            {
                PlanRoom(i);
            }
        }

        FindNext();
    }

    private void PlanJoined()
    {
        PlanSource();
        foreach (int room in _pattern.Rooms)
        {
            PlanRoom(room);
        }
    }

    private void PlanSource()
    {
        if (!LooksEverySecond)
        {
            _sourceLookMs = _source.NextChange(_joined, NowMs, _horizonMs);
        }
    }

    private void PlanRoom(int room)
    {
        if (LooksEverySecond)
        {
            return;
        }

        int body = _body[room];
        _lookMs[room] = body >= 0
            ? _thermostats[room].NextChange(_joined, body + 1, NowMs, _horizonMs)
            : _thermostats[room].NextChange(_lone[room].Run, LoneRoom.RoomBody, NowMs, _horizonMs);
    }

    private void FindNext()
    {
        _nextLookMs = _sourceLookMs;
        foreach (long look in _lookMs)
        {
            _nextLookMs = Math.Min(_nextLookMs, look);
        }
    }

    private double Surface(int room, double floorC, double roomC)
    {
        FloorDescription floor = _heat.Rooms[room].Floor;
        return roomC + FloorOutput.SurfaceAboveRoomK(_lone[room].Up * (floorC - roomC) / floor.AreaM2);
    }

    private void Sample(long ms)
    {
        NowMs = ms;
        for (int i = 0; i < _rooms.Length; i++)
        {
            RoomSums sums = _rooms[i];
            double room = RoomC(i);
            double floor = FloorC(i);
            double surface = Surface(i, floor, room);
            ThermostatDescription thermostat = _heat.Rooms[i].Thermostat;
            double off = room - thermostat.SetC;
            double slack = thermostat.DifferentialK / 2 + RoomSums.SlackK;
            sums.UnderKh += Math.Max(0, -off - slack) * SampleH;
            sums.OverKh += Math.Max(0, off - slack) * SampleH;
            sums.ColdestC = Math.Min(sums.ColdestC, room);
            sums.WarmestC = Math.Max(sums.WarmestC, room);
            sums.WarmestFloorC = Math.Max(sums.WarmestFloorC, surface);
            sums.FloorTooWarmH += surface > FloorOutput.HighestSurfaceC(_heat.Rooms[i].Floor.Use) ? SampleH : 0;
            sums.FloorJ += _lone[i].Up * (floor - room) * SampleMs / 1000;
        }
    }

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
