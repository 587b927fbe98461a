using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Houses;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Scripts;

public class ScriptFileTests
{
    private static readonly House _fitted = HouseText.House(HouseText.Sound.Replace(
        "season = true",
        "season = true\nflow = true\nlimit = true\nfreeze = true\npriority = true\nreset = true\nsupply = true\nservice = true",
        StringComparison.Ordinal));

    [Fact]
    public void A_sound_script_is_read_whole()
    {
        ScriptReading reading = ScriptText.Read(ScriptText.Sound);
        Assert.Empty(reading.Mistakes);
        Script script = reading.Script!;
        Assert.Equal(("Sound", 3_600_000, "script.toml"), (script.Title, script.DurationMs, script.FileName));
        Assert.Equal(35, script.Conditions.WaterC, 1e-9);
        Assert.Equal((15, new TimeOnly(6, 0)), (script.Conditions.PlantRoomC, script.Conditions.ClockStart));

        // In order of time, not of the file.
        Assert.Equal([60_000, 300_000, 1_800_000], script.Events.Select(scriptEvent => scriptEvent.AtMs));
        Assert.Equal(new FaultChange(0, new ActuatorFault { Slowness = 3 }, "actuator takes 3 times as long"), script.Events[0].Action);
        Assert.Equal(new ScriptEvent(300_000, new CallChange(0b11, true), "both", 7), script.Events[1]);
        Assert.Equal(new SeasonChange(true), script.Events[2].Action);
        Assert.Equal(new Expectation(new PumpIs(false), new Throughout(0, 300_000), "", 19), script.Expectations[0]);
        Assert.Equal(new Expectation(new AlarmIs(ValveAlarm.Late, 1, false), new SomeTime(600_000, 120_000), "", 23), script.Expectations[1]);
    }

    [Fact]
    public void Conditions_that_a_script_does_not_state_have_defaults() =>
        Assert.Equal(new ScriptConditions(30, 20), ScriptText.Script("").Conditions);

    [Fact]
    public void Events_of_one_moment_stay_in_the_order_of_the_file()
    {
        Script script = ScriptText.Script("""
            event = [
                { at = "1 min", power = "off" },
                { at = "1 min", power = "on" },
                { at = "0 s", call = "bath" },
                { at = "1 min", end_call = "bath" },
            ]
            """);
        Assert.Equal(
            [new CallChange(0b10, true), new PowerChange(false), new PowerChange(true), new CallChange(0b10, false)],
            script.Events.Select(scriptEvent => scriptEvent.Action));
    }

    [Fact]
    public void Faults_of_a_zone_add_up_until_it_is_repaired()
    {
        Script script = ScriptText.Script("""
            event = [
                { at = "4 min", repair = "bath" },
                { at = "1 min", fault = "stuck", zone = "bath" },
                { at = "2 min", fault = "switch-always-made", zone = "bath" },
                { at = "3 min", fault = "dead", zone = "kitchen" },
                { at = "5 min", fault = "switch-never-makes", zone = "bath" },
            ]
            """);
        Assert.Equal(
            [
                new ActuatorFault { Stuck = true },
                new ActuatorFault { Stuck = true, Switch = SwitchFault.AlwaysMade },
                new ActuatorFault { Dead = true },
                ActuatorFault.None,
                new ActuatorFault { Switch = SwitchFault.NeverMakes },
            ],
            script.Events.Select(scriptEvent => ((FaultChange)scriptEvent.Action).Fault));
    }

    public static TheoryData<string, string> Expectations => new()
    {
        { "pump = \"on\", within = \"8 min\"", "pump on within 8 min" },
        { "pump = \"off\", within = \"8 min\", after = \"5 min\"", "pump off within 8 min after 5 min" },
        { "heat = \"on\", at = \"90 s\"", "heat demand on at 1 min 30 s" },
        { "heat = \"off\", from = \"1 min\", until = \"2 min\"", "heat demand off from 1 min until 2 min" },
        { "valve = \"bath\", is = \"open\", at = \"1 h\"", "bath: valves opened at 1 h" },
        { "valve = \"kitchen\", is = \"shut\", at = \"0 s\"", "kitchen: valves released at 0 s" },
        { "hold = \"valves opening\", at = \"3 min\"", "hold reason \"valves opening\" at 3 min" },
        { "alarm = \"late\", zone = \"bath\", at = \"3 min\"", "alarm \"late\" for bath raised at 3 min" },
        { "alarm = \"latched\", zone = \"bath\", is = \"raised\", at = \"3 min\"", "alarm \"latched\" for bath raised at 3 min" },
        { "alarm = \"early\", zone = \"bath\", is = \"clear\", at = \"3 min\"", "alarm \"early\" for bath clear at 3 min" },
        { "alarm = \"stuck\", zone = \"bath\", at = \"3 min\"", "alarm \"stuck\" for bath raised at 3 min" },
        { "alarm = \"high limit\", at = \"3 min\"", "alarm \"high limit\" raised at 3 min" },
        { "alarm = \"clock fault\", is = \"clear\", at = \"3 min\"", "alarm \"clock fault\" clear at 3 min" },
        { "exercises = 1", "1 exercise done" },
        { "exercises = 0, from = \"1 min\", until = \"1 h\"", "0 exercises done from 1 min until 1 h" },
        { "deadhead_at_most = \"0 s\"", "deadhead at most 0 s" },
        { "deadhead_at_most = \"2.5 s\", from = \"1 min\", until = \"1 h\"", "deadhead at most 2.5 s from 1 min until 1 h" },
    };

    [Theory]
    [MemberData(nameof(Expectations))]
    public void Every_form_of_expectation_is_read_and_told_in_words(string entry, string words) =>
        Assert.Equal(words, Assert.Single(ScriptText.Script($"expect = [{{ {entry} }}]").Expectations).InWords(ScriptText.House));

    public static TheoryData<string, string, string> Refusals => new()
    {
        { "at = \"30 min\"", "at = \"1 h 1 s\"", "script.toml:17: event[3].at: found 1 h 1 s, expected at most 1 h, the duration of the script" },
        { "season = \"lockout\"", "season = \"summer\"", "script.toml:18: event[3].season: found \"summer\", expected \"heating\" or \"lockout\"" },
        { "season = \"lockout\"", "", "script.toml:16: event[3]: found no action, expected exactly one action: call, end_call, season, limit, freeze, priority, reset, supply, service, fault, repair, pump_fault, flow_switch_fault, clock_ahead, clock_back, clock_stop, power" },
        { "season = \"lockout\"", "season = \"lockout\"\npower = \"on\"", "script.toml:19: event[3].power: found \"season\" and \"power\" together, expected exactly one action: call, end_call, season, limit, freeze, priority, reset, supply, service, fault, repair, pump_fault, flow_switch_fault, clock_ahead, clock_back, clock_stop, power" },
        { "call = [\"kitchen\", \"bath\"]", "call = [\"kitchen\", \"bth\"]", "script.toml:9: event[1].call[2]: found \"bth\", expected a zone of this house: \"kitchen\" or \"bath\" (did you mean \"bath\"?)" },
        { "call = [\"kitchen\", \"bath\"]", "call = []", "script.toml:9: event[1].call: found an empty list, expected the name of a zone or a list of names" },
        { "call = [\"kitchen\", \"bath\"]", "cal = [\"kitchen\", \"bath\"]\nrepair = \"bath\"", "script.toml:9: event[1].cal: found an unknown key (did you mean \"call\"?)" },
        { "fault = \"slow\"", "fault = \"stuk\"", null! },
        { "fault = \"slow\"\ntimes = 3", "fault = \"stuck\"\ntimes = 3", "script.toml:14: event[2].times: found a factor without a slow actuator, expected \"times\" only beside fault = \"slow\"" },
        { "fault = \"slow\"\ntimes = 3", "fault = \"slow\"", "script.toml:11: event[2].times: found nothing, expected a number from 0.1 to 100" },
        { "times = 3", "times = 1000", "script.toml:14: event[2].times: found the number 1000, expected a number from 0.1 to 100" },
        { "zone = \"kitchen\"", "", "script.toml:11: event[2].zone: found nothing, expected the name of a zone" },
        { "fault = \"slow\"\ntimes = 3", "fault = \"switch-never-makes\"", "script.toml:13: event[2].fault: found an end switch fault in zone \"kitchen\", expected a zone whose actuator has an end switch" },
        { "fault = \"slow\"\ntimes = 3", "fault = \"switch-always-made\"", "script.toml:13: event[2].fault: found an end switch fault in zone \"kitchen\", expected a zone whose actuator has an end switch" },
        { "season = \"lockout\"", "limit = \"tripped\"", "script.toml:18: event[3].limit: found a move of the high limit, expected a house that has one: limit = true under [contacts]" },
        { "season = \"lockout\"", "freeze = \"frost\"", "script.toml:18: event[3].freeze: found a move of the freeze contact, expected a house that has one: freeze = true under [contacts]" },
        { "season = \"lockout\"", "flow_switch_fault = \"stuck-on\"", "script.toml:18: event[3].flow_switch_fault: found a move of the flow switch, expected a house that has one: flow = true under [contacts]" },
        { "season = \"lockout\"", "service = \"off\"", "script.toml:18: event[3].service: found a move of hand switches, expected a house that has them: service = true under [contacts]" },
        { "season = \"lockout\"", "pump_fault = \"ded\"", "script.toml:18: event[3].pump_fault: found \"ded\", expected \"dead\", \"runs-on\" or \"none\" (did you mean \"dead\"?)" },
        { "season = \"lockout\"", "supply = \"of\"", "script.toml:18: event[3].supply: found \"of\", expected \"on\" or \"off\" (did you mean \"off\"?)" },
        { "season = \"lockout\"", "clock_back = \"8 d\"", "script.toml:18: event[3].clock_back: found \"8 d\", expected a time from \"1 ms\" to \"7 d\"" },
        { "alarm = \"late\"\nzone = \"bath\"", "alarm = \"high limit\"\nzone = \"bath\"", "script.toml:25: expect[2].zone: found a zone beside an alarm of the whole house, expected no zone, or an alarm of a zone" },
        { "zone = \"bath\"\nis", "is", "script.toml:23: expect[2].zone: found nothing, expected the name of a zone" },
        { "pump = \"off\"\nfrom = \"0 s\"\nuntil = \"5 min\"", "exercises = 1\nat = \"5 min\"", "script.toml:19: expect[1]: found the times at, expected \"from\" and \"until\", or no times for the whole run" },
        { "pump = \"off\"", "pump = \"of\"", "script.toml:20: expect[1].pump: found \"of\", expected \"on\" or \"off\" (did you mean \"off\"?)" },
        { "pump = \"off\"", "hold = \"valve opening\"", "script.toml:20: expect[1].hold: found \"valve opening\", expected \"no hold\", \"hand control\", \"hot water first\", \"season lockout\", \"valve latched\", \"high limit\", \"no flow\", \"flow with pump off\", \"no actuator supply\", \"too few valves\", \"valves opening\", \"start delay\", \"pump resting\" or \"reset\" (did you mean \"valves opening\"?)" },
        { "pump = \"off\"", "valve = \"bath\"", "script.toml:19: expect[1].is: found nothing, expected \"open\" or \"shut\"" },
        { "pump = \"off\"", "pump = \"off\"\nzone = \"bath\"", "script.toml:21: expect[1].zone: found a zone without an alarm, expected \"zone\" only beside \"alarm\"" },
        { "pump = \"off\"", "pump = \"off\"\nis = \"open\"", "script.toml:21: expect[1].is: found \"is\" without a valve or an alarm, expected \"is\" only beside \"valve\" or \"alarm\"" },
        { "pump = \"off\"", "", "script.toml:19: expect[1]: found no expectation, expected exactly one expectation: pump, heat, valve, hold, alarm, exercises, deadhead_at_most" },
        { "from = \"0 s\"\nuntil = \"5 min\"", "", "script.toml:19: expect[1]: found no time, expected \"at\", or \"from\" and \"until\", or \"within\" with or without \"after\"" },
        { "from = \"0 s\"\nuntil = \"5 min\"", "from = \"0 s\"", "script.toml:19: expect[1]: found the times from, expected \"at\", or \"from\" and \"until\", or \"within\" with or without \"after\"" },
        { "from = \"0 s\"", "from = \"5 min\"", "script.toml:22: expect[1].until: found 5 min, expected later than \"from\", which is 5 min" },
        { "until = \"5 min\"", "until = \"2 h\"", "script.toml:22: expect[1].until: found 2 h, expected at most 1 h, the duration of the script" },
        { "within = \"2 min\"", "within = \"51 min\"", "script.toml:28: expect[2].within: found a window that ends at 1 h 1 min, expected an end at 1 h at most, the duration of the script" },
        { "is = \"clear\"", "is = \"shut\"", "script.toml:26: expect[2].is: found \"shut\", expected \"raised\" or \"clear\"" },
        { "clock_start = \"06:00\"", "clock_start = \"6 o'clock\"", "script.toml:6: conditions.clock_start: found \"6 o'clock\", expected a time of day such as \"06:00\"" },
        { "\"95 °F\"", "\"101 °C\"", "script.toml:4: conditions.water_temperature: found \"101 °C\", expected a temperature from \"1 °C\" to \"95 °C\"" },
        { "duration = \"1 h\"", "duration = \"8 d\"", "script.toml:2: duration: found \"8 d\", expected a time from \"1 s\" to \"7 d\"" },
        { "duration = \"1 h\"", "", "script.toml:1: duration: found nothing, expected a time such as \"3 min\" or \"1 h 20 min\"" },
        { "title = \"Sound\"", "", "script.toml:1: title: found nothing, expected one line of text, 1 to 60 characters" },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void A_script_that_cannot_be_is_refused_with_one_sentence(string piece, string replacement, string? sentence)
    {
        ScriptReading reading = ScriptText.With(piece, replacement);
        Assert.Null(reading.Script);
        if (sentence is not null)
            Assert.Equal(sentence, Assert.Single(reading.Mistakes).ToString());
    }

    [Fact]
    public void A_move_of_the_season_contact_is_refused_where_the_house_has_none()
    {
        var house = ScriptText.House with { Contacts = HouseContacts.None };
        ScriptReading reading = ScriptFile.Parse(ScriptText.Sound, "script.toml", house);
        Assert.Equal(
            "script.toml:18: event[3].season: found a move of the season switch, expected a house that has one: season = true under [contacts]",
            Assert.Single(reading.Mistakes).ToString());
    }

    [Fact]
    public void Contacts_hand_switches_faults_and_the_clock_are_events()
    {
        ScriptReading reading = ScriptFile.Parse("""
            title = "t"
            duration = "1 h"
            event = [
                { at = "1 min", limit = "tripped" },
                { at = "2 min", freeze = "mild" },
                { at = "3 min", priority = "on" },
                { at = "4 min", reset = "pressed" },
                { at = "5 min", supply = "off" },
                { at = "6 min", service = { zones = ["kitchen", "bath"], pump = true } },
                { at = "7 min", service = { pump = true } },
                { at = "8 min", service = "off" },
                { at = "9 min", pump_fault = "runs-on" },
                { at = "10 min", flow_switch_fault = "stuck-off" },
                { at = "11 min", clock_ahead = "3 s" },
                { at = "12 min", clock_back = "1 min 10 s" },
                { at = "13 min", clock_stop = "2 s" },
            ]
            """, "script.toml", _fitted);
        Assert.Empty(reading.Mistakes);
        Assert.Equal(
            [
                "high limit: tripped", "freeze contact: mild", "priority contact: on", "reset button: pressed",
                "actuator supply: off", "hand switches: kitchen and bath, pump", "hand switches: pump", "hand switches all off",
                "the pump's relay is welded: it runs on", "the flow switch sticks at no flow",
                "the controller's clock jumps ahead 3 s", "the controller's clock jumps back 1 min 10 s",
                "the controller's clock stands still for 2 s",
            ],
            reading.Script!.Events.Select(scriptEvent => scriptEvent.Action.InWords(_fitted)));
        Assert.Equal(
            [
                new ContactChange(ContactKind.Of(Contact.Limit), true), new ContactChange(ContactKind.Of(Contact.Freeze), false),
                new ContactChange(ContactKind.Of(Contact.Priority), true), new ContactChange(ContactKind.Of(Contact.Reset), true),
                new ContactChange(ContactKind.Of(Contact.Supply), false), new ServiceChange(0b11, true), new ServiceChange(0, true),
                new ServiceChange(0, false), new PumpFaultChange(PumpFault.RunsOn),
                new FlowSwitchFaultChange(FlowSwitchFault.StuckOff), new ClockJump(3_000), new ClockJump(-70_000), new ClockStop(2_000),
            ],
            reading.Script.Events.Select(scriptEvent => scriptEvent.Action));
    }

    [Fact]
    public void The_supply_may_go_in_a_house_that_does_not_sense_it() =>
        Assert.Empty(ScriptText.With("season = \"lockout\"", "supply = \"off\"").Mistakes);

    [Fact]
    public void A_hand_switch_of_a_gated_zone_is_refused()
    {
        House gated = _fitted with { Zones = [_fitted.Zones[0] with { Gated = true }, _fitted.Zones[1]] };
        ScriptReading reading = ScriptFile.Parse(
            ScriptText.Sound.Replace("season = \"lockout\"", "service = { zones = [\"kitchen\"] }", StringComparison.Ordinal), "script.toml", gated);
        Assert.Equal(
            "script.toml:18: event[3].service.zones: found kitchen: gated, expected zones that ZoneControl opens itself "
                + "(the panel opens a gated zone, nobody else)",
            Assert.Single(reading.Mistakes).ToString());
    }

    [Fact]
    public void Every_alarm_of_the_house_has_a_word_and_a_sentence_of_its_own()
    {
        int[] bits = [.. typeof(Alarm).GetFields().Select(field => (int)field.GetValue(null)!).Order()];
        Assert.Equal(bits, AlarmWords.All.Select(word => word.Alarm));
        Assert.Equal(bits.Length, AlarmWords.All.DistinctBy(word => word.Word).Count());
        Assert.All(AlarmWords.All, word => Assert.EndsWith(".", word.Sentence, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_hold_reason_has_a_word_and_a_sentence_of_its_own()
    {
        Assert.Equal(Enum.GetValues<HoldReason>(), HoldWords.All.Select(word => word.Reason));
        Assert.Equal(HoldWords.All.Count, HoldWords.All.DistinctBy(word => word.Word).Count());
        Assert.Equal(HoldWords.All.Count, HoldWords.All.DistinctBy(word => word.Sentence).Count());
        Assert.All(HoldWords.All, word => Assert.EndsWith(".", word.Sentence, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0, "0 s")]
    [InlineData(200, "0.2 s")]
    [InlineData(61_000, "1 min 1 s")]
    [InlineData(4_800_000, "1 h 20 min")]
    [InlineData(90_061_005, "1 d 1 h 1 min 1.005 s")]
    public void Times_in_words_are_what_files_read(long ms, string words)
    {
        Assert.Equal(words, Durations.InWords(ms));
        Assert.Equal(ms, Bench.Files.Quantities.Read(words, Bench.Files.Dimension.Time).Value!.Value, 1e-6);
    }
}
