using System.Text.Json.Serialization;
using ZoneControl.Bench.Choosing.Protections;
using ZoneControl.Bench.Winters;

namespace ZoneControl.Cli.Files;

/// <summary>The result of <c>compare</c> for programs. Fields may be added under one schema number; none changes its meaning.</summary>
internal sealed record CompareJson(
    string Schema, string House, string Under, long? Seed, IReadOnlyList<CompareJson.OneProtection> Protections, IReadOnlyList<string> Conclusion)
{
    private static readonly CompareJsonContext _json = new(SheetJson.Options);

    /// <summary>What a protection came to. Money is the owner's.</summary>
    public sealed record OneProtection(
        string Name, double DeadheadS, double ShutS, int DeadheadEvents, double HottestTrappedDegC, int PumpStarts, double PumpRunH, double PumpEnergyKWh,
        RoomsSum? Rooms, IReadOnlyList<OneTrial> Broken, double? Purchase, double? AYear, double? InAll);

    /// <summary>Rooms over the winter.</summary>
    public sealed record RoomsSum(double TooColdKh, double TooWarmKh, double HeldOpenTooWarmKh, double HeatKWh, IReadOnlyList<OneRoom> Each);

    /// <summary>One room.</summary>
    public sealed record OneRoom(string Zone, double TooColdKh, double TooWarmKh, double ColdestDegC, double WarmestDegC, bool HeldOpen);

    /// <summary>Something broken, or "nothing" for the same days in health.</summary>
    public sealed record OneTrial(string Fault, double DeadheadS, double ShutS, int DeadheadEvents, double HottestTrappedDegC, double TooColdKh);

    /// <summary>The comparison as text that ends with a line feed.</summary>
    public static string From(Comparison comparison, Prices prices, long seed) => SheetJson.Text(new CompareJson(
        "zonecontrol.compare.1", comparison.House.Name, comparison.Under, comparison.Outcomes[0].Winter is null ? null : seed,
        [.. comparison.Outcomes.Select(outcome => One(comparison, outcome, Cost.Of(outcome, prices)))],
        Bench.Choosing.Protections.Conclusion.Of(comparison, prices)), _json.CompareJson);

    private static OneProtection One(Comparison comparison, Outcome o, Cost cost) => new(
        o.Protection.Name, R(o.DeadheadS), R(o.ShutS), o.DeadheadEvents, R(o.HottestTrappedC), o.PumpStarts, R(o.PumpRunH), R(o.PumpEnergyKWh),
        o.Winter is { } winter ? Rooms(comparison, o, winter) : null,
        [
            .. o.Sound is { } sound ? (OneTrial[])[Trial("nothing", sound)] : [],
            .. comparison.Trials.Zip(o.Trials).Where(pair => pair.Second is not null).Select(pair => Trial(pair.First.Name, pair.Second!)),
        ],
        Money(cost.Purchase), Money(cost.AYear), Money(cost.InAll));

    private static OneTrial Trial(string fault, SeasonResult days) =>
        new(fault, R(days.DeadheadS), R(days.ShutS), days.DeadheadEvents, R(days.HottestTrappedC), R(days.UnderKh));

    private static RoomsSum Rooms(Comparison comparison, Outcome o, SeasonResult winter) => new(
        R(winter.UnderKh), R(winter.OverKh), R(o.HeldOverKh), R(winter.HeatKWh),
        [
            .. winter.Rooms.Select((room, zone) => new OneRoom(
                comparison.House.Zones[zone].Name, R(room.UnderKh), R(room.OverKh), R(room.ColdestC), R(room.WarmestC),
                (o.Protection.HeldOpen & (1 << zone)) != 0)),
        ]);

    private static double R(double value) => SheetJson.Rounded(value);

    private static double? Money(double? value) => value is { } v ? Math.Round(v, 2) : null;
}

/// <summary>How a comparison is taken apart; made at build time.</summary>
[JsonSerializable(typeof(CompareJson))]
internal sealed partial class CompareJsonContext : JsonSerializerContext;
