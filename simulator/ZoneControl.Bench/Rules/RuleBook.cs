using ZoneControl.Bench.Rules.Monitors;

namespace ZoneControl.Bench.Rules;

/// <summary>The rules that the controller keeps, each with its sentence and its monitor.</summary>
public static class RuleBook
{
    // One row a rule, so that none can have a sentence without a monitor.
    private static readonly Row[] _rows =
    [
        new("PUMP-PROOF",
            "The pump is on only while proven capacity, standing capacity included, is at least minimum open.",
            (rule, seen, to) => new PumpProof(rule, seen, to)),
        new("PUMP-DELAY",
            "The pump goes on no sooner than pump_start_delay after demand last rose from none.",
            (rule, seen, to) => new PumpDelay(rule, seen, to)),
        new("PUMP-ORDER",
            "While the pump is on and for pump_rundown after (and, with a flow switch, until flow has ceased), no driven "
            + "valve is released if that takes proven capacity below minimum open.",
            (rule, seen, to) => new PumpOrder(rule, seen, to)),
        new("PUMP-TRIP",
            "When proof is lost, the pump is off within the contact's debounce (at most 0.5 s) plus two scans.",
            (rule, seen, to) => new PumpTrip(rule, seen, to)),
        new("PUMP-OVERRUN",
            "When demand ends while the pump runs, it runs on for pump_overrun with the zones that were proven then, stops, "
            + "and then valves are released. A trip, a limit or new demand ends the overrun; an overrun never starts a pump.",
            (rule, seen, to) => new PumpOverrun(rule, seen, to)),
        new("OPEN-COMPANION",
            "When calls do not reach minimum open, companion zones in the house file's order make it up. A zone retained "
            + "after its call is a lawful companion until the first healthy one in that order has proven.",
            (rule, seen, to) => new OpenCompanion(rule, seen, to)),
        new("OPEN-HANDOVER",
            "When a call ends while other demand remains and the rest would fall short, the companion is proven open before "
            + "that zone is released.",
            (rule, seen, to) => new OpenHandover(rule, seen, to)),
        new("VALVE-LATE",
            "A switched valve not proven within its limit is alarmed, not counted, retried (never inside a rundown), in the "
            + "end latched.",
            (rule, seen, to) => new ValveLate(rule, seen, to)),
        new("VALVE-EARLY",
            "An end switch already made when its valve is energised, or making sooner than switch_min_time, proves only "
            + "after the full opening time.",
            (rule, seen, to) => new ValveEarly(rule, seen, to)),
        new("HEAT-FLOW",
            "Heat demand is on only while the pump is on, flow is proven where a flow switch is fitted, the high limit is "
            + "closed, and a call or freeze asks.",
            (rule, seen, to) => new HeatFlow(rule, seen, to)),
        new("HEAT-FIRST-OFF",
            "In every orderly stop heat demand goes off at least heat_lead (one scan or more) before the pump.",
            (rule, seen, to) => new HeatFirstOff(rule, seen, to)),
        new("SEASON-LOCKOUT",
            "In lockout no call opens a valve, starts the pump or asks for heat. Entering it while running is an orderly "
            + "stop with overrun; a handover under way is abandoned.",
            (rule, seen, to) => new SeasonLockout(rule, seen, to)),
        new("BOOT-SAFE",
            "After power-up every output is off in the first scan and nothing counts as proven until proven again. Rules "
            + "about orderly stops end at a power-up.",
            (rule, seen, to) => new BootSafe(rule, seen, to)),
        new("ANSWER-ON",
            "In season, with no alarm, latch, service, priority, limit or time fault, and switches that make within their "
            + "limits, demand has the pump on within opening time + stagger + start delay + rest.",
            (rule, seen, to) => new AnswerOn(rule, seen, to)),
        new("ANSWER-OFF",
            "With no demand, no PUMP-STUCK and no service, the pump is off and every driven valve released within heat_lead "
            + "+ overrun + rundown.",
            (rule, seen, to) => new AnswerOff(rule, seen, to)),
        new("ANSWER-WHY",
            "Whenever there is demand and the pump is off, the hold reason in the output image is exactly one true reason, "
            + "the first unmet condition; each reason has a predicate that the monitor checks.",
            (rule, seen, to) => new AnswerWhy(rule, seen, to)),
    ];

    /// <summary>Identities and sentences, in the order in which verdicts are given.</summary>
    public static IReadOnlyList<Rule> Rules { get; } = [.. _rows.Select(row => new Rule(row.Id, row.Sentence))];

    internal static IEnumerable<RuleMonitor> Monitors(Evidence seen, IFindings findings) =>
        _rows.Select(row => row.Build(row.Id, seen, findings));

    private sealed record Row(string Id, string Sentence, Func<string, Evidence, IFindings, RuleMonitor> Build);
}
