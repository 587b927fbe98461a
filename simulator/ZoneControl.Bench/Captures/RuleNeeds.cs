using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// Which channels a rule's monitor reads in a house, and whether it can be judged from the first frame of a capture that
/// begins in the middle. A rule about something that the house lacks needs nothing: nothing calls upon it.
/// </summary>
internal sealed class RuleNeeds
{
    // Judged by edges and by ages that the benefit of the doubt makes harmless: no unknown past can make these look broken.
    private static readonly HashSet<string> _fromTheFirstFrame =
    [
        "PUMP-PROOF", "PUMP-DELAY", "PUMP-ORDER", "PUMP-TRIP", "PUMP-REST", "VALVE-STAGGER", "HEAT-FLOW", "HEAT-FIRST-OFF",
        "BOOT-SAFE", "GATE", "ANSWER-OFF", "ANSWER-ON",
    ];

    private readonly ControllerSettings _house;
    private readonly int _driven;
    private readonly int _switched;
    private readonly int _gated;

    public RuleNeeds(ControllerSettings house)
    {
        _house = house;
        _driven = house.DrivenZones;
        _switched = house.SwitchedZones;
        _gated = house.GatedZones;
    }

    /// <summary>Whether the rule waits until the capture's unknown past no longer matters.</summary>
    public static bool WaitsForThePast(string rule) => !_fromTheFirstFrame.Contains(rule);

    /// <summary>The longest that anything before a capture's beginning matters to a monitor, ms.</summary>
    public int PastMs
    {
        get
        {
            int longest = 0;
            for (int zone = 0; zone < _house.ZoneCount; zone++)
            {
                int open = Math.Max(_house.OpeningMs[zone], (_switched & (1 << zone)) != 0 ? _house.SwitchLimitMs[zone] : 0);
                longest = Math.Max(longest, open + _house.ClosingMs[zone]);
            }

            longest = Math.Max(longest, Math.Max(_house.PumpMinOffMs, _house.PumpStartIntervalMs));
            longest = Math.Max(longest, _house.PumpStartDelayMs);
            longest = Math.Max(longest, _house.ExerciseIntervalS > 0 ? _house.ExerciseLimitMs : 0);
            return longest + _house.HeatLeadMs + _house.PumpOverrunMs + _house.PumpRundownMs + (4 * _house.ScanPeriodMs);
        }
    }

    /// <summary>The channels that the rule needs, a mask a family.</summary>
    public IReadOnlyList<(ChannelKind Kind, int Mask)> Of(string rule) => rule switch
    {
        "PUMP-PROOF" => [.. Proof, Pump],
        "PUMP-DELAY" => [.. Demand, Pump],
        "PUMP-ORDER" => [.. Proof, Pump, Fitted(Contact.Flow)],
        "PUMP-TRIP" => [.. Proof, Pump, Heat],
        "PUMP-OVERRUN" => [.. Proof, .. Demand, .. Forced, Pump],
        "PUMP-REST" => [Pump],
        "PUMP-FLOW" => If(Contact.Flow, [.. Proof, .. Forced, Pump, Fitted(Contact.Reset)]),
        "PUMP-STUCK" => If(Contact.Flow, [.. Demand, .. Unhealthy, .. Forced, Pump, Heat, Valves]),
        "OPEN-COMPANION" => [.. Proof, .. Demand, .. Unhealthy, Pump, Fitted(Contact.Flow), Raised(Contact.Flow, Alarm.PumpStuck)],
        "OPEN-HANDOVER" => [.. Proof, .. Demand, .. Unhealthy, .. Forced, Pump],
        "VALVE-STAGGER" => _house.TransformerDeciVa == 0 ? [] : [Valves],
        "VALVE-LATE" => _switched == 0 ? [] : [.. Proof, .. Demand, .. Unhealthy, Pump, Fitted(Contact.Flow)],
        "VALVE-EARLY" => _switched == 0 ? [] : [.. Proof, (ChannelKind.Early, _switched), Pump],
        "VALVE-STUCK" => _switched == 0 ? [] : [.. Proof, (ChannelKind.Stuck, _switched), Pump],
        "VALVE-SUPPLY" => If(Contact.Supply, [.. Proof, Pump, Raised(Contact.Supply, Alarm.NoSupply)]),
        "HEAT-FLOW" => [.. Demand, Pump, Heat, Fitted(Contact.Flow | Contact.Limit)],
        "HEAT-FIRST-OFF" => [.. Proof, .. Forced, Pump, Heat],
        "HEAT-LIMIT" => If(Contact.Limit, [.. Forced, Pump, Heat, Fitted(Contact.Reset)]),
        "SEASON-LOCKOUT" => If(Contact.Lockout, [.. Demand, Pump, Heat, Valves]),
        "SEASON-EXERCISE" => _house.ExerciseIntervalS == 0 ? []
            : [.. Demand, .. Forced, Pump, Heat, Valves, (ChannelKind.Alarm, Alarm.ExercisePutOff)],
        "FREEZE" => If(Contact.Freeze, [.. Demand, .. Unhealthy, Valves, Heat, Raised(Contact.Lockout, Alarm.FrostInLockout)]),
        "PRIORITY" => If(Contact.Priority, [.. Demand, Pump, Heat, Valves]),
        "ALARM-LATCH" => [.. Forced, (ChannelKind.Latched, _switched), Fitted(Contact.Reset), Pump, Heat, Valves, Clock],
        "BOOT-SAFE" => [.. Proof, (ChannelKind.PowerUp, 1), Pump, Heat],
        "TIME-FAULT" => [.. Proof, Pump, Heat, Clock, (ChannelKind.ClockAhead, 1)],
        "SERVICE" => If(Contact.ServicePump, [.. Proof, .. Demand, Pump]),
        "GATE" => _gated == 0 ? [] : [.. Proof, Pump],
        "ANSWER-ON" => [.. Proof, .. Demand, .. Unhealthy, .. Alarms, Pump],
        "ANSWER-OFF" => [.. Demand, Pump, Valves, Raised(Contact.Flow, Alarm.PumpStuck)],
        "ANSWER-WHY" => [.. Proof, .. Demand, .. Unhealthy, .. Alarms, Pump, Holds],
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "a rule whose channels nobody has named"),
    };

    private static (ChannelKind, int) Pump => (ChannelKind.Pump, 1);

    private static (ChannelKind, int) Heat => (ChannelKind.Heat, 1);

    private static (ChannelKind, int) Clock => (ChannelKind.Alarm, Alarm.TimeFault);

    private static (ChannelKind, int) Holds => (ChannelKind.Hold, ((1 << ((int)HoldReason.Reset + 1)) - 1) & ~1);

    private (ChannelKind, int) Valves => (ChannelKind.Valve, _driven);

    private IEnumerable<(ChannelKind, int)> Proof =>
        [Valves, (ChannelKind.Sense, _gated), (ChannelKind.EndSwitch, _switched), Fitted(Contact.Supply)];

    // An exercise is told apart by the hold reason alone.
    private IEnumerable<(ChannelKind, int)> Demand =>
    [
        (ChannelKind.Call, _driven), (ChannelKind.Sense, _gated), (ChannelKind.Latched, _switched),
        (ChannelKind.Hand, _house.Has(Contact.ServicePump) ? _driven : 0),
        Fitted(Contact.Freeze | Contact.Priority | Contact.Lockout | Contact.Reset | Contact.ServicePump),
        Raised(Contact.ServicePump, Alarm.ServiceEnded), Raised(Contact.Priority, Alarm.PriorityLong),
        _house.ExerciseIntervalS > 0 ? Holds : (ChannelKind.Hold, 0),
    ];

    private IEnumerable<(ChannelKind, int)> Unhealthy =>
        [(ChannelKind.Late, _switched), (ChannelKind.Latched, _switched), (ChannelKind.Stuck, _switched)];

    private IEnumerable<(ChannelKind, int)> Forced =>
    [
        Fitted(Contact.Limit | Contact.Flow), Raised(Contact.Limit, Alarm.LimitLatched),
        Raised(Contact.Flow, Alarm.FlowTrip | Alarm.FlowLatched | Alarm.PumpStuck),
    ];

    private IEnumerable<(ChannelKind, int)> Alarms =>
    [
        .. Forced, Raised(Contact.Supply, Alarm.NoSupply), Raised(Contact.Priority, Alarm.PriorityLong),
        Raised(Contact.ServicePump, Alarm.ServiceEnded), Clock,
        (ChannelKind.Alarm, _house.Has(Contact.Freeze) && _house.Has(Contact.Lockout) ? Alarm.FrostInLockout : 0),
        (ChannelKind.Alarm, _house.ExerciseIntervalS > 0 ? Alarm.ExercisePutOff : 0),
    ];

    private (ChannelKind, int) Fitted(int contacts) => (ChannelKind.Contact, contacts & _house.FittedContacts);

    private (ChannelKind, int) Raised(int contact, int alarm) => (ChannelKind.Alarm, _house.Has(contact) ? alarm : 0);

    private IReadOnlyList<(ChannelKind, int)> If(int contact, IReadOnlyList<(ChannelKind, int)> needs) =>
        _house.Has(contact) ? needs : [];
}
