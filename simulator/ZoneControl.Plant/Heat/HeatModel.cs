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

    private readonly HeatDescription _heat;
    private readonly HeatBodies _bodies;
    private readonly Thermostat[] _thermostats;
    private readonly HeatSource _source;
    private readonly RoomSums[] _rooms;
    private readonly long[] _lookMs;

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
        (_heat, _horizonMs) = (heat, horizonMs);
        _thermostats = [.. heat.Rooms.Select(room => new Thermostat(room.Thermostat))];
        _rooms = [.. heat.Rooms.Select(_ => new RoomSums())];
        _lookMs = new long[heat.Rooms.Count];
        _source = new HeatSource(heat.Source);
        _source.Outdoor(outdoorC);
        _bodies = new HeatBodies(plant, heat, _source, outdoorC);
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
    public double OutdoorC => _bodies.OutdoorC;

    /// <summary>Water temperature of source and tank, which is that of the supply, °C; as of the last change before now.</summary>
    public double SourceC => _bodies.SourceC;

    /// <summary>What each room went through so far.</summary>
    public IReadOnlyList<RoomSums> Rooms => _rooms;

    /// <summary>Where heat came from and went, up to now.</summary>
    public HeatSums Sums()
    {
        HeatSums sums = _bodies.Sums(NowMs);
        Plan();
        return sums;
    }

    /// <summary>Temperature of a room now, °C.</summary>
    public double RoomC(int room) => _bodies.RoomC(room, NowMs);

    /// <summary>Temperature of a floor at its tubes' level now, °C.</summary>
    public double FloorC(int room) => _bodies.FloorC(room, NowMs);

    /// <summary>Temperature of the supply water now, °C.</summary>
    public double SupplyC => _bodies.SupplyC(NowMs);

    /// <summary>Surface of a floor now, °C: from its output by EN 1264-2's characteristic.</summary>
    public double FloorSurfaceC(int room) => _bodies.SurfaceC(room, FloorC(room), RoomC(room));

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

        if ((LooksEverySecond || _sourceLookMs <= ms) && _source.Look(_bodies.Joined, ms))
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
        if (_bodies.SetFlows(NowMs, flows) is not { } before)
        {
            return;
        }

        PlanJoined();
        foreach (int room in before)
        {
            if (!_bodies.IsJoined(room))
            {
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
        if (_source.Look(_bodies.Joined, NowMs))
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
        _source.Outdoor(celsius);
        _bodies.SetOutdoor(NowMs, celsius);
        Plan();
    }

    private void LookAtRoom(long ms, int room)
    {
        (RcRun run, int body) = _bodies.RunOf(room);
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
        _bodies.Rejoin(ms);
        PlanJoined();
    }

    private void Plan()
    {
        PlanJoined();
        for (int i = 0; i < _lookMs.Length; i++)
        {
            if (!_bodies.IsJoined(i))
            {
                PlanRoom(i);
            }
        }

        FindNext();
    }

    private void PlanJoined()
    {
        PlanSource();
        foreach (int room in _bodies.JoinedRooms)
        {
            PlanRoom(room);
        }
    }

    private void PlanSource()
    {
        if (!LooksEverySecond)
        {
            _sourceLookMs = _source.NextChange(_bodies.Joined, NowMs, LooksUntilMs);
        }
    }

    private void PlanRoom(int room)
    {
        if (LooksEverySecond)
        {
            return;
        }

        (RcRun run, int body) = _bodies.RunOf(room);
        _lookMs[room] = _thermostats[room].NextChange(run, body, NowMs, LooksUntilMs);
    }

    // At the very moment at which the weather changes, looks come first.
    private long LooksUntilMs => _horizonMs + 1;

    private void FindNext()
    {
        _nextLookMs = _sourceLookMs;
        foreach (long look in _lookMs)
        {
            _nextLookMs = Math.Min(_nextLookMs, look);
        }
    }

    private void Sample(long ms)
    {
        NowMs = ms;
        for (int i = 0; i < _rooms.Length; i++)
        {
            RoomSums sums = _rooms[i];
            double room = RoomC(i);
            double floor = FloorC(i);
            double surface = _bodies.SurfaceC(i, floor, room);
            ThermostatDescription thermostat = _heat.Rooms[i].Thermostat;
            double off = room - thermostat.SetC;
            double slack = thermostat.DifferentialK / 2 + RoomSums.SlackK;
            sums.UnderKh += Math.Max(0, -off - slack) * SampleH;
            sums.OverKh += Math.Max(0, off - slack) * SampleH;
            sums.ColdestC = Math.Min(sums.ColdestC, room);
            sums.WarmestC = Math.Max(sums.WarmestC, room);
            sums.WarmestFloorC = Math.Max(sums.WarmestFloorC, surface);
            sums.FloorTooWarmH += surface > FloorOutput.HighestSurfaceC(_heat.Rooms[i].Floor.Use) ? SampleH : 0;
            sums.FloorJ += _bodies.OutputW(i, floor, room) * SampleMs / 1000;
        }
    }
}
