using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ZoneControl.Bench.Winters;

namespace ZoneControl.Cli.Files;

/// <summary>The result of <c>winter</c> for programs. Fields may be added under one schema number; none changes its meaning.</summary>
/// <param name="Schema">Name and number of this layout.</param>
/// <param name="House">The house's name.</param>
/// <param name="Days">Length of each winter.</param>
/// <param name="Passed">The verdict: the first controller of every winter never let the pump deadhead.</param>
/// <param name="Winters">The winters.</param>
public sealed record WinterJson(string Schema, string House, int Days, bool Passed, IReadOnlyList<WinterJson.Winter> Winters)
{
    private const string SchemaName = "zonecontrol.winter.1";

    private static readonly WinterJsonContext _json = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>One winter under each controller, the judged one first.</summary>
    public sealed record Winter(string Weather, double MeanOutdoorDegC, double ColdestOutdoorDegC, IReadOnlyList<OneRun> Runs);

    /// <summary>What it added up to. Heat in kWh; shutS is the part of deadheadS with every valve shut; balanceError as a share of the heat that came in.</summary>
    public sealed record OneRun(
        string Controller, double DeadheadS, double ShutS, int DeadheadEvents, double HottestTrappedDegC, int PumpStarts, double PumpRunH,
        double PumpEnergyKWh, double SourceHeatKWh, int SourceStarts, int SourceLimitTrips, double OutdoorLossKWh,
        double BelowLossKWh, double PlantRoomLossKWh, double GainsKWh, double PumpHeatKWh, double StoredKWh, double BalanceError,
        IReadOnlyList<OneRoom> Rooms);

    /// <summary>What a room went through. Degree-hours in K·h beyond half the differential and 0.5 K.</summary>
    public sealed record OneRoom(
        string Zone, double TooColdKh, double TooWarmKh, double ColdestDegC, double WarmestDegC, double WarmestFloorDegC,
        double FloorTooWarmH, double FloorHeatKWh, int Calls);

    /// <summary>The result as text that ends with a line feed.</summary>
    public static string From(IReadOnlyList<IReadOnlyList<SeasonResult>> winters, bool passed)
    {
        ArgumentNullException.ThrowIfNull(winters);
        SeasonResult first = winters[0][0];
        var json = new WinterJson(SchemaName, first.House.Name, first.Days, passed,
            [.. winters.Select(runs => new Winter(runs[0].WeatherName, runs[0].MeanOutdoorC, runs[0].ColdestOutdoorC, [.. runs.Select(One)]))]);
        return JsonSerializer.Serialize(json, _json.WinterJson) + "\n";
    }

    private static OneRun One(SeasonResult run) => new(
        run.ControllerName, run.DeadheadS, run.ShutS, run.DeadheadEvents, run.HottestTrappedC, run.PumpStarts, run.PumpRunH,
        run.PumpEnergyKWh, run.HeatKWh, run.SourceStarts, run.SourceLimitTrips, KWh(run.Heat.OutdoorsJ), KWh(run.Heat.BelowJ),
        KWh(run.Heat.PlantRoomJ), KWh(run.Heat.GainsJ), KWh(run.Heat.PumpJ), KWh(run.Heat.StoredJ), run.Heat.BalanceError,
        [
            .. run.Rooms.Select((room, i) => new OneRoom(
                run.House.Zones[i].Name, room.UnderKh, room.OverKh, room.ColdestC, room.WarmestC, room.WarmestFloorC,
                room.FloorTooWarmH, KWh(room.FloorJ), room.Calls)),
        ]);

    private static double KWh(double joules) => joules / 3.6e6;
}

/// <summary>Serialises without reflection at run time.</summary>
[JsonSerializable(typeof(WinterJson))]
internal sealed partial class WinterJsonContext : JsonSerializerContext;
