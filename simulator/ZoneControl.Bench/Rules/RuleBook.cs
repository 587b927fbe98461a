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
        new("PUMP-REST",
            "A start comes at least pump_min_off after the last stop and at least 1 h / pump_max_starts after the last "
            + "start.",
            (rule, seen, to) => new PumpRest(rule, seen, to)),
        new("PUMP-FLOW",
            "With a flow switch: no flow within flow_proof_time of a start, or none for flow_loss_time while running, trips "
            + "the pump; it is retried flow_retries times, then latched.",
            (rule, seen, to) => new PumpFlow(rule, seen, to)),
        new("PUMP-STUCK",
            "With a flow switch: flow seen while the pump has been off for pump_rundown is alarmed as \"pump or switch\"; until "
            + "there has been none for pump_rundown, heat demand and starts are withheld and zones are opened to minimum open, so "
            + "that the water has somewhere to go.",
            (rule, seen, to) => new PumpStuck(rule, seen, to)),
        new("OPEN-COMPANION",
            "When calls do not reach minimum open, companion zones in the house file's order make it up. A zone retained "
            + "after its call is a lawful companion until the first healthy one in that order has proven.",
            (rule, seen, to) => new OpenCompanion(rule, seen, to)),
        new("OPEN-HANDOVER",
            "When a call ends while other demand remains and the rest would fall short, the companion is proven open before "
            + "that zone is released.",
            (rule, seen, to) => new OpenHandover(rule, seen, to)),
        new("VALVE-STAGGER",
            "The holding load of open valves plus the inrush of opening ones stays within the transformer's VA.",
            (rule, seen, to) => new ValveStagger(rule, seen, to)),
        new("VALVE-LATE",
            "A switched valve not proven within its limit is alarmed, not counted, retried (never inside a rundown), in the "
            + "end latched.",
            (rule, seen, to) => new ValveLate(rule, seen, to)),
        new("VALVE-EARLY",
            "An end switch already made when its valve is energised, or making sooner than switch_min_time, proves only "
            + "after the full opening time.",
            (rule, seen, to) => new ValveEarly(rule, seen, to)),
        new("VALVE-STUCK",
            "An end switch still made after the valve has been released for its closing time is alarmed and no longer proves "
            + "anything.",
            (rule, seen, to) => new ValveStuck(rule, seen, to)),
        new("VALVE-SUPPLY",
            "Where the actuator supply is sensed, opening time counts only with supply present, and its loss is a loss of proof.",
            (rule, seen, to) => new ValveSupply(rule, seen, to)),
        new("HEAT-FLOW",
            "Heat demand is on only while the pump is on, flow is proven where a flow switch is fitted, the high limit is "
            + "closed, and a call or freeze asks.",
            (rule, seen, to) => new HeatFlow(rule, seen, to)),
        new("HEAT-FIRST-OFF",
            "In every orderly stop heat demand goes off at least heat_lead (one scan or more) before the pump.",
            (rule, seen, to) => new HeatFirstOff(rule, seen, to)),
        new("HEAT-LIMIT",
            "An open floor-supply limit has pump and heat demand off within its debounce plus two scans, latched, so that hot "
            + "water stops moving into the floor.",
            (rule, seen, to) => new HeatLimit(rule, seen, to)),
        new("SEASON-LOCKOUT",
            "In lockout no call opens a valve, starts the pump or asks for heat. Entering it while running is an orderly "
            + "stop with overrun; a handover under way is abandoned.",
            (rule, seen, to) => new SeasonLockout(rule, seen, to)),
        new("SEASON-EXERCISE",
            "In lockout (and after long idleness) valves and pump are exercised every exercise_interval, under every PUMP rule, "
            + "without heat; an exercise that something forbids is put off and reported.",
            (rule, seen, to) => new SeasonExercise(rule, seen, to)),
        new("FREEZE",
            "The freeze contact overrides lockout and priority: zones open, pump by its rules, heat allowed. A broken wire reads "
            + "as freeze; in lockout it is alarmed and heat is asked for at most freeze_heat_max.",
            (rule, seen, to) => new Freeze(rule, seen, to)),
        new("PRIORITY",
            "While the priority contact (domestic hot water) is made, calls are withheld: heat demand off, then pump off, no "
            + "overrun. Longer than priority_max is alarmed and ignored until it releases.",
            (rule, seen, to) => new Priority(rule, seen, to)),
        new("ALARM-LATCH",
            "A latched alarm and what it forbids stay until the edge of the reset contact (a jumpered button does nothing). "
            + "Nothing goes on in that scan; standing demand restarts through every delay. Power-up counts as a reset.",
            (rule, seen, to) => new AlarmLatch(rule, seen, to)),
        new("BOOT-SAFE",
            "After power-up every output is off in the first scan and nothing counts as proven until proven again. Rules "
            + "about orderly stops end at a power-up.",
            (rule, seen, to) => new BootSafe(rule, seen, to)),
        new("TIME-FAULT",
            "A clock that jumps back, stands still for stall_scans scans with the pump on, or a scan later than the announced "
            + "deadline by more than stall_limit: pump and heat demand off at once, valves held for a fresh rundown, proofs begin "
            + "again, latches stay.",
            (rule, seen, to) => new TimeFault(rule, seen, to)),
        new("SERVICE",
            "Hand commands are inputs; what they ask for obeys every PUMP, HEAT and VALVE rule but PUMP-DELAY, and ends by "
            + "itself after service_limit.",
            (rule, seen, to) => new Service(rule, seen, to)),
        new("GATE",
            "A sensed valve counts as proven only while its sense input is on and has been for its opening time (or its end "
            + "switch is made). Every gated stop is a trip, and PUMP-ORDER and PUMP-OVERRUN bind driven zones only. A gated house "
            + "is refused unless heat demand passes through ZoneControl too.",
            (rule, seen, to) => new Gate(rule, seen, to)),
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
