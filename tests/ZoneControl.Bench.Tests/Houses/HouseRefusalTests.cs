using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Tests.Houses;

/// <summary>Each thing that a house file is refused or warned of for, with the sentence that a person reads.</summary>
public class HouseRefusalTests
{
    [Fact]
    public void The_sound_house_has_no_mistakes() => Assert.Empty(HouseText.Read(HouseText.Sound).Mistakes);

    [Fact]
    public void A_name_that_turns_the_direction_of_text_is_refused() =>
        Assert.Contains("one line of text", HouseText.Refusal(HouseText.With("name = \"Sound\"", "name = \"So\\u202Eund\"")), StringComparison.Ordinal);

    [Fact]
    public void A_misspelt_manifold_is_one_mistake_and_no_warning_follows() =>
        Assert.Contains(
            "did you mean \"main\"?",
            HouseText.Refusal(HouseText.With("tube = \"16x2 mm\"", "tube = \"16x2 mm\"\nmanifold = \"mian\"")),
            StringComparison.Ordinal);

    public static TheoryData<string, string, string> Refusals => new()
    {
        // Impossible houses.
        { "loops = [{ length = \"60 m\" }]", "loops = []", "house.toml:28: zone.bath.loops: found no loops, expected at least one loop, such as loops = [{ length = \"80 m\" }]" },
        { "loops = [{ length = \"60 m\" }]", "", "house.toml:25: zone.bath.loops: found nothing, expected at least one loop, such as loops = [{ length = \"80 m\" }]" },
        { "minimum_open = 2", "minimum_open = 4", "house.toml:30: controller.minimum_open: found 4, expected at most 3, what all zones can pass together" },
        { "minimum_open = 2", "minimum_open = 3\ncompanions = [\"bath\"]", "house.toml:30: controller.minimum_open: found 3, expected at most 1, what zone \"bath\" reaches when it calls alone: itself, its companions" },
        { "minimum_open = 2", "minimum_open = 2\ncompanions = []", "house.toml:30: controller.minimum_open: found 2, expected at most 1, what zone \"bath\" reaches when it calls alone: itself, its companions" },
        { "actuator = \"slow\"", "actuator = \"slow\"\nproof_time = \"2 min\"", "house.toml:24: zone.kitchen.proof_time: found 2 min, expected at least 4 min, the opening time of actuator \"slow\" (sooner, the pump could start against a valve that is still closed)" },
        { "actuator = \"told\"", "actuator = \"told\"\nswitch_limit = \"3 min 47 s\"", "house.toml:28: zone.bath.switch_limit: found 3 min 47 s, expected at least 3 min 48 s, the proof time and 3 s for the switch to be read" },
        { "minimum_open = 2", "minimum_open = 2\npump_overrun = \"4 s\"", "house.toml:31: controller.pump_overrun: found an overrun of 4 s, expected at least the heat lead of 5 s (heat goes off first and the pump carries the rest away)" },
        { "minimum_open = 2", "minimum_open = 2\nheat_lead = \"50 ms\"", "house.toml:31: controller.heat_lead: found a heat lead of 0.05 s, expected at least the scan period of 0.1 s" },
        { "minimum_open = 2", "minimum_open = 2\npump_rundown = \"99 ms\"", "house.toml:31: controller.pump_rundown: found a rundown of 0.099 s, expected at least the scan period of 0.1 s" },

        // Names and references.
        { "name = \"bath\"", "name = \"kitchen\"", "house.toml:26: zone.kitchen.name: found \"kitchen\" for the second time, expected another name for each zone" },
        { "name = \"told\"", "name = \"Told\"", null! },
        { "actuator = \"told\"", "actuator = \"tolt\"", null! },
        { "minimum_open = 2", "minimum_open = 2\ncompanions = [\"kitchn\"]", "house.toml:31: controller.companions[1]: found \"kitchn\", expected a zone: \"kitchen\" or \"bath\" (did you mean \"kitchen\"?)" },
        { "minimum_open = 2", "minimum_open = 2\ncompanions = [\"bath\", \"bath\"]", "house.toml:31: controller.companions[2]: found \"bath\" for the second time, expected each zone at most once" },
        { "{ length = \"60 m\" }", "{ length = \"60 m\", manifold = \"mian\" }", "house.toml:28: zone.bath.loops[1].manifold: found \"mian\", expected a manifold: \"main\" (did you mean \"main\"?)" },

        // Actuators.
        { "kind = \"two-wire\"", "kind = \"two-wire\"\nswitch_at = \"85 %\"", "house.toml:16: actuator.slow.switch_at: found an end switch on a two-wire actuator, expected kind = \"four-wire\", or no switch" },
        { "kind = \"two-wire\"", "kind = \"two-wire\"\nnormally = \"open\"", "house.toml:16: actuator.slow.normally: found a normally open actuator, expected a normally closed one (off must close the valve: with these it would not)" },
        { "kind = \"two-wire\"", "kind = \"two-wire\"\nreturns_by = \"power\"", "house.toml:16: actuator.slow.returns_by: found an actuator powered both ways, expected one that a spring or wax returns (off must close the valve: with these it would not)" },
        { "kind = \"two-wire\"", "kind = \"two-wire\"\ndead_time = \"4 min\"", "house.toml:16: actuator.slow.dead_time: found 4 min, expected less than 4 min, the opening time" },

        // The pump.
        { "[\"20 L/min\", \"4 m\"]", "[\"20 L/min\", \"5.1 m\"]", "house.toml:3: pump.curve[2]: found a curve that rises, expected no more head than at the point before" },
        { "[\"0 L/min\", \"5 m\"]", "[\"1 L/min\", \"5 m\"]", "house.toml:3: pump.curve[1]: found a first point with flow, expected a first point at no flow" },
        { "[\"40 L/min\", \"0 m\"]", "[\"40 L/min\", \"1 m\"]", "house.toml:3: pump.curve[3]: found a last point with head, expected a last point at no head (draw the curve on to where it meets the flow axis)" },
        { "[\"20 L/min\", \"4 m\"]", "[\"0 L/min\", \"4 m\"]", "house.toml:3: pump.curve[2]: found a flow that does not rise, expected more flow at each point" },
        { "minimum_flow = \"5 L/min\"", "minimum_flow = \"40 L/min\"", "house.toml:5: pump.minimum_flow: found 40 L/min, expected less than 40 L/min, the most that the curve gives" },
        { "curve = [[\"0 L/min\", \"5 m\"], [\"20 L/min\", \"4 m\"], [\"40 L/min\", \"0 m\"]]", "curve = \"flat\"", "house.toml:3: pump.curve: found \"flat\", expected a list of pairs of flow and head, such as [[\"0 L/min\", \"4 m\"], [\"30 L/min\", \"0 m\"]]" },

        // Values.
        { "{ length = \"60 m\" }", "{ length = \"80 bananas\" }", "house.toml:28: zone.bath.loops[1].length: found \"80 bananas\", expected a length such as \"80 m\" or \"250 ft\" (unknown unit; known are m, cm, mm, ft, in)" },
        { "power = \"60 W\"", "power = 60", "house.toml:4: pump.power: found the number 60 without a unit, expected a power such as \"60 W\"" },
        { "power = \"60 W\"", "power = \"60 V\"", "house.toml:4: pump.power: found \"60 V\", a voltage, expected a power such as \"60 W\"" },
        { "power = \"60 W\"", "power = \"60 kW\"", "house.toml:4: pump.power: found \"60 kW\", expected a power from \"1 W\" to \"5 kW\"" },
        { "minimum_open = 2", "minimum_open = 0", "house.toml:30: controller.minimum_open: found the number 0, expected a whole number from 1 to 16,000" },
        { "minimum_open = 2", "minimum_open = \"2\"", "house.toml:30: controller.minimum_open: found \"2\", expected a whole number from 1 to 16,000" },
        { "minimum_open = 2", "minimum_open = 2\nswitch_debounce = \"501 ms\"", "house.toml:31: controller.switch_debounce: found \"501 ms\", expected a time from \"0 ms\" to \"500 ms\"" },
        { "season = true", "season = 1", "house.toml:32: contacts.season: found the number 1, expected true or false, or a table such as { debounce = \"2 s\" }" },
        { "tube = \"16x2 mm\"", "tube = \"15x2 mm\"", "house.toml:12: every_loop.tube: found \"15x2 mm\", expected \"3/8 in\", \"1/2 in\", \"5/8 in\", \"3/4 in\", \"1 in\", \"16x2 mm\", \"17x2 mm\" or \"20x2 mm\" (did you mean \"16x2 mm\"?)" },

        // Contacts, and what hangs on them.
        { "season = true", "limit = { closed_means = \"tripped\" }", "house.toml:32: contacts.limit.closed_means: found a high limit that a closed contact means \"tripped\" to, expected closed_means = \"fine\": one that opens for \"tripped\" (a broken wire must be the safe side)" },
        { "season = true", "freeze = { closed_means = \"frost\" }", "house.toml:32: contacts.freeze.closed_means: found a freeze contact that a closed contact means \"frost\" to, expected closed_means = \"mild\": one that opens for \"frost\" (a broken wire must be the safe side)" },
        { "season = true", "flow = { closed_means = \"on\" }", "house.toml:32: contacts.flow.closed_means: found \"on\", expected \"flow\" or \"no flow\"" },
        { "season = true", "flow = \"yes\"", "house.toml:32: contacts.flow: found \"yes\", expected true or false, or a table such as { debounce = \"2 s\" }" },
        { "season = true", "limit = { debounce = \"501 ms\" }", "house.toml:32: contacts.limit.debounce: found \"501 ms\", expected a time from \"0 ms\" to \"500 ms\"" },
        { "season = true", "supply = { debounce = \"1 s\" }", "house.toml:32: contacts.supply.debounce: found \"1 s\", expected a time from \"0 ms\" to \"500 ms\"" },
        { "season = true", "service = 1", "house.toml:32: contacts.service: found the number 1, expected true or false" },
        { "minimum_open = 2\n[contacts]", "minimum_open = 2\npump_min_off = \"200 ms\"\n[contacts]\nlimit = true", "house.toml:31: controller.pump_min_off: found 0.2 s, expected at least 0.3 s, the high limit's debounce and a scan (a limit that is open at power-up must have been seen before the pump can start)" },
        { "minimum_open = 2\n[contacts]", "minimum_open = 2\npump_min_off = \"50 ms\"\n[contacts]\nflow = true", "house.toml:31: controller.pump_min_off: found 0.05 s, expected at least 0.1 s, one scan (a pump that stops for want of flow rests, or nothing would say why it is off)" },
        { "minimum_open = 2\n[contacts]", "minimum_open = 2\nflow_proof_time = \"1 s\"\n[contacts]\nflow = true", "house.toml:31: controller.flow_proof_time: found 1 s, expected at least 1.2 s, the flow switch's debounce and two scans (sooner, no start would succeed)" },
        { "minimum_flow = \"5 L/min\"", "minimum_flow = \"5 L/min\"\nflow_switch_at = \"41 L/min\"", "house.toml:6: pump.flow_switch_at: found 41 L/min, expected less than 40 L/min, the most that the curve gives" },
        { "minimum_open = 2", "minimum_open = 2\npump_max_starts = 0", "house.toml:31: controller.pump_max_starts: found the number 0, expected a whole number from 1 to 120" },
        { "minimum_open = 2", "minimum_open = 2\nexercise_interval = \"30 s\"", "house.toml:31: controller.exercise_interval: found an exercise every 30 s that is put off by 30 s, expected an interval of 1 min at least, and no longer a retry than that (\"0 s\" is for no exercise at all)" },
        { "minimum_open = 2", "minimum_open = 2\nexercise_retry = \"2 d\"\nexercise_interval = \"1 d\"", "house.toml:31: controller.exercise_retry: found an exercise every 1 d that is put off by 2 d, expected an interval of 1 min at least, and no longer a retry than that (\"0 s\" is for no exercise at all)" },
        { "minimum_open = 2", "minimum_open = 2\nstall_limit = \"50 ms\"", "house.toml:31: controller.stall_limit: found a stall limit of 0.05 s, expected at least the scan period of 0.1 s" },

        // A panel that drives valves.
        { "actuator = \"slow\"", "actuator = \"slow\"\nsense_contact = \"breaks\"", "house.toml:24: zone.kitchen.sense_contact: found a sense contact in a zone that is not gated, expected gated = true, or no such contact" },

        // The transformer.
        { "[controller]", "[transformer]\nrating = \"15 VA\"\n[controller]", "house.toml:30: transformer.rating: found 12 VA of 15 VA that may be used, expected at least 21 VA, what zone \"kitchen\" needs to open while all others are held" },
        { "[controller]", "[transformer]\nrating = \"40 VA\"\nsupply = \"12 V\"\n[controller]", null! },
        { "[controller]", "[transformer]\nshare = \"50 %\"\n[controller]", "house.toml:29: transformer.rating: found nothing, expected a load such as \"40 VA\"" },
        { "kind = \"two-wire\"", "kind = \"two-wire\"\nhold = \"5 VA\"\ninrush = \"4 VA\"", "house.toml:17: actuator.slow.inrush: found 4 VA, expected at least the 5 VA that it takes to hold" },
        { "kind = \"two-wire\"", "kind = \"two-wire\"\ninrush_time = \"5 min\"", "house.toml:16: actuator.slow.inrush_time: found 5 min, expected at most 4 min, the opening time" },
        { "kind = \"two-wire\"", "kind = \"two-wire\"\nswitch_contact = \"breaks\"", "house.toml:16: actuator.slow.switch_contact: found a way for an end switch to tell, expected an actuator with an end switch, or no switch_contact" },

        // Keys and tables.
        { "[contacts]", "[contact]", "house.toml:31: contact: found an unknown table (did you mean \"contacts\"?)" },
        { "season = true", "seasn = true", "house.toml:32: contacts.seasn: found an unknown key (did you mean \"season\"?)" },
        { "minimum_open = 2", "", "house.toml:29: controller.minimum_open: found nothing, expected a whole number from 1 to 16,000" },
        { "power = \"60 W\"", "", "house.toml:2: pump.power: found nothing, expected a power such as \"60 W\"" },
        { "tube = \"16x2 mm\"", "tube = \"16x2 mm\"\ninside = \"12 mm\"", "house.toml:13: every_loop.inside: found both \"tube\" and \"inside\", expected one of them" },
        { "[[manifold]]\nname = \"main\"\n", "[[manifold]]\nname = \"main\"\n[[manifold]]\nname = \"upper\"\n", null! },
        { "[pump]", "[[pump]]", "house.toml:2: pump: found a list, expected a table" },
        { "[[manifold]]", "[manifold]", null! },
        { "name = \"Sound\"", "name = \"a\\u001b[31m\"", "house.toml:1: name: found \"a\u00BF[31m\", expected one line of text, 1 to 60 characters" },
        { "name = \"Sound\"", "name = \"Sound\"\nname = \"Again\"", null! },
        { "name = \"Sound\"", "name = \"Sound", "house.toml:1: found text that is not TOML (Invalid newline in a string)" },
        { "season = true", "season = [true", "house.toml:32: found a list or an inline table that is not closed" },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void A_house_that_cannot_be_is_refused_with_one_sentence(string piece, string replacement, string? sentence)
    {
        HouseReading reading = HouseText.With(piece, replacement);
        if (sentence is not null)
            Assert.Equal(sentence, HouseText.Refusal(reading));
        else
            Assert.Null(reading.House);
        Assert.All(reading.Mistakes, mistake => Assert.InRange(mistake.Line, 1, 40));
    }

    [Fact]
    public void An_unknown_actuator_is_refused_and_no_warning_follows_of_the_one_that_was_meant() => Assert.Equal(
        "house.toml:27: zone.bath.actuator: found \"tolt\", expected an actuator: \"slow\" or \"told\" (did you mean \"told\"?)",
        HouseText.Refusal(HouseText.With("actuator = \"told\"", "actuator = \"tolt\"")));

    [Fact]
    public void A_gated_zone_is_nobodys_companion_and_its_thermostat_calls_the_panel()
    {
        string text = HouseText.Sound
            .Replace("actuator = \"slow\"", "actuator = \"slow\"\ngated = true\ncall_contact = \"breaks\"", StringComparison.Ordinal)
            .Replace("minimum_open = 2", "minimum_open = 1\nheat_demand_through = true\ncompanions = [\"kitchen\"]", StringComparison.Ordinal);
        Assert.Equal(
            [
                "house.toml:25: zone.kitchen.call_contact: found a thermostat's contact in a gated zone, expected no such contact: the thermostat calls the panel",
                "house.toml:34: controller.companions[1]: found \"kitchen\", a gated zone, expected zones that ZoneControl opens itself (the panel opens a gated zone, nobody else)",
            ],
            HouseText.Read(text).Mistakes.Select(mistake => mistake.ToString()));
    }

    [Fact]
    public void A_gated_house_is_refused_unless_heat_demand_passes_through_ZoneControl()
    {
        string text = HouseText.Sound
            .Replace("actuator = \"slow\"", "actuator = \"slow\"\ngated = true", StringComparison.Ordinal)
            .Replace("minimum_open = 2", "minimum_open = 1\nheat_demand_through = false", StringComparison.Ordinal);
        Assert.Equal(
            "house.toml:32: controller.heat_demand_through: found false, expected true, since zone \"kitchen\" is gated: "
                + "wire the panel's heat demand through ZoneControl as well (else heat is asked for while the pump is held)",
            HouseText.Refusal(HouseText.Read(text)));
        Assert.Empty(HouseText.Read(text.Replace("through = false", "through = true", StringComparison.Ordinal)).Mistakes);
    }

    [Fact]
    public void Actuators_made_for_another_supply_than_their_transformer_are_refused()
    {
        HouseReading reading = HouseText.With("[controller]", "[transformer]\nrating = \"40 VA\"\nsupply = \"12 V\"\n[controller]");
        Assert.Equal(
            [
                "house.toml:31: transformer.supply: found 12 V, expected 24 V, which actuator \"slow\" is made for",
                "house.toml:31: transformer.supply: found 12 V, expected 24 V, which actuator \"told\" is made for",
            ],
            reading.Mistakes.Select(mistake => mistake.ToString()));
    }

    [Fact]
    public void A_loop_must_name_its_manifold_when_there_are_several()
    {
        HouseReading reading = HouseText.With("name = \"main\"", "name = \"main\"\n[[manifold]]\nname = \"upper\"");
        Assert.Equal(3, reading.Mistakes.Count(mistake =>
            mistake.IsError && mistake.Key.EndsWith(".manifold", StringComparison.Ordinal)
            && mistake.Expected == "the name of a manifold, since there are several"));
    }

    [Fact]
    public void A_key_given_twice_is_refused()
    {
        string sentence = HouseText.Refusal(HouseText.With("power = \"60 W\"", "power = \"60 W\"\npower = \"70 W\""));
        Assert.StartsWith("house.toml:5: found text that is not TOML (The key `", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_house_without_zones_is_refused()
    {
        int zones = HouseText.Sound.IndexOf("[[zone]]", StringComparison.Ordinal);
        int controller = HouseText.Sound.IndexOf("[controller]", StringComparison.Ordinal);
        HouseReading reading = HouseText.Read(HouseText.Sound[..zones] + HouseText.Sound[controller..]);
        Assert.Null(reading.House);
        Assert.Contains("house.toml:1: zone: found nothing, expected at least one [[zone]]", reading.Mistakes.Select(m => m.ToString()));
    }

    [Fact]
    public void A_seventeenth_zone_is_refused_and_sixteen_are_not()
    {
        string Zones(int more) => string.Concat(Enumerable.Range(1, more).Select(i =>
            $"[[zone]]\nname = \"z{i}\"\nactuator = \"slow\"\nloops = [{{ length = \"50 m\" }}]\n"));
        Assert.Empty(HouseText.With("[controller]", Zones(14) + "[controller]").Mistakes);
        Assert.Equal("house.toml:86: zone.z15.name: found a seventeenth zone, expected at most 16 zones",
            HouseText.Refusal(HouseText.With("[controller]", Zones(15) + "[controller]")));
    }

    public static TheoryData<string, string, string> Warnings => new()
    {
        { "minimum_open = 2", "minimum_open = 2\npump_start_delay = \"2 min\"", "house.toml:31: warning: controller.pump_start_delay: found 2 min, expected at least 3 min, the opening time of \"told\", the quickest actuator" },
        { "actuator = \"slow\"", "actuator = \"slow\"\nswitch_limit = \"9 min\"", "house.toml:24: warning: zone.kitchen.switch_limit: found a time for an end switch, expected an actuator with one: \"slow\" has none" },
        { "actuator = \"told\"", "actuator = \"told\"\nswitch_min_time = \"2 min 59 s\"", "house.toml:28: warning: zone.bath.switch_min_time: found 2 min 59 s, expected at most 2 min 39.75 s, when a healthy switch of \"told\" makes (a healthy switch would never be believed)" },
        { "[[zone]]\nname = \"bath\"", "[[actuator]]\nname = \"spare\"\nkind = \"motorised\"\nopening_time = \"9 s\"\n[[zone]]\nname = \"bath\"", "house.toml:26: warning: actuator.spare.name: found an actuator that nothing uses, expected a zone or loop that names it" },
        { "minimum_open = 2", "minimum_open = 2\nflow_retries = 1", "house.toml:31: warning: controller.flow_retries: found a setting that nothing uses, expected a house with flow = true under [contacts]" },
        { "minimum_open = 2", "minimum_open = 2\nservice_limit = \"1 h\"", "house.toml:31: warning: controller.service_limit: found a setting that nothing uses, expected a house with service = true under [contacts]" },
        { "[controller]", "[bypass]\nopens_at = \"0.5 bar\"\nkvs = 2\n[controller]", "house.toml:30: warning: bypass.opens_at: found 0.5 bar, expected less than 0.49 bar, the most that the pump can give (set so, the bypass never opens)" },
    };

    [Theory]
    [MemberData(nameof(Warnings))]
    public void What_can_be_but_should_be_looked_at_is_warned_of(string piece, string replacement, string sentence) =>
        Assert.Equal(sentence, HouseText.Warning(HouseText.With(piece, replacement)));

    [Fact]
    public void Five_different_mistakes_get_five_messages_in_the_order_of_the_file()
    {
        string text = HouseText.Sound
            .Replace("power = \"60 W\"", "power = 60", StringComparison.Ordinal)
            .Replace("{ length = \"70 m\" }", "{ lenght = \"70 m\", length = \"70 m\" }", StringComparison.Ordinal)
            .Replace("kind = \"four-wire\"", "kind = \"for-wire\"", StringComparison.Ordinal)
            .Replace("minimum_open = 2", "minimum_open = 7", StringComparison.Ordinal)
            .Replace("inside = \"26 mm\"", "inside = \"26 L\"", StringComparison.Ordinal);
        HouseReading reading = HouseText.Read(text);
        Assert.Null(reading.House);
        Assert.Equal(
            [
                "house.toml:4: pump.power: found the number 60 without a unit, expected a power such as \"60 W\"",
                "house.toml:8: mains.inside: found \"26 L\", a volume, expected a length such as \"80 m\" or \"250 ft\"",
                "house.toml:19: actuator.told.kind: found \"for-wire\", expected \"two-wire\", \"four-wire\" or \"motorised\" (did you mean \"four-wire\"?)",
                "house.toml:24: zone.kitchen.loops[2].lenght: found an unknown key (known here: label, manifold, length, tube, inside, roughness, bends_k, valve_kvs, valve_cv, balancing_kv, balancing_cv)",
                "house.toml:30: controller.minimum_open: found 7, expected at most 3, what all zones can pass together",
            ],
            reading.Mistakes.Select(mistake => mistake.ToString()));
    }

    [Fact]
    public void After_a_syntax_error_the_other_mistakes_are_still_reported()
    {
        string text = HouseText.Sound
            .Replace("power = \"60 W\"", "power = 60", StringComparison.Ordinal)
            .Replace("opening_time = \"4 min\"", "opening_time = \"4 min", StringComparison.Ordinal)
            .Replace("loops = [{ length = \"60 m\" }]", "loops = [{ length = \"60 m\" }", StringComparison.Ordinal)
            .Replace("season = true", "season = 3", StringComparison.Ordinal);
        Assert.Equal(
            [
                "house.toml:4: pump.power: found the number 60 without a unit, expected a power such as \"60 W\"",
                "house.toml:16: found text that is not TOML (Invalid newline in a string)",
                "house.toml:28: found a list or an inline table that is not closed",
                "house.toml:32: contacts.season: found the number 3, expected true or false, or a table such as { debounce = \"2 s\" }",
            ],
            HouseText.Read(text).Mistakes.Select(mistake => mistake.ToString()));
    }

    [Theory]
    [InlineData("name = \"C:\\")]
    [InlineData("name = \"\\\uD800\"")]
    [InlineData("\"\\")]
    public void A_backslash_where_the_library_trips_over_it_is_a_mistake_and_no_crash(string text)
    {
        HouseReading reading = HouseText.Read(text);
        Assert.Null(reading.House);
        Assert.Contains(reading.Mistakes, mistake => mistake is { Line: 1, Found: "text that is not TOML" });
    }

    [Fact]
    public void Tables_nested_too_deep_are_a_mistake_and_no_crash()
    {
        HouseReading reading = HouseText.Read("name = " + new string('[', 100_000));
        Assert.Null(reading.House);
        Assert.Contains("not TOML", Assert.Single(reading.Mistakes).Found, StringComparison.Ordinal);
    }
}
