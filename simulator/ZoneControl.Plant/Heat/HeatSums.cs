namespace ZoneControl.Plant.Heat;

/// <summary>Where heat came from and went, J. Each figure is an integral of its own, so that the balance can fail.</summary>
public sealed record HeatSums
{
    /// <summary>From the heat source, J.</summary>
    public double SourceJ { get; internal set; }

    /// <summary>From the pump into flowing water, J. What a pump gives to water that stands is lost in the plant room.</summary>
    public double PumpJ { get; internal set; }

    /// <summary>Internal gains, J.</summary>
    public double GainsJ { get; internal set; }

    /// <summary>Lost to the outdoors, J.</summary>
    public double OutdoorsJ { get; internal set; }

    /// <summary>Lost below the floors, J.</summary>
    public double BelowJ { get; internal set; }

    /// <summary>Lost by source and tank to the plant room, J.</summary>
    public double PlantRoomJ { get; internal set; }

    /// <summary>More heat stored in water, floors and rooms than at the start, J; negative for less.</summary>
    public double StoredJ { get; internal set; }

    /// <summary>What came in, J.</summary>
    public double InJ => SourceJ + PumpJ + GainsJ;

    /// <summary>Heat in less heat out less heat stored, as a share of the larger of heat in and out; 0 when nothing moved.</summary>
    public double BalanceError
    {
        get
        {
            double outJ = OutdoorsJ + BelowJ + PlantRoomJ;
            // Less than a joule is no heat to have a share of.
            double scale = Math.Max(1, Math.Max(Math.Abs(InJ), Math.Abs(outJ)));
            return (InJ - outJ - StoredJ) / scale;
        }
    }
}

/// <summary>What one room went through.</summary>
public sealed record RoomSums
{
    /// <summary>Slack beyond the thermostat's differential that counts as neither too cold nor too warm, K.</summary>
    public const double SlackK = 0.5;

    /// <summary>K·h below set point less half the differential and the slack; room temperature each quarter of an hour.</summary>
    public double UnderKh { get; internal set; }

    /// <summary>K·h above set point plus half the differential and the slack; likewise.</summary>
    public double OverKh { get; internal set; }

    /// <summary>Coldest room temperature at a quarter of an hour, °C.</summary>
    public double ColdestC { get; internal set; } = double.PositiveInfinity;

    /// <summary>Warmest room temperature at a quarter of an hour, °C.</summary>
    public double WarmestC { get; internal set; } = double.NegativeInfinity;

    /// <summary>Warmest floor surface at a quarter of an hour, °C, by EN 1264-2's characteristic from the floor's output.</summary>
    public double WarmestFloorC { get; internal set; } = double.NegativeInfinity;

    /// <summary>Time with a floor surface above what EN 1264-2 allows for, h.</summary>
    public double FloorTooWarmH { get; internal set; }

    /// <summary>Heat that the floor gave to the room, J; from a quarter of an hour to the next at the rate of its start.</summary>
    public double FloorJ { get; internal set; }

    /// <summary>Times that the thermostat began to ask.</summary>
    public int Calls { get; internal set; }
}
