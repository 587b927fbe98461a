using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Files;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Scripts;

/// <summary>What is written reads back as the same events.</summary>
public class ScriptWriterTests
{
    public static TheoryData<string, string> Examples => ExampleTests.Pairs;

    [Theory]
    [MemberData(nameof(Examples))]
    public void A_script_that_is_written_reads_back_as_it_was(string houseFile, string scriptFile)
    {
        (House house, Script script) = ExampleTests.Load(houseFile, scriptFile);

        Script again = Read(ScriptWriter.Write(script, house), house);

        Assert.Equal(script.Title, again.Title);
        Assert.Equal(script.Text, again.Text);
        Assert.Equal(script.DurationMs, again.DurationMs);
        Assert.Equal(script.Conditions.WaterC, again.Conditions.WaterC, 9);
        Assert.Equal(script.Conditions.PlantRoomC, again.Conditions.PlantRoomC, 9);
        Assert.Equal(script.Conditions.ClockStart, again.Conditions.ClockStart);
        Assert.NotEmpty(script.Events);
        Assert.Equal(script.Events.Select(Essence), again.Events.Select(Essence));
    }

    [Fact]
    public void Every_action_has_its_words_in_a_file()
    {
        (House house, _) = ExampleTests.Load("toolworks.house.toml", "toolworks-by-hand.script.toml");
        ScriptAction[] actions =
        [
            new CallChange(0b101, true), new CallChange(0b1, false), new SeasonChange(true), new SeasonChange(false),
            new FaultChange(0, new ActuatorFault { Switch = SwitchFault.AlwaysMade }, ""),
            new FaultChange(0, new ActuatorFault { Switch = SwitchFault.NeverMakes, Stuck = true, Dead = true, Slowness = 2.5 }, ""),
            new FaultChange(0, ActuatorFault.None, ""),
            .. ContactKind.All.Where(k => k.Contact is not (Logic.Contact.Lockout or Logic.Contact.Flow))
                .SelectMany(k => new[] { new ContactChange(k, true), new ContactChange(k, false) }),
            new ServiceChange(0b1, false), new ServiceChange(0, true), new ServiceChange(0b11, true), new ServiceChange(0, false),
            new PumpFaultChange(PumpFault.Dead), new PumpFaultChange(PumpFault.RunsOn), new PumpFaultChange(PumpFault.None),
            new FlowSwitchFaultChange(FlowSwitchFault.StuckOn), new FlowSwitchFaultChange(FlowSwitchFault.StuckOff),
            new FlowSwitchFaultChange(FlowSwitchFault.None),
            new ClockJump(1234), new ClockJump(-60_000), new ClockStop(10_000), new PowerChange(false), new PowerChange(true),
        ];
        var script = new Script
        {
            Title = "All \"of\" them \\ ü",
            Text = "Two\nlines",
            DurationMs = 3_600_000,
            Conditions = new ScriptConditions(31.5, 18, new TimeOnly(6, 30)),
            Events = [.. actions.Select((action, i) => new ScriptEvent(i * 61_100L, action, i == 3 ? "a \"note\"" : ""))],
        };

        Script again = Read(ScriptWriter.Write(script, house), house);

        Assert.Equal(script.Title, again.Title);
        Assert.Equal(script.Text, again.Text);
        Assert.Equal(script.Conditions, again.Conditions);

        // Four faults that came at once are written as four events of one moment; the last of them holds all.
        (long, string, string)[] last = [.. again.Events.GroupBy(e => e.AtMs).Select(group => Essence(group.Last()))];
        Assert.Equal(script.Events.Select(Essence), last);
    }

    private static Script Read(string text, House house)
    {
        ScriptReading reading = ScriptFile.Parse(text, "again.script.toml", house);
        Assert.Empty(reading.Mistakes);
        return reading.Script!;
    }

    /// <summary>An event without its line, and without words that say in passing what changed.</summary>
    private static (long AtMs, string Action, string Note) Essence(ScriptEvent happened) =>
        (happened.AtMs, (happened.Action is FaultChange fault ? fault with { Words = "" } : happened.Action).ToString()!, happened.Note);
}
