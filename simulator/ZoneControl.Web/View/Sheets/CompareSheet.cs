using System.Globalization;
using ZoneControl.Bench.Choosing.Protections;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Winters;

namespace ZoneControl.Web.View.Sheets;

/// <summary>A comparison of protections as a document.</summary>
public static class CompareSheet
{
    /// <summary>The document.</summary>
    public static SheetView From(Comparison comparison, Prices prices)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(prices);
        var sections = new List<SheetSection>
        {
            new("What the numbers say", [.. Conclusion.Of(comparison, prices).Select(words => new SheetText(words))]),
            new("The pump", [Pump(comparison), Picture(comparison)]),
        };
        if (comparison.Outcomes[0].Winter is not null)
            sections.Add(new SheetSection("The rooms", [Rooms(comparison), WinterSheet.Meanings(comparison.House.Units)]));
        if (comparison.Trials.Count > 0)
        {
            sections.Add(new SheetSection("With something broken",
                [Broken(comparison), ColdWhenBroken(comparison), .. NotFelt(comparison), .. comparison.Trials.Select(trial => new SheetText($"{Capital(trial.Name)}: {trial.Explains}"))]));
        }

        if (prices.AreGiven)
            sections.Add(new SheetSection("Costs", [Costs(comparison, prices), new SheetText(Assumptions(comparison, prices))]));
        sections.Add(new SheetSection("What was compared",
            [
                .. comparison.Outcomes.Select(o => new SheetText($"{Capital(o.Protection.Name)}: {o.Protection.Explains}")),
                .. Own(comparison.House).Select(words => new SheetText(words)),
            ]));
        return new SheetView("protections compared", "Which protection does what?", CheckSheet.HouseLine(comparison.House),
            $"The same for each of them: {comparison.Under}. ZC stands for ZoneControl.", sections);
    }

    private static SheetTable Pump(Comparison comparison) => new(
        "Deadhead: the pump is on with less than its minimum flow. No flow: the part of it with every valve shut. Energy is electrical",
        [
            new("protection"), new("deadhead", true), new("no flow", true), new("times", true), new("hottest", true), new("starts", true),
            new("kWh", true),
        ],
        [
            .. comparison.Outcomes.Select(o => (IReadOnlyList<string>)
            [
                o.Protection.Name, Quantity.Duration(o.DeadheadS), Quantity.Duration(o.ShutS), Whole(o.DeadheadEvents),
                Show.Temperature(o.HottestTrappedC, comparison.House.Units), Whole(o.PumpStarts), Number(o.PumpEnergyKWh),
            ]),
        ]);

    private static SheetBars Picture(Comparison comparison) => new("Deadhead",
        [.. comparison.Outcomes.Select(o => new SheetBar(o.Protection.Name, o.DeadheadS / 3600, Quantity.Duration(o.DeadheadS)))]);

    private static SheetTable Rooms(Comparison comparison) => new(
        $"Degree-hours off comfort, all rooms together, {DegreeHours(comparison)}; of the warm ones, those in rooms whose valve is held open; "
            + "and the heat that it took",
        [new("protection"), new("too cold", true), new("too warm", true), new("held open", true), new("warmest", true), new("heat, kWh", true)],
        [
            .. comparison.Outcomes.Select(o => (IReadOnlyList<string>)
            [
                o.Protection.Name, Degrees(o.Winter!.UnderKh, comparison), Degrees(o.Winter.OverKh, comparison),
                o.Protection.HeldOpen == 0 ? "-" : Degrees(o.HeldOverKh, comparison),
                Show.Temperature(o.Winter.Rooms.Max(room => room.WarmestC), comparison.House.Units), Number(o.Winter.HeatKWh),
            ]),
        ]);

    private static SheetTable Broken(Comparison comparison) =>
        Tried(comparison, $"Deadhead in {comparison.TrialsUnder}", days => Quantity.Duration(days.DeadheadS));

    private static SheetTable ColdWhenBroken(Comparison comparison) => Tried(
        comparison, $"Too cold in those days, all rooms together, {DegreeHours(comparison)}", days => Degrees(days.UnderKh, comparison));

    private static SheetTable Tried(Comparison comparison, string caption, Func<SeasonResult, string> text) => new(
        caption,
        [new("protection"), new("nothing broken", true), .. comparison.Trials.Select(trial => new SheetColumn(trial.Name, true))],
        [
            .. comparison.Outcomes.Select(o => (IReadOnlyList<string>)
                [o.Protection.Name, text(o.Sound!), .. o.Trials.Select(trial => trial is null ? "-" : text(trial))]),
        ]);

    private static IEnumerable<SheetText> NotFelt(Comparison comparison) => comparison.Outcomes.Any(o => o.Trials.Any(trial => trial is null))
        ? [new SheetText("-: not felt, since the valve that fails is one that is held open by hand.")]
        : [];

    private static SheetTable Costs(Comparison comparison, Prices prices) => new(
        "In the owner's money",
        [new("protection"), new("purchase", true), new(comparison.IsAYear ? "a year" : "a run", true), new($"{prices.Years} {(comparison.IsAYear ? "years" : "runs")}", true)],
        [
            .. comparison.Outcomes.Select(o =>
            {
                Cost cost = Cost.Of(o, prices);
                return (IReadOnlyList<string>)[o.Protection.Name, Money(cost.Purchase), Money(cost.AYear), Money(cost.InAll)];
            }),
        ]);

    private static string Assumptions(Comparison comparison, Prices prices)
    {
        string energy = string.Join(" and ", new[]
        {
            prices.Electricity is { } e ? $"electricity of the pump at {Price(e)} a kWh" : null,
            prices.Heat is { } h ? $"heat at {Price(h)} a kWh" : null,
        }.OfType<string>());
        string run = comparison.IsAYear ? "A year is one run as above" : "A run is as above, and shorter than the heating of a year";
        return $"{run}{(energy.Length > 0 ? $", {energy}" : "")}. Prices stay, there is no interest, nothing is renewed and no work is "
            + "paid. A cost is left out where a price that it needs is not given.";
    }

    /// <summary>What the house has and a row leaves out unless it names it.</summary>
    private static IEnumerable<string> Own(House house)
    {
        if (house.Bypass is not null || house.FixedBypass is not null)
            yield return "The house's own bypass is in the rows that name a bypass, and in no other unless minimum open counts it.";
        if (house.Pump.Regulation is not null)
            yield return "The house's pump regulates itself: it does so in the rows that name a regulated pump, and runs at full speed in all others.";
    }

    private static string DegreeHours(Comparison comparison) => WinterSheet.DegreeHours(comparison.House.Units);

    private static string Degrees(double kelvinHours, Comparison comparison) =>
        Number(comparison.House.Units == DisplayUnits.Us ? kelvinHours * 9 / 5 : kelvinHours);

    private static string Whole(int value) => value.ToString("N0", CultureInfo.InvariantCulture);

    private static string Money(double? value) => value is { } v ? v.ToString("#,0.00", CultureInfo.InvariantCulture) : "-";

    private static string Price(double value) => value.ToString("0.00##", CultureInfo.InvariantCulture);

    private static string Number(double value) => value.ToString(Math.Abs(value) < 9.95 ? "0.#" : "#,0", CultureInfo.InvariantCulture);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
