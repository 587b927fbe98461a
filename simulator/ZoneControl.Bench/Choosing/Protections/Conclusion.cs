using System.Globalization;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>What the numbers of a comparison say, in plain words. Every sentence follows from them.</summary>
public static class Conclusion
{
    /// <summary>What the numbers do not carry.</summary>
    public const string Wear =
        "How soon a pump wears or fails is not predicted: the numbers say how long and how often it ran with too little water, how hot that "
        + "water got at most, and how often it started, and no more.";

    /// <summary>Deadhead below this is none: valves move in steps of their stroke in a winter's run, s.</summary>
    private const double NoneS = 0.5;

    /// <summary>Degree-hours over a winter that nobody notices (a judgement), K·h.</summary>
    private const double LittleKh = 20;

    /// <summary>The sentences.</summary>
    public static IReadOnlyList<string> Of(Comparison comparison, Prices prices)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(prices);
        return
        [
            Unprotected(comparison),
            .. Held(comparison),
            .. Partial(comparison),
            Zero(comparison),
            .. Broken(comparison),
            .. TwoWire(comparison),
            .. Comfort(comparison),
            .. Cheapest(comparison, prices),
            Wear,
        ];
    }

    private static string Unprotected(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        return none.DeadheadS < NoneS
            ? "Even without protection this pump never ran with less than its minimum flow here: protection buys nothing that these numbers show."
            : $"Without protection the pump ran {Time(none.DeadheadS)} with less than its minimum flow, in {none.DeadheadEvents} stretches, and its trapped "
                + $"water reached {Show.Temperature(none.HottestTrappedC, comparison.House.Units)} at most.";
    }

    private static IEnumerable<string> Held(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        foreach (Outcome held in comparison.Outcomes.Where(outcome => outcome.Protection.HeldOpen != 0 && outcome.Winter is not null))
        {
            double before = none.Winter!.Rooms.Where((_, zone) => (held.Protection.HeldOpen & (1 << zone)) != 0).Sum(room => room.OverKh);
            string rooms = comparison.House.ZoneLabels(held.Protection.HeldOpen);
            yield return $"Holding {rooms} open by hand leaves {Time(held.DeadheadS)} of that and heats {rooms} {Degrees(held.HeldOverKh, comparison)} (degrees times hours) too warm "
                + $"instead of {Degrees(before, comparison)}"
                + (held.Winter!.HeatKWh > none.Winter.HeatKWh
                    ? $", with {Number(held.Winter.HeatKWh - none.Winter.HeatKWh)} kWh more heat." : ".");
        }
    }

    private static IEnumerable<string> Partial(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        if (none.DeadheadS < NoneS)
            yield break;
        foreach (Outcome outcome in comparison.Outcomes.Skip(1).Where(o => o.Protection.HeldOpen == 0 && o.DeadheadS >= NoneS))
        {
            double left = outcome.DeadheadS / none.DeadheadS;
            yield return left switch
            {
                > 1.02 => $"With {outcome.Protection.Name} it is longer: {Time(outcome.DeadheadS)}.",
                > 0.98 => $"With {outcome.Protection.Name} it is much the same: {Time(outcome.DeadheadS)}.",
                _ => $"With {outcome.Protection.Name} {Share(left)} of it is left: {Time(outcome.DeadheadS)}.",
            };
        }
    }

    private static string Zero(Comparison comparison)
    {
        string[] zero = [.. comparison.Outcomes.Where(outcome => outcome.DeadheadS < NoneS).Select(outcome => outcome.Protection.Name)];
        return zero.Length == 0
            ? "None of them keeps the pump above its minimum flow throughout."
            : $"Never below its minimum flow: {string.Join(", ", zero)}.";
    }

    private static IEnumerable<string> Broken(Comparison comparison)
    {
        if (comparison.Trials.Count == 0)
            yield break;
        Outcome[] safe = [.. comparison.Outcomes.Where(o => o.DeadheadS < NoneS && o.Trials.All(trial => trial.DeadheadS < NoneS))];
        yield return safe.Length > 0
            ? $"Nor with something broken ({string.Join(", ", comparison.Trials.Select(trial => trial.Name))}): {string.Join(", ", safe.Select(o => o.Protection.Name))}."
            : "With something broken, each of them lets it happen.";
        foreach (Outcome outcome in comparison.Outcomes.Where(o => o.DeadheadS < NoneS).Except(safe))
        {
            IEnumerable<string> fails = comparison.Trials.Zip(outcome.Trials).Where(pair => pair.Second.DeadheadS >= NoneS)
                .Select(pair => $"{pair.First.Name}, {Time(pair.Second.DeadheadS)}");
            yield return $"With {outcome.Protection.Name} it happens when something breaks: {string.Join("; ", fails)}.";
        }
    }

    /// <summary>A two-wire valve that stays shut is the one thing that a controller without a flow switch cannot see.</summary>
    private static IEnumerable<string> TwoWire(Comparison comparison)
    {
        int stuck = comparison.Trials.Count > 0 && comparison.Trials[0].Events[0].Action is FaultChange change ? change.Zone : -1;
        Outcome? plain = comparison.Outcomes.FirstOrDefault(o => o.Protection.Name == ProtectionList.Ours);
        if (stuck < 0 || plain is null || plain.Trials[0].DeadheadS < NoneS || comparison.House.Zones[stuck].Actuator.HasSwitch)
            yield break;
        string words = $"{comparison.House.Zones[stuck].Label} has a two-wire actuator: shut for good, it still counts as open when its time has passed.";
        Outcome? flow = comparison.Outcomes.FirstOrDefault(o => o.Protection.Name == ProtectionList.OursWithFlowSwitch);
        yield return flow is null || flow.Trials[0].DeadheadS >= plain.Trials[0].DeadheadS
            ? words
            : $"{words} A flow switch sees it: {Time(flow.Trials[0].DeadheadS)} are left, and then the pump waits for reset while rooms get "
                + $"{Degrees(flow.Trials[0].UnderKh, comparison)} too cold in {flow.Trials[0].Days} days ({Degrees(plain.Trials[0].UnderKh, comparison)} without the switch).";
    }

    private static IEnumerable<string> Comfort(Comparison comparison)
    {
        Outcome[] zero = [.. comparison.Outcomes.Where(o => o.DeadheadS < NoneS && o.Winter is not null)];
        Outcome none = comparison.Outcomes[0];
        if (zero.Length == 0 || none.Winter is null)
            yield break;
        if (zero.All(o => o.Winter!.UnderKh < LittleKh))
        {
            yield return $"None of those that never deadhead leaves rooms notably cold: {Degrees(zero.Max(o => o.Winter!.UnderKh), comparison)} too cold at most.";
            yield break;
        }

        Outcome best = zero.MinBy(o => o.Winter!.UnderKh)!;
        yield return $"Of those that never deadhead, {best.Protection.Name} leaves rooms least cold: {Degrees(best.Winter!.UnderKh, comparison)} too cold in all, "
            + $"{Degrees(none.Winter.UnderKh, comparison)} without protection.";
    }

    private static IEnumerable<string> Cheapest(Comparison comparison, Prices prices)
    {
        if (!prices.AreGiven)
        {
            yield return "Costs are left out, since no price was given.";
            yield break;
        }

        Outcome[] zero = [.. comparison.Outcomes.Where(o => o.DeadheadS < NoneS && o.Trials.All(trial => trial.DeadheadS < NoneS))];
        (Outcome Outcome, double InAll)[] priced = [.. zero.Select(o => (o, Cost.Of(o, prices).InAll)).Where(pair => pair.InAll is not null)
            .Select(pair => (pair.o, pair.InAll!.Value))];
        if (priced.Length > 0)
        {
            (Outcome cheapest, double inAll) = priced.MinBy(pair => pair.InAll);
            yield return $"Of those that never deadhead, broken or not, and whose prices are known, {cheapest.Protection.Name} costs least over {prices.Years} "
                + $"years: {Number(inAll)}.";
        }
        else
        {
            yield return "Of those that never deadhead none has all the prices that its cost needs.";
        }
    }

    private static string Degrees(double kelvinHours, Comparison comparison) => comparison.House.Units == DisplayUnits.Us
        ? $"{Number(kelvinHours * 9 / 5)} °F·h"
        : $"{Number(kelvinHours)} K·h";

    private static string Time(double seconds) => seconds < 3600
        ? Durations.InWords((long)Math.Round(seconds) * 1000)
        : $"{Number(seconds / 3600)} h";

    private static string Share(double part) => part < 0.01 ? "less than 1 %" : $"{part * 100:0} %";

    private static string Number(double value) => value.ToString(Math.Abs(value) < 9.95 ? "0.#" : "#,0", CultureInfo.InvariantCulture);
}
