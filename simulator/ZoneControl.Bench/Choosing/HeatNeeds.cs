using ZoneControl.Bench.Houses;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Choosing;

/// <summary>What a zone's floor has to give on the coldest day.</summary>
/// <param name="AreaM2">Heated floor, m².</param>
/// <param name="FluxWPerM2">Heat to be given, W/m².</param>
/// <param name="RoomC">Room temperature, °C.</param>
/// <param name="Use">What the floor is used for, which limits its surface.</param>
public sealed record ZoneNeed(double AreaM2, double FluxWPerM2, double RoomC, FloorUse Use)
{
    /// <summary>Heat, W.</summary>
    public double HeatW => AreaM2 * FluxWPerM2;

    /// <summary>Mean surface temperature that gives it, °C (EN 1264-2's characteristic).</summary>
    public double SurfaceC => RoomC + FloorOutput.SurfaceAboveRoomK(FluxWPerM2);

    /// <summary>Highest surface temperature allowed for, °C (EN 1264-2).</summary>
    public double LimitC => FloorOutput.HighestSurfaceC(Use);

    /// <summary>Heat at that limit, W/m².</summary>
    public double MostWPerM2 => FloorOutput.OutputWPerM2(LimitC - RoomC);
}

/// <summary>Heat needed by zones and loops on the coldest day.</summary>
public sealed class HeatNeeds
{
    // A loop without a thermostat belongs to no room in the file; it is taken as a usual one (common practice).
    private const double StandingFluxWPerM2 = 50;
    private const double StandingSpacingM = 0.15;

    private readonly CheckAssumptions _assumed;
    private readonly double[] _tubeM;

    /// <summary>The needs of a house.</summary>
    public HeatNeeds(House house, CheckAssumptions assumed)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(assumed);
        _assumed = assumed;
        HouseHeat heat = house.HeatOrCommon();
        ColdestC = heat.Source.Set.Value.ColdOutdoorC;
        _tubeM = [.. house.Zones.Select(zone => zone.Loops.Sum(loop => loop.Tube.LengthM))];
        Zones = [.. heat.Rooms.Select((room, zone) => Zone(room, _tubeM[zone]))];
    }

    /// <summary>Outdoor temperature of the coldest day: the cold end of the heat source's curve, °C.</summary>
    public double ColdestC { get; }

    /// <summary>Each zone's need.</summary>
    public IReadOnlyList<ZoneNeed> Zones { get; }

    /// <summary>Heat that one loop has to give, W: its share of the zone's by its length.</summary>
    /// <param name="zone">Its zone, from 0; -1 for a loop that always stands open.</param>
    /// <param name="lengthM">Its length, m.</param>
    public double LoopHeatW(int zone, double lengthM) => zone >= 0
        ? Zones[zone].HeatW * lengthM / _tubeM[zone]
        : (_assumed.FluxWPerM2 ?? StandingFluxWPerM2) * lengthM * (_assumed.SpacingM ?? StandingSpacingM);

    private ZoneNeed Zone(HouseRoom room, double tubeM)
    {
        double roomC = _assumed.RoomC ?? room.SetC.Value;
        double area = _assumed.SpacingM is { } spacing ? tubeM * spacing : room.AreaM2.Value;
        double flux = _assumed.FluxWPerM2 ?? Math.Max(0, room.LossWPerK.Value * (roomC - ColdestC)) / area;
        return new ZoneNeed(area, flux, roomC, room.Use.Value);
    }
}
