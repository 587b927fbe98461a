using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>The controller in made-up houses: lawful as it is, and caught by name when something in it is broken.</summary>
public class ControllerTests
{
    private const int Houses = 150;
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

    /// <summary>Somewhere in the made-up houses, the spoilt controller breaks the rule.</summary>
    private static void IsCaught(string rule, Func<ControllerSettings, IController> build)
    {
        for (int seed = 0; seed < Houses; seed++)
        {
            if (Verdicts(seed, build).Single(v => v.Rule == rule).Judgement == Judgement.Broken)
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
