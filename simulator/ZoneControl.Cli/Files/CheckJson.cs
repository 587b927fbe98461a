using System.Text.Json.Serialization;
using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Cli.Files;

/// <summary>The result of <c>check</c> for programs. Fields may be added under one schema number; none changes its meaning.</summary>
internal sealed record CheckJson(
    string Schema, string House, bool Faults, IReadOnlyList<FindingJson> Findings, IReadOnlyList<CheckJson.OneSet> Sets,
    IReadOnlyList<CheckJson.OneLoop> Loops, CheckJson.Capacities? Capacity, CheckJson.Assumptions Assumed,
    IReadOnlyList<CheckJson.OneSetting> Measured)
{
    private static readonly CheckJsonContext _json = new(SheetJson.Options);

    /// <summary>The pump's operating point with zones open.</summary>
    public sealed record OneSet(string Name, IReadOnlyList<string> Open, int Capacity, double FlowLPerMin, double HeadM, double BypassLPerMin);

    /// <summary>A loop with all zones open.</summary>
    public sealed record OneLoop(
        string Loop, string Manifold, double LengthM, double FlowLPerMin, double DesignLPerMin, double HeadM, double VelocityMPerS,
        double AloneVelocityMPerS);

    /// <summary>Capacities by flow.</summary>
    public sealed record Capacities(double UnitLPerMin, int? MinimumOpen, IReadOnlyList<OneCapacity> Zones);

    /// <summary>A zone's capacity by flow.</summary>
    public sealed record OneCapacity(string Zone, double FlowLPerMin, int Now, int ByFlow);

    /// <summary>A measured time offered as a setting.</summary>
    public sealed record OneSetting(string Actuator, string Key, string Value, string Now);

    /// <summary>What was taken for granted.</summary>
    public sealed record Assumptions(double WaterDegC, double? RoomDegC, double DropK, double? SpacingM, double? HeatWPerM2, double? DesignLPerMin);

    /// <summary>The result as text that ends with a line feed.</summary>
    public static string From(CheckReport report, IReadOnlyList<MeasuredSetting> measured)
    {
        var house = report.House;
        static double Lpm(double m3s) => SheetJson.Rounded(Bench.Choosing.Measured.LitresPerMinute(m3s));
        return SheetJson.Text(new CheckJson(
            "zonecontrol.check.1",
            house.Name,
            report.HasFaults,
            [.. report.Findings.Select(FindingJson.From)],
            [
                .. report.Sets.Select(set => new OneSet(
                    set.Name,
                    [.. house.Zones.Where((_, zone) => (set.Open.Zones & (1 << zone)) != 0).Select(zone => zone.Name)],
                    set.Capacity, Lpm(set.Open.PumpFlowM3s), SheetJson.Rounded(set.Open.PumpHeadM), Lpm(set.Open.BypassFlowM3s))),
            ],
            [
                .. report.Loops.Select(loop => new OneLoop(
                    loop.Label, loop.Manifold, SheetJson.Rounded(loop.LengthM), Lpm(loop.FlowM3s), Lpm(loop.DesignM3s),
                    SheetJson.Rounded(loop.HeadM), SheetJson.Rounded(loop.VelocityMPerS), SheetJson.Rounded(loop.AloneVelocityMPerS))),
            ],
            report.Capacity is { } capacity
                ? new Capacities(
                    Lpm(capacity.UnitM3s), capacity.MinimumOpen,
                    [.. capacity.Zones.Select(line => new OneCapacity(house.Zones[line.Zone].Name, Lpm(line.FlowM3s), line.Now, line.ByFlow))])
                : null,
            new Assumptions(
                report.Assumed.WaterC, report.Assumed.RoomC, report.Assumed.DropK, report.Assumed.SpacingM, report.Assumed.FluxWPerM2,
                report.Assumed.DesignFlowM3s is { } flow ? Lpm(flow) : null),
            [.. measured.Select(setting => new OneSetting(setting.Actuator, setting.Key, setting.Value, setting.Now))]), _json.CheckJson);
    }
}

/// <summary>How the result is taken apart; made at build time, so that nothing is looked up at run time.</summary>
[JsonSerializable(typeof(CheckJson))]
internal sealed partial class CheckJsonContext : JsonSerializerContext;
