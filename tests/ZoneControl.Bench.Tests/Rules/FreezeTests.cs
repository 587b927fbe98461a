using ZoneControl.Logic;
using static ZoneControl.Bench.Tests.Rules.Workshop;

namespace ZoneControl.Bench.Tests.Rules;

public class FreezeTests
{
    private const string Rule = "FREEZE";

    private static readonly ControllerSettings _house = With(s =>
    {
        s.FittedContacts |= Contact.Freeze;
        s.FreezeHeatMaxMs = 10_000;
    });

    [Fact]
    public void Frost_in_lockout_gets_its_share_of_heat_and_no_more() => Verdict.IsKept(
        Rule,
        Frost().At(23_000).NoHeat().End(60_000),
        occasions: 1,
        _house);

    [Fact]
    public void Frost_in_season_gets_heat_as_long_as_it_asks() => Verdict.IsKept(
        Rule,
        Scene.Quiet()
            .At(1_000).On(Contact.Freeze).AllValves().Hold(HoldReason.Proof)
            .At(8_000).Switch(Shop).Switch(Loft).Hold(HoldReason.StartDelay)
            .At(13_000).Pump().Heat().Hold(HoldReason.None)
            .End(60_000),
        occasions: 1,
        _house);

    [Fact]
    public void Too_much_heat_in_lockout_breaks_it() => Verdict.IsBroken(
        Rule,
        23_200,
        "frost in lockout has had heat for more than 10 s",
        Frost().End(30_000),
        _house);

    [Fact]
    public void A_pause_does_not_begin_the_share_afresh() => Verdict.IsBroken(
        Rule,
        32_200,
        "frost in lockout has had heat for more than 10 s",
        Frost()
            .At(20_000).NoHeat()
            .At(29_000).Heat()
            .End(40_000),
        _house);

    [Fact]
    public void Zones_left_shut_break_it() => Verdict.IsBroken(
        Rule,
        1_200,
        "Glaze is not opened though the freeze contact asks",
        Scene.Quiet().At(1_000).On(Contact.Freeze).Valve(Kiln).Hold(HoldReason.Proof).End(5_000),
        _house,
        "OPEN-COMPANION");

    [Fact]
    public void Frost_in_lockout_without_alarm_breaks_it() => Verdict.IsBroken(
        Rule,
        1_200,
        "the freeze contact asks in lockout, and no alarm says so",
        Scene.Quiet().Lockout().At(1_000).On(Contact.Freeze).AllValves().Hold(HoldReason.Proof).End(5_000),
        _house);

    [Fact]
    public void A_house_without_the_contact_does_not_call_on_it() => Verdict.IsNotCalledUpon(Rule, Scene.KilnDay());

    private static TraceBuilder Frost() => Scene.Quiet().Lockout()
        .At(1_000).On(Contact.Freeze).Alarmed(Alarm.FrostInLockout).AllValves().Hold(HoldReason.Proof)
        .At(8_000).Switch(Shop).Switch(Loft).Hold(HoldReason.StartDelay)
        .At(13_000).Pump().Heat().Hold(HoldReason.None);
}
