using System.Globalization;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Winters;

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
            .. comparison.Outcomes[0].DeadheadS < NoneS ? (string[])[Zero(comparison)] : [],
            .. Held(comparison),
            .. Partial(comparison),
            .. comparison.Outcomes[0].DeadheadS < NoneS ? (string[])[] : [Zero(comparison)],
            .. Broken(comparison),
            .. TwoWire(comparison),
            .. Comfort(comparison),
            .. Cold(comparison),
            .. Companions(comparison),
            .. Unseen(comparison),
            .. Cheapest(comparison, prices),
            Wear,
        ];
    }

    private static string Unprotected(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        if (none.DeadheadS < NoneS)
            return "Even without protection this pump never ran with less than its minimum flow here: protection buys nothing that these numbers show.";
        string part = none.ShutS > 0.99 * none.DeadheadS ? "all" : Time(none.ShutS);
        string shut = none.ShutS < NoneS ? "never quite without" : $"{part} of it against valves that were all shut";
        return $"Without protection the pump ran {Time(none.DeadheadS)} with less than its minimum flow, {shut}, in {none.DeadheadEvents:N0} stretches. "
            + $"The water in it reached {Show.Temperature(none.HottestTrappedC, comparison.House.Units)} at most.";
    }

    private static IEnumerable<string> Held(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        foreach (Outcome held in comparison.Outcomes.Where(outcome => outcome.Protection.HeldOpen != 0 && outcome.Winter is not null))
        {
            double before = none.Winter!.Rooms.Where((_, zone) => (held.Protection.HeldOpen & (1 << zone)) != 0).Sum(room => room.OverKh);
            string rooms = comparison.House.ZoneLabels(held.Protection.HeldOpen);
            string left = none.DeadheadS < NoneS ? "" : $"leaves {Time(held.DeadheadS)} of that, and ";
            yield return $"Holding {rooms} open by hand {left}has {rooms} {Degrees(held.HeldOverKh, comparison)} (degrees times hours) too warm instead of "
                + $"{Degrees(before, comparison)}{MoreHeat(held, none)}.";
        }
    }

    private static IEnumerable<string> Partial(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        foreach (Outcome outcome in comparison.Outcomes.Skip(1).Where(o => o.Protection.HeldOpen == 0 && o.DeadheadS >= NoneS))
        {
            string name = outcome.Protection.Name;
            string words = (outcome.DeadheadS / none.DeadheadS) switch
            {
                _ when none.DeadheadS < NoneS => $"With {name} it did, for {Time(outcome.DeadheadS)}.",
                > 1.02 => $"With {name} it is longer: {Time(outcome.DeadheadS)}.",
                > 0.98 => $"With {name} it is much the same: {Time(outcome.DeadheadS)}.",
                var left => $"With {name} it is {Time(outcome.DeadheadS)}, {Share(left)} of that without protection.",
            };
            yield return outcome.Protection.Remark.Length == 0 ? words : $"{words} {outcome.Protection.Remark}";
        }
    }

    private static string Zero(Comparison comparison)
    {
        string[] zero = [.. comparison.Outcomes.Skip(1).Where(outcome => outcome.DeadheadS < NoneS).Select(outcome => outcome.Protection.Name)];
        if (zero.Length == 0)
            return "None of them keeps the pump above its minimum flow throughout.";
        return $"{(comparison.Outcomes[0].DeadheadS < NoneS ? "Nor with" : "Never below its minimum flow with")} {string.Join(", ", zero)}.";
    }

    private static IEnumerable<string> Broken(Comparison comparison)
    {
        if (comparison.Trials.Count == 0)
            yield break;
        Outcome[] safe = [.. comparison.Outcomes.Where(IsSafeWhenBroken)];
        string what = string.Join(", ", comparison.Trials.Select(trial => trial.Name));
        yield return safe.Length > 0
            ? $"With something broken ({what}) that still holds for {string.Join(", ", safe.Select(AsFarAsTried))}."
            : $"With something broken ({what}) it holds for none of them.";
        foreach (Outcome outcome in comparison.Outcomes.Where(o => o.DeadheadS < NoneS && !IsSafeWhenBroken(o)))
        {
            IEnumerable<string> fails = Enumerable.Range(0, comparison.Trials.Count).Where(i => outcome.Trials[i]?.DeadheadS >= NoneS)
                .Select(i => $"{comparison.Trials[i].Name}, {Time(outcome.Trials[i]!.DeadheadS)}{Unguarded(comparison, outcome, i)}");
            yield return $"With {outcome.Protection.Name} the pump gets too little when something breaks: {string.Join("; ", fails)}.";
        }
    }

    /// <summary>What the same comes to without protection, for who would blame the protection.</summary>
    private static string Unguarded(Comparison comparison, Outcome outcome, int trial) =>
        outcome != comparison.Outcomes[0] && comparison.Outcomes[0].Trials[trial] is { } same ? $" (no protection: {Time(same.DeadheadS)})" : "";

    private static bool IsSafeWhenBroken(Outcome outcome) =>
        outcome.DeadheadS < NoneS && outcome.Trials.All(trial => trial is null || trial.DeadheadS < NoneS);

    private static string AsFarAsTried(Outcome outcome) =>
        outcome.Protection.Name + (outcome.Trials.Any(trial => trial is null) ? " (as far as it could be tried)" : "");

    /// <summary>A two-wire valve that stays shut is the one thing that a controller without a flow switch cannot see.</summary>
    private static IEnumerable<string> TwoWire(Comparison comparison)
    {
        int stuck = comparison.Trials.Count > 0 && comparison.Trials[0].Events[0].Action is FaultChange change ? change.Zone : -1;
        Outcome? plain = comparison.Outcomes.FirstOrDefault(o => o.Protection.Name == ProtectionList.Ours);
        // Where the pump gets too little in health as well, the valve is not to blame.
        if (stuck < 0 || plain?.Sound is not { DeadheadS: < NoneS } || plain.Trials[0] is not { DeadheadS: >= NoneS } unseen
            || comparison.House.Zones[stuck].Actuator.HasSwitch)
            yield break;
        string words = $"{comparison.House.Zones[stuck].Label} has a two-wire actuator: shut for good, it still counts as open when its time has passed.";
        SeasonResult? seen = comparison.Outcomes.FirstOrDefault(o => o.Protection.Name == ProtectionList.OursWithFlowSwitch)?.Trials[0];
        yield return seen is null || seen.DeadheadS >= unseen.DeadheadS
            ? words
            : $"{words} A flow switch sees it: the pump runs {Time(seen.DeadheadS)} with too little instead of {Time(unseen.DeadheadS)}, and then waits for reset while "
                + $"rooms get {Degrees(seen.UnderKh, comparison)} too cold in {seen.Days} days ({Degrees(unseen.UnderKh, comparison)} without the switch).";
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

    /// <summary>Protections under which rooms go cold with nothing broken.</summary>
    private static IEnumerable<string> Cold(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        foreach (Outcome outcome in comparison.Outcomes.Skip(1).Where(o => o.Winter is not null && o.Winter.UnderKh > none.Winter!.UnderKh + 10 * LittleKh))
        {
            string why = outcome.Protection.Name == ProtectionList.OursWithFlowSwitch && outcome.DeadheadS >= NoneS
                ? ": it sees too little flow with nothing broken, stops the pump and waits for reset"
                : "";
            yield return $"With {outcome.Protection.Name} rooms get {Degrees(outcome.Winter!.UnderKh, comparison)} too cold instead of "
                + $"{Degrees(none.Winter!.UnderKh, comparison)}{why}.";
        }
    }

    /// <summary>What minimum open costs: companions warm rooms that did not ask.</summary>
    private static IEnumerable<string> Companions(Comparison comparison)
    {
        Outcome none = comparison.Outcomes[0];
        Outcome? ours = comparison.Outcomes.FirstOrDefault(o => o.Protection.Name == ProtectionList.Ours);
        if (none.Winter is { } before && ours?.Winter is { } with && with.OverKh > before.OverKh + LittleKh)
        {
            yield return $"ZoneControl opens rooms that did not ask, as companions: all rooms together are {Degrees(with.OverKh, comparison)} too warm instead of "
                + $"{Degrees(before.OverKh, comparison)}{MoreHeat(ours, none)}.";
        }
    }

    private static IEnumerable<string> Unseen(Comparison comparison)
    {
        if (comparison.Outcomes.Any(o => o.Protection.Name == ProtectionList.BypassAlone && o.DeadheadS < NoneS))
        {
            yield return "What the numbers do not show of a bypass: here it is set right and works. What it passes warms no room, and it tells nobody which valve failed.";
        }
    }

    private static IEnumerable<string> Cheapest(Comparison comparison, Prices prices)
    {
        if (!prices.AreGiven)
        {
            yield return "Costs are left out, since no price was given.";
            yield break;
        }

        // A valve held open costs nothing to buy; its price is the rooms that nobody can turn down, which money here does not see.
        Outcome[] zero = [.. comparison.Outcomes.Where(o => o.Protection.HeldOpen == 0 && IsSafeWhenBroken(o))];
        (Outcome Outcome, double InAll)[] priced = [.. zero.Select(o => (o, Cost.Of(o, prices).InAll)).Where(pair => pair.InAll is not null)
            .Select(pair => (pair.o, pair.InAll!.Value))];
        if (priced.Length > 0)
        {
            (Outcome cheapest, double inAll) = priced.MinBy(pair => pair.InAll);
            yield return $"Of those that never deadhead, broken or not, whose prices are known and that hold no valve open by hand, {cheapest.Protection.Name} costs "
                + $"least over {prices.Years} {(comparison.IsAYear ? "years" : "such runs")}: {Number(inAll)}.";
        }
        else
        {
            yield return "Of those that never deadhead, broken or not, none has all the prices that its cost needs.";
        }
    }

    private static string MoreHeat(Outcome outcome, Outcome none) => (outcome.Winter!.HeatKWh - none.Winter!.HeatKWh) switch
    {
        >= 1 and var more => $", with {Number(more)} kWh more heat",
        <= -1 and var less => $", with {Number(-less)} kWh less heat",
        _ => "",
    };

    private static string Degrees(double kelvinHours, Comparison comparison) => comparison.House.Units == DisplayUnits.Us
        ? $"{Number(kelvinHours * 9 / 5)} °F·h"
        : $"{Number(kelvinHours)} K·h";

    // As the tables have it: hours and minutes, and beyond a hundred hours these alone.
    private static string Time(double seconds)
    {
        long minutes = (long)Math.Round(seconds / 60);
        return seconds < 3600 ? Durations.InWords((long)Math.Round(seconds) * 1000)
            : seconds >= 360_000 || minutes % 60 == 0 ? $"{Number(seconds / 3600)} h"
            : $"{minutes / 60} h {minutes % 60} min";
    }

    private static string Share(double part) => part < 0.01 ? "less than 1 %" : $"{part * 100:0} %";

    private static string Number(double value) => value.ToString(Math.Abs(value) < 9.95 ? "0.#" : "#,0", CultureInfo.InvariantCulture);
}
