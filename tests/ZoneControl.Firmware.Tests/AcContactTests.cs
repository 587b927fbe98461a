using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Board;

namespace ZoneControl.Firmware.Tests;

/// <summary>Contacts that switch 24 V AC: seen as half-waves on the pins, one scan late, in the firmware and in the bench alike.</summary>
public class AcContactTests
{
    private const string Board = "[board]\nac_contacts = [\"calls\", \"senses\", \"end_switches\", \"contacts\", \"hands\"]\n";

    public static TheoryData<string, int> Everything
    {
        get
        {
            var all = new TheoryData<string, int>();
            // Four days of half-waves are too long a test, and samples are timed by the very clock that the other breaks.
            foreach (string script in Examples.Scripts.Except(["toolworks-summer", "toolworks-clock"]))
            {
                all.Add(script, BoardPlan.Direct);
                all.Add(script, BoardPlan.Chains);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Everything))]
    public void The_bench_gives_the_library_the_envelopes_delay_so_that_edges_agree(string name, int arrangement)
    {
        (House house, Script script) = Load(name);

        Run library = Runner.Run(house, script, settings => LateContacts.Around(house, new LibraryController(settings)), cancel: TestContext.Current.CancellationToken);
        Run firmware = Runner.Run(
            house, script, _ => new FirmwareController(house, PinPlanner.For(house, arrangement)), cancel: TestContext.Current.CancellationToken);

        Assert.Equal(Edges(library), Edges(firmware));
        Assert.Contains(firmware.Trace.Frames, frame => frame.Pump);
    }

    [Fact]
    public void Without_the_delay_they_would_not_agree()
    {
        (House house, Script script) = Load("pottery-first-cold-morning");

        Run library = Runner.Run(house, script, settings => new LibraryController(settings), cancel: TestContext.Current.CancellationToken);
        Run firmware = Runner.Run(house, script, _ => new FirmwareController(house), cancel: TestContext.Current.CancellationToken);

        Assert.NotEqual(Edges(library), Edges(firmware));
    }

    [Fact]
    public void A_contact_is_closed_from_its_first_pulse_until_50_ms_without_one()
    {
        var envelope = new Envelope(new BoardPlan { InputRoles = [Role.Of(Role.Call, 0), Role.Of(Role.Switch, 0)], AcKinds = 1 << Role.Call });
        bool[] closed = [true, true];
        envelope.Take(closed, 1_000_000);

        foreach ((long us, bool still) in ((long, bool)[])[(1_000_000, true), (1_050_000, true), (1_050_001, false)])
        {
            bool[] seen = [false, false];
            envelope.Apply(seen, us);
            Assert.Equal((still, false), (seen[0], seen[1])); // the end switch is no AC contact: as the scan read it
        }
    }

    [Fact]
    public void Before_any_pulse_a_contact_is_open()
    {
        var envelope = new Envelope(new BoardPlan { InputRoles = [Role.Of(Role.Call, 0)], AcKinds = 1 << Role.Call });
        bool[] seen = [true];
        envelope.Apply(seen, 0);

        Assert.False(seen[0]);
    }

    private static IEnumerable<(long, int, bool, bool)> Edges(Run run) =>
        run.Trace.Frames.Select(frame => (frame.Ms, frame.Valves, frame.Pump, frame.Heat));

    private static (House House, Script Script) Load(string name)
    {
        string house = Examples.Houses.Single(candidate => name.StartsWith(candidate + "-", StringComparison.Ordinal));
        House read = Examples.WithBoard(house, Board).House!;
        return (read, ScriptFile.Read(Path.Combine(Examples.Folder, name + ".script.toml"), read).Script!);
    }
}
