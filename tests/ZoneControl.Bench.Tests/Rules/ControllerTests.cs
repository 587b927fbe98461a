using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>The controller in made-up houses: lawful as it is, and caught by name when something in it is broken.</summary>
public class ControllerTests
{
    private const int Houses = 240;
    private const int Scans = 6_000;

    [Fact]
    public void The_controller_keeps_every_rule_in_made_up_houses()
    {
        var calledOn = new HashSet<string>();
        for (int seed = 0; seed < Houses; seed++)
        {
            foreach (RuleVerdict verdict in Verdicts(seed, settings => new LibraryController(settings)))
            {
                Assert.False(
                    verdict.Judgement == Judgement.Broken,
                    $"house {seed}, {verdict.FirstMs} ms: {verdict.Rule}: {verdict.Why}");
                if (verdict.Judgement == Judgement.Kept)
                    calledOn.Add(verdict.Rule);
            }
        }

        Assert.Equal(RuleBook.Rules.Select(rule => rule.Id).Order(), calledOn.Order());
    }

    [Fact]
    public void Openings_taken_for_done_too_soon_are_caught() =>
        IsCaught("PUMP-PROOF", Set(s => s.OpeningMs = Half(s.OpeningMs)));

    [Fact]
    public void Half_of_minimum_open_is_caught() => IsCaught("PUMP-PROOF", Set(s => s.MinimumOpen = (s.MinimumOpen + 1) / 2));

    [Fact]
    public void A_pump_on_with_the_valves_is_caught() =>
        IsCaught("PUMP-PROOF", Outputs((now, _) => now.Pump |= now.Valves != 0));

    [Fact]
    public void A_start_without_its_delay_is_caught() => IsCaught("PUMP-DELAY", Set(s => s.PumpStartDelayMs = 0));

    [Fact]
    public void Valves_released_inside_the_rundown_are_caught() => IsCaught("PUMP-ORDER", Set(s => s.PumpRundownMs = s.ScanPeriodMs));

    [Fact]
    public void Valves_released_with_the_pump_running_are_caught() =>
        IsCaught("PUMP-ORDER", Outputs((now, _) => now.Valves &= now.Pump ? now.AcceptedCalls : ~0));

    [Fact]
    public void A_switch_that_opens_unheeded_is_caught()
    {
        int heldFor = 0;
        IsCaught("PUMP-TRIP", Outputs((now, before) =>
        {
            heldFor = before.Pump && !now.Pump ? heldFor + 1 : 0;
            now.Pump |= heldFor is > 0 and <= 3;
        }));
    }

    [Fact]
    public void An_overrun_cut_short_is_caught() => IsCaught("PUMP-OVERRUN", Set(s => s.PumpOverrunMs = s.HeatLeadMs));

    [Fact]
    public void An_overrun_without_end_is_caught() => IsCaught("PUMP-OVERRUN", Set(s => s.PumpOverrunMs += 1_000));

    [Fact]
    public void Companions_left_shut_are_caught() =>
        IsCaught("OPEN-COMPANION", Outputs((now, _) => now.Valves &= now.AcceptedCalls));

    [Fact]
    public void Companions_in_the_wrong_order_are_caught() =>
        IsCaught("OPEN-COMPANION", Set(s => s.CompanionOrder = [.. s.CompanionOrder.Reverse()]));

    [Fact]
    public void A_zone_let_go_with_its_call_is_caught() =>
        IsCaught("OPEN-HANDOVER", Outputs((now, before) => now.Valves &= ~(before.AcceptedCalls & ~now.AcceptedCalls)));

    [Fact]
    public void A_late_valve_waited_for_too_long_is_caught() =>
        IsCaught("VALVE-LATE", Set(s => s.SwitchLimitMs = [.. s.SwitchLimitMs.Select(ms => ms + 500)]));

    [Fact]
    public void A_retry_too_many_is_caught() => IsCaught("VALVE-LATE", Set(s => s.ValveRetries++));

    [Fact]
    public void A_retry_too_few_is_caught() => IsCaught("VALVE-LATE", Set(s => s.ValveRetries = Math.Max(0, s.ValveRetries - 1)));

    [Fact]
    public void A_rest_too_short_is_caught() => IsCaught("VALVE-LATE", Set(s => s.ClosingMs = Half(s.ClosingMs)));

    [Fact]
    public void Early_switches_believed_are_caught() =>
        IsCaught("VALVE-EARLY", Set(s => s.SwitchMinMs = new int[s.ZoneCount]));

    [Fact]
    public void Heat_as_long_as_anybody_calls_is_caught() =>
        IsCaught("HEAT-FLOW", Outputs((now, _) => now.Heat |= now.AcceptedCalls != 0));

    [Fact]
    public void Heat_as_long_as_the_pump_is_on_is_caught() => IsCaught("HEAT-FIRST-OFF", Outputs((now, _) => now.Heat = now.Pump));

    [Fact]
    public void A_season_switch_that_is_ignored_is_caught()
    {
        // What the board accepts is still published; only the decisions do not know of it. Houses without other contacts.
        bool lockout = false;
        IsCaught("SEASON-LOCKOUT", settings => settings.FittedContacts != Contact.Lockout || settings.InvertedContacts != Contact.AssertedOpen
            ? new LibraryController(settings)
            : new SpoiltController(
                settings,
                contacts => (lockout, contacts.Lockout) = (contacts.Lockout, false),
                (now, _) => now.AcceptedLockout = lockout));
    }

    [Fact]
    public void State_kept_over_a_power_cut_is_caught() =>
        IsCaught("BOOT-SAFE", settings => new SpoiltController(settings, forgetsPowerUp: true));

    [Fact]
    public void A_pump_that_never_comes_is_caught() => IsCaught("ANSWER-ON", Outputs((now, _) => now.Pump = now.Heat = false));

    [Fact]
    public void Valves_that_stay_on_are_caught() =>
        IsCaught("ANSWER-OFF", Outputs((now, before) => now.Valves |= before.Valves));

    [Fact]
    public void One_reason_for_everything_is_caught() =>
        IsCaught("ANSWER-WHY", Outputs((now, _) => now.Hold = now.Hold == HoldReason.None ? HoldReason.None : HoldReason.Proof));

    [Fact]
    public void A_pump_that_never_rests_is_caught() => IsCaught("PUMP-REST", Set(s => s.PumpMinOffMs = s.PumpStartIntervalMs = 0));

    [Fact]
    public void Starts_too_close_together_are_caught() => IsCaught("PUMP-REST", Set(s => s.PumpStartIntervalMs /= 2));

    [Fact]
    public void A_dry_start_watched_too_long_is_caught() => IsCaught("PUMP-FLOW", Set(s => s.FlowProofMs += 500));

    [Fact]
    public void A_lost_flow_watched_too_long_is_caught() => IsCaught("PUMP-FLOW", Set(s => s.FlowLossMs += 500));

    [Fact]
    public void A_dry_start_too_many_is_caught() => IsCaught("PUMP-FLOW", Set(s => s.FlowRetries++));

    [Fact]
    public void Flow_with_the_pump_off_kept_quiet_is_caught() =>
        IsCaught("PUMP-STUCK", Outputs((now, _) => now.Alarms &= ~Alarm.PumpStuck));

    [Fact]
    public void Zones_left_shut_on_such_flow_are_caught() => IsCaught("PUMP-STUCK", Outputs((now, before) =>
        now.Valves = (now.Alarms & Alarm.PumpStuck) != 0 ? now.Valves & before.Valves : now.Valves));

    [Fact]
    public void Valves_opened_all_at_once_are_caught() => IsCaught("VALVE-STAGGER", Set(s => s.TransformerDeciVa = 0));

    [Fact]
    public void An_inrush_taken_for_over_too_soon_is_caught() => IsCaught("VALVE-STAGGER", Set(s => s.InrushMs = new int[s.ZoneCount]));

    [Fact]
    public void A_stuck_switch_kept_quiet_is_caught() => IsCaught("VALVE-STUCK", Outputs((now, _) => now.StuckSwitches = 0));

    [Fact]
    public void Valves_held_without_supply_are_caught() => IsCaught("VALVE-SUPPLY", Outputs((now, before) =>
        now.Valves |= (now.Alarms & Alarm.NoSupply) != 0 ? before.Valves : 0));

    [Fact]
    public void Heat_without_flow_is_caught() => IsCaught(
        "HEAT-FLOW",
        Outputs((now, before) => now.Heat |= before.Heat && now.Pump && (now.AcceptedContacts & Contact.Flow) == 0),
        "without flow");

    [Fact]
    public void A_pump_that_outlasts_the_limit_is_caught() => IsCaught("HEAT-LIMIT", Outputs((now, before) =>
        now.Pump |= before.Pump && (now.AcceptedContacts & Contact.Limit) != 0));

    [Fact]
    public void A_limit_that_does_not_latch_is_caught() => IsCaught("HEAT-LIMIT", Outputs((now, _) =>
        now.Alarms &= (now.AcceptedContacts & Contact.Limit) != 0 ? ~0 : ~Alarm.LimitLatched));

    [Fact]
    public void Exercises_that_never_come_are_caught() => IsCaught("SEASON-EXERCISE", Set(s => s.ExerciseIntervalS = 0));

    [Fact]
    public void Exercises_cut_short_are_caught() => IsCaught("SEASON-EXERCISE", Set(s => s.ExerciseRunMs = 1));

    [Fact]
    public void Frost_that_gets_too_much_heat_is_caught() => IsCaught("FREEZE", Set(s => s.FreezeHeatMaxMs += 500));

    [Fact]
    public void Frost_that_opens_only_who_calls_is_caught() => IsCaught("FREEZE", Outputs((now, _) =>
        now.Valves &= (now.AcceptedContacts & Contact.Freeze) != 0 ? now.AcceptedCalls : ~0));

    [Fact]
    public void Priority_that_lasts_too_long_is_caught() => IsCaught("PRIORITY", Set(s => s.PriorityMaxMs += 500));

    [Fact]
    public void Priority_that_ends_too_soon_is_caught() => IsCaught("PRIORITY", Set(s => s.PriorityMaxMs = (s.PriorityMaxMs + 1) / 2));

    [Fact]
    public void A_pump_that_overruns_into_priority_is_caught()
    {
        int heldFor = 0;
        IsCaught("PRIORITY", Outputs((now, before) =>
        {
            heldFor = before.Pump && !now.Pump && (now.AcceptedContacts & Contact.Priority) != 0 ? heldFor + 1 : 0;
            now.Pump |= heldFor is > 0 and <= 10;
        }));
    }

    [Fact]
    public void A_latch_that_opens_by_itself_is_caught()
    {
        int latchedFor = 0;
        IsCaught("ALARM-LATCH", Outputs((now, _) =>
        {
            latchedFor = (now.Alarms & Alarm.FlowLatched) != 0 ? latchedFor + 1 : 0;
            now.Alarms &= latchedFor > 30 ? ~Alarm.FlowLatched : ~0;
        }));
    }

    [Fact]
    public void A_reset_that_lets_valves_go_on_is_caught() => IsCaught("ALARM-LATCH", Outputs((now, before) =>
        now.Valves |= (now.AcceptedContacts & ~before.AcceptedContacts & Contact.Reset) != 0 ? now.AcceptedCalls : 0));

    [Fact]
    public void A_clock_that_is_always_trusted_is_caught() =>
        IsCaught("TIME-FAULT", settings => new SpoiltController(settings, trustsClock: true));

    [Fact]
    public void A_pump_that_runs_on_through_a_fault_of_the_clock_is_caught() => IsCaught("TIME-FAULT", Outputs((now, before) =>
        now.Pump |= before.Pump && (now.Alarms & ~before.Alarms & Alarm.TimeFault) != 0));

    [Fact]
    public void A_hand_that_governs_too_long_is_caught() => IsCaught("SERVICE", Set(s => s.ServiceLimitMs += 500));

    [Fact]
    public void A_hand_that_is_not_heeded_is_caught() =>
        IsCaught("SERVICE", Outputs((now, before) => now.Valves &= before.Valves | ~now.AcceptedHands));

    [Fact]
    public void A_sensed_valve_taken_for_open_too_soon_is_caught() => IsCaught("GATE", Set(s =>
    {
        int[] half = Half(s.OpeningMs);
        s.OpeningMs = [.. s.OpeningMs.Select((ms, zone) => (s.GatedZones & (1 << zone)) != 0 ? half[zone] : ms)];
    }));

    /// <summary>Somewhere in the made-up houses, the spoilt controller breaks the rule.</summary>
    private static void IsCaught(string rule, Func<ControllerSettings, IController> build, string words = "")
    {
        for (int seed = 0; seed < Houses; seed++)
        {
            RuleVerdict verdict = Verdicts(seed, build).Single(v => v.Rule == rule);
            if (verdict.Judgement == Judgement.Broken && verdict.Why.Contains(words, StringComparison.Ordinal))
                return;
        }

        Assert.Fail($"{rule} was broken in none of {Houses} houses");
    }

    private static IReadOnlyList<RuleVerdict> Verdicts(int seed, Func<ControllerSettings, IController> build)
    {
        var house = new RandomHouse(seed);
        return Judge.Verdicts(house.Settings, house.Run(build, Scans), zone => $"zone {zone}");
    }

    /// <summary>A controller built from other settings; as it is where those are not lawful.</summary>
    private static Func<ControllerSettings, IController> Set(Action<ControllerSettings> change) => settings =>
    {
        ControllerSettings other = Copy(settings);
        change(other);
        return new LibraryController(SettingsCheck.FirstMistake(other) is null ? other : settings);
    };

    private static Func<ControllerSettings, IController> Outputs(Action<OutputImage, OutputImage> change) =>
        settings => new SpoiltController(settings, outputs: change);

    private static int[] Half(int[] times) => [.. times.Select(ms => Math.Max(1, ms / 2))];

    private static ControllerSettings Copy(ControllerSettings s)
    {
        var copy = new ControllerSettings();
        foreach (var field in typeof(ControllerSettings).GetFields().Where(field => !field.IsLiteral))
            field.SetValue(copy, field.GetValue(s));
        return copy;
    }
}
