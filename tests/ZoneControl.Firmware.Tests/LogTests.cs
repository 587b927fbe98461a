using System.Text.RegularExpressions;
using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware.Tests;

/// <summary>The log keeps to its grammar, and what it says adds up to what the run showed.</summary>
public partial class LogTests
{
    public static TheoryData<string> Scripts => [.. Examples.Scripts];

    [Theory]
    [MemberData(nameof(Scripts))]
    public void Every_line_of_a_run_keeps_to_the_grammar(string name)
    {
        (IReadOnlyList<string> log, _) = Run(name);

        Assert.Equal([], log.Where(line => !Grammar().IsMatch(line)));
        Assert.All(log, line => Assert.True(line.Length <= 100, line));
        Assert.Contains(log, line => line.EndsWith(" pump on", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Scripts))]
    public void What_the_log_says_is_what_the_run_showed(string name)
    {
        (IReadOnlyList<string> log, Run run) = Run(name);

        Frame[] frames = [.. run.Trace.Frames.Select(frame => frame with { NextDeadlineMs = 0, PowerUp = false })];
        IEnumerable<Frame> shown = frames.Where((frame, i) => i == 0 || !frame.ShowsTheSameAs(frames[i - 1]))
            .Where(frame => !frame.Unpowered && frame.ClockAheadMs == 0);

        Assert.Equal([], shown.Except(Frames(log)));
    }

    [Fact]
    public void Words_are_the_contacts_reasons_and_alarms_of_the_controller_each_another()
    {
        string[] contacts = [.. Enumerable.Range(0, Contact.Count).Select(LogWords.Contact)];
        string[] holds = [.. Enum.GetValues<HoldReason>().Select(reason => LogWords.Hold((int)reason))];
        string[] alarms = [.. AlarmWords.All.Select(word => LogWords.Alarm(Contact.Place(word.Alarm)))];

        foreach (string[] words in (string[][])[contacts, holds, alarms])
        {
            Assert.Equal(words.Length, words.Distinct().Count());
            Assert.DoesNotContain("unknown", words);
            Assert.All(words, word => Assert.Matches("^[a-z-]+$", word));
        }

        Assert.Equal((LogWords.Holds, LogWords.Alarms), (holds.Length, alarms.Length));
        Assert.Equal(
            [.. Enum.GetNames<HoldReason>().Select(Dashed)], holds);
        Assert.Equal(ContactKind.All.Select(kind => kind.Key), contacts.Take(ContactKind.All.Count));
    }

    [Fact]
    public void Records_that_find_no_room_are_counted_and_what_comes_later_heals_the_gap()
    {
        var log = new EventLog();
        var settings = new ControllerSettings { ZoneCount = 2, ScanPeriodMs = 100 };
        var writer = new LogWriter(log, settings, new BoardPlan(), ["a", "b"], 0);
        for (int i = 0; i < EventLog.Size + 9; i++)
            log.Add(i, LogEvent.Valves, i % 2, 0);
        for (int i = 0; i < EventLog.Size - 2; i++) // the first record says what was so before
            Assert.NotNull(writer.NextLine());
        Assert.Null(writer.NextLine());
        log.Add(900, LogEvent.Valves, 3, 0);

        Assert.Equal(["@900 lost n=10", "@900 valve z1 on", "@900 valve z2 on"], (string?[])[writer.NextLine(), writer.NextLine(), writer.NextLine()]);
        Assert.Null(writer.NextLine());
    }

    [Fact]
    public void The_readme_names_every_event_and_word()
    {
        string readme = File.ReadAllText(Path.Combine(Examples.Root, "firmware", "README.md"));
        IEnumerable<string> words =
        [
            .. Enumerable.Range(0, Contact.Count).Select(LogWords.Contact), .. Enumerable.Range(0, LogWords.Holds).Select(LogWords.Hold),
            .. Enumerable.Range(0, LogWords.Alarms).Select(LogWords.Alarm), .. Enumerable.Range(1, BoardFault.Thrown).Select(LogWords.Fault),
            .. "boot name call switch sense hand contact valve pump heat hold late latched early stuck alarm proven next clock back stands alive overrun waited lost fault text".Split(' '),
        ];

        Assert.Equal([], words.Where(word => !Regex.IsMatch(readme, $"(?<![a-z-]){word}(?![a-z-])")));
    }

    private static string Dashed(string name) => Regex.Replace(name, "(?<=[a-z])[A-Z]", letter => "-" + letter.Value).ToLowerInvariant();

    private static (IReadOnlyList<string>, Run) Run(string name)
    {
        (House house, Script script) = Examples.Script(name);
        FirmwareController? firmware = null;
        Run run = Runner.Run(house, script, _ => firmware = new FirmwareController(house), cancel: TestContext.Current.CancellationToken);
        return (firmware!.Log, run);
    }

    /// <summary>Reads a log back into what was shown, as somebody does who has only the log.</summary>
    private static IEnumerable<Frame> Frames(IReadOnlyList<string> log)
    {
        var now = new Frame { Ms = 0 };
        foreach (string line in log)
        {
            string[] words = line[1..].Split(' ');
            int Mask(int before) => words[3] == "on" ? before | Bit() : before & ~Bit();
            int Bit() => words[2][0] == 'z' ? 1 << (int.Parse(words[2][1..]) - 1) : 1 << Place(words[1], words[2]);
            now = words[1] switch
            {
                "boot" => new Frame { Ms = 0 },
                "call" => now with { Calls = Mask(now.Calls) },
                "switch" => now with { EndSwitches = Mask(now.EndSwitches) },
                "sense" => now with { Senses = Mask(now.Senses) },
                "hand" => now with { Hands = Mask(now.Hands) },
                "contact" => now with { Contacts = Mask(now.Contacts) },
                "valve" => now with { Valves = Mask(now.Valves) },
                "late" => now with { LateValves = Mask(now.LateValves) },
                "latched" => now with { LatchedValves = Mask(now.LatchedValves) },
                "early" => now with { EarlySwitches = Mask(now.EarlySwitches) },
                "stuck" => now with { StuckSwitches = Mask(now.StuckSwitches) },
                "alarm" => now with { Alarms = Mask(now.Alarms) },
                "proven" => now with { ProvenValves = Mask(now.ProvenValves) },
                "pump" => now with { Pump = words[2] == "on" },
                "heat" => now with { Heat = words[2] == "on" },
                "hold" => now with { Hold = (HoldReason)Enumerable.Range(0, LogWords.Holds).Single(i => LogWords.Hold(i) == words[2]) },
                _ => now,
            };
            if (words[1] == "next")
                yield return now with { Ms = long.Parse(words[0]) };
        }
    }

    private static int Place(string what, string word) => what == "contact"
        ? Enumerable.Range(0, Contact.Count).Single(i => LogWords.Contact(i) == word)
        : Enumerable.Range(0, LogWords.Alarms).Single(i => LogWords.Alarm(i) == word);

    [GeneratedRegex("""
        ^@-?\d+\ (
        boot\ log=1\ fp=[0-9a-f]{8}\ zones=\d+\ period=\d+\ pins=(direct|chains)
        |name\ z\d+\ [a-z0-9-]+
        |(call|switch|sense|hand|valve|late|latched|early|stuck|proven)\ z\d+\ (on|off)
        |contact\ (season|flow|limit|freeze|priority|reset|supply|service-pump)\ (on|off)
        |(pump|heat)\ (on|off)
        |hold\ [a-z-]+
        |alarm\ [a-z-]+\ (on|off)
        |next\ (\d+|never)
        |clock\ (back|stands|late)\ was=-?\d+
        |alive\ scans=\d+\ overruns=\d+
        )$
        """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Grammar();
}
