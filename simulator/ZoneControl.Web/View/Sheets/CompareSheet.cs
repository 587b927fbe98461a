using System.Globalization;
using ZoneControl.Bench.Choosing.Protections;
using ZoneControl.Bench.Houses;

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
            sections.Add(new SheetSection("The rooms", [Rooms(comparison)]));
        if (comparison.Trials.Count > 0)
        {
            sections.Add(new SheetSection("With something broken",
                [Broken(comparison), ColdWhenBroken(comparison), .. comparison.Trials.Select(trial => new SheetText($"{Capital(trial.Name)}: {trial.Explains}"))]));
        }

        if (prices.AreGiven)
            sections.Add(new SheetSection("Costs", [Costs(comparison, prices), new SheetText(Assumptions(prices))]));
        sections.Add(new SheetSection("What was compared",
            [.. comparison.Outcomes.Select(o => new SheetText($"{Capital(o.Protection.Name)}: {o.Protection.Explains}"))]));
        return new SheetView("protections compared", "Which protection does what?", CheckSheet.HouseLine(comparison.House),
            $"The same for each of them: {comparison.Under}. ZC stands for ZoneControl.", sections);
    }

    private static SheetTable Pump(Comparison comparison) => new(
        "Deadhead: the pump is on with less than its minimum flow. Energy is electrical",
        [new("protection"), new("deadhead", true), new("times", true), new("hottest", true), new("starts", true), new("kWh", true)],
        [
            .. comparison.Outcomes.Select(o => (IReadOnlyList<string>)
            [
                o.Protection.Name, Quantity.Duration(o.DeadheadS), $"{o.DeadheadEvents}", Show.Temperature(o.HottestTrappedC, comparison.House.Units),
                $"{o.PumpStarts}", Number(o.PumpEnergyKWh),
            ]),
        ]);

    private static SheetBars Picture(Comparison comparison) => new("Deadhead", "hours",
        [.. comparison.Outcomes.Select(o => new SheetBar(o.Protection.Name, o.DeadheadS / 3600, Quantity.Duration(o.DeadheadS)))]);

    private static SheetTable Rooms(Comparison comparison)
    {
        bool us = comparison.House.Units == DisplayUnits.Us;
        string unit = us ? "°F·h" : "K·h";
        string Degrees(double kelvinHours) => Number(us ? kelvinHours * 9 / 5 : kelvinHours);
        return new SheetTable(
            $"Degree-hours off comfort, all rooms together, {unit}; of the warm ones, those in rooms held open; and the heat that it took",
            [new("protection"), new("too cold", true), new("too warm", true), new("held open", true), new("warmest", true), new("heat, kWh", true)],
            [
                .. comparison.Outcomes.Select(o => (IReadOnlyList<string>)
                [
                    o.Protection.Name, Degrees(o.Winter!.UnderKh), Degrees(o.Winter.OverKh),
                    o.Protection.HeldOpen == 0 ? "-" : Degrees(o.HeldOverKh),
                    Show.Temperature(o.Winter.Rooms.Max(room => room.WarmestC), comparison.House.Units), Number(o.Winter.HeatKWh),
                ]),
            ]);
    }

    private static SheetTable Broken(Comparison comparison) => new(
        $"Deadhead in {comparison.Outcomes[0].Trials[0].Days} days of midwinter",
        [new("protection"), .. comparison.Trials.Select(trial => new SheetColumn(trial.Name, true))],
        [
            .. comparison.Outcomes.Select(o => (IReadOnlyList<string>)
                [o.Protection.Name, .. o.Trials.Select(trial => Quantity.Duration(trial.DeadheadS))]),
        ]);

    private static SheetTable ColdWhenBroken(Comparison comparison)
    {
        bool us = comparison.House.Units == DisplayUnits.Us;
        return new SheetTable(
            $"Too cold in those days, all rooms together, {(us ? "°F·h" : "K·h")}",
            [new("protection"), .. comparison.Trials.Select(trial => new SheetColumn(trial.Name, true))],
            [
                .. comparison.Outcomes.Select(o => (IReadOnlyList<string>)
                    [o.Protection.Name, .. o.Trials.Select(trial => Number(us ? trial.UnderKh * 9 / 5 : trial.UnderKh))]),
            ]);
    }

    private static SheetTable Costs(Comparison comparison, Prices prices) => new(
        "In the owner's money",
        [new("protection"), new("purchase", true), new("a year", true), new($"{prices.Years} years", true)],
        [
            .. comparison.Outcomes.Select(o =>
            {
                Cost cost = Cost.Of(o, prices);
                return (IReadOnlyList<string>)[o.Protection.Name, Money(cost.Purchase), Money(cost.AYear), Money(cost.InAll)];
            }),
        ]);

    private static string Assumptions(Prices prices)
    {
        string energy = string.Join(" and ", new[]
        {
            prices.Electricity is { } e ? $"electricity of the pump at {Number(e)} a kWh" : null,
            prices.Heat is { } h ? $"heat at {Number(h)} a kWh" : null,
        }.OfType<string>());
        return $"A year is one run as above{(energy.Length > 0 ? $", {energy}" : "")}. Prices stay, there is no interest, nothing is renewed and no work is "
            + "paid. A cost is left out where a price that it needs is not given.";
    }

    private static string Money(double? value) => value is { } v ? v.ToString("#,0.00", CultureInfo.InvariantCulture) : "-";

    private static string Number(double value) => value.ToString(Math.Abs(value) < 9.95 ? "0.##" : "#,0", CultureInfo.InvariantCulture);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
