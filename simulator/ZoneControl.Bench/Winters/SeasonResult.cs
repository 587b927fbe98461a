using ZoneControl.Bench.Houses;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Winters;

/// <summary>What a season of one house under one controller added up to.</summary>
public sealed record SeasonResult
{
    /// <summary>The house.</summary>
    public required House House { get; init; }

    /// <summary>Name of what drove valves, pump and heat.</summary>
    public required string ControllerName { get; init; }

    /// <summary>Where the weather came from, in words.</summary>
    public required string WeatherName { get; init; }

    /// <summary>Length, days.</summary>
    public required int Days { get; init; }

    /// <summary>Mean outdoor temperature, °C.</summary>
    public required double MeanOutdoorC { get; init; }

    /// <summary>Coldest hour, °C.</summary>
    public required double ColdestOutdoorC { get; init; }

    /// <summary>Seconds the pump was energised with less than its minimum flow. Flows change in steps of a stroke.</summary>
    public required double DeadheadS { get; init; }

    /// <summary>Seconds of that with every valve shut, so that nothing flowed at all.</summary>
    public required double ShutS { get; init; }

    /// <summary>Separate stretches of deadhead.</summary>
    public required int DeadheadEvents { get; init; }

    /// <summary>Hottest water in the pump's casing, °C; see <see cref="Plant.PlantModel.HottestTrappedC"/>.</summary>
    public required double HottestTrappedC { get; init; }

    /// <summary>Pump starts.</summary>
    public required int PumpStarts { get; init; }

    /// <summary>Hours the pump was on.</summary>
    public required double PumpRunH { get; init; }

    /// <summary>Electrical energy of the pump, kWh.</summary>
    public required double PumpEnergyKWh { get; init; }

    /// <summary>Runs of the heat source.</summary>
    public required int SourceStarts { get; init; }

    /// <summary>Runs that the heat source's own high limit ended.</summary>
    public required int SourceLimitTrips { get; init; }

    /// <summary>Where heat came from and went.</summary>
    public required HeatSums Heat { get; init; }

    /// <summary>What each room went through, in the order of the zones.</summary>
    public required IReadOnlyList<RoomSums> Rooms { get; init; }

    /// <summary>Scans made; with skipping far fewer than there are scan periods.</summary>
    public required long Scans { get; init; }

    /// <summary>Heat given by the source, kWh.</summary>
    public double HeatKWh => Heat.SourceJ / 3.6e6;

    /// <summary>Degree-hours below the rooms' comfort, all rooms together, K·h.</summary>
    public double UnderKh => Rooms.Sum(room => room.UnderKh);

    /// <summary>Degree-hours above the rooms' comfort, all rooms together, K·h.</summary>
    public double OverKh => Rooms.Sum(room => room.OverKh);
}

/// <summary>How a season is run.</summary>
public sealed record SeasonOptions
{
    /// <summary>What holds where nobody says otherwise: 210 days, skipping, no events.</summary>
    public static SeasonOptions Common { get; } = new();

    /// <summary>Length, days; 1 to 3,660.</summary>
    public int Days { get; init; } = 210;

    /// <summary>
    /// Make every scan and every look of the thermostats instead of only those that can change something: some forty times
    /// slower, and the same outputs.
    /// </summary>
    public bool EveryScan { get; init; }

    /// <summary>Steps of a stroke at which flows change, 2 to 31.</summary>
    public int StrokeSteps { get; init; } = HeatedHouse.DefaultStrokeSteps;

    /// <summary>What happens during the season, in order of time. Calls and clock faults are refused: thermostats call here.</summary>
    public IReadOnlyList<Scripts.ScriptEvent> Events { get; init; } = [];

    /// <summary>Told each scan that shows something new; null for nobody.</summary>
    public Action<Running.Frame>? Watch { get; init; }

    /// <summary>Told the state of the house at each whole hour, before the weather changes; null for nobody.</summary>
    public Action<HeatedHouse>? EachHour { get; init; }
}
