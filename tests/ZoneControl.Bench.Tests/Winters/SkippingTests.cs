using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Winters;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Winters;

/// <summary>
/// Going from event to event shows the same as stepping at the scan period: in the slow run every scan is made and every thermostat
/// looks each second, with no search for what comes next.
/// </summary>
public class SkippingTests
{
    [Theory]
    [InlineData("pottery", 7)] // the demo house, a whole week
    [InlineData("toolworks", 2)] // every contact, flow switch among them, and a small transformer
    [InlineData("retrofit", 2)] // gated zones
    [InlineData("two-rooms", 3)]
    public void A_winter_shows_the_same_output_edges_skipped_and_stepped(string name, int days) =>
        Compare(Winter.Example(name), days, settings => new LibraryController(settings), []);

    [Fact]
    public void So_does_one_with_the_pump_straight_on_the_calls() =>
        Compare(Winter.Example("pottery"), 2, settings => new StraightWiring(settings), []);

    [Fact]
    public void So_does_one_with_faults_hands_lockout_and_a_power_cut()
    {
        const long Hour = 3_600_000;
        ScriptEvent At(double hours, ScriptAction action) => new((long)(hours * Hour) + 37, action);
        Compare(Winter.Example("toolworks"), 2, settings => new LibraryController(settings),
        [
            At(1.25, new FaultChange(0, new ActuatorFault { Stuck = true }, "sticks")),
            At(5, new FaultChange(0, ActuatorFault.None, "is repaired")),
            At(7, new ServiceChange(0b11, Pump: true)),
            At(7.2, new ServiceChange(0, Pump: false)),
            At(10, new PumpFaultChange(PumpFault.Dead)),
            At(11, new PumpFaultChange(PumpFault.None)),
            At(11.5, new ContactChange(ContactKind.Of(Contact.Reset), true)),
            At(11.51, new ContactChange(ContactKind.Of(Contact.Reset), false)),
            At(14, new ContactChange(ContactKind.Of(Contact.Priority), true)),
            At(14.5, new ContactChange(ContactKind.Of(Contact.Priority), false)),
            At(20, new PowerChange(false)),
            At(20.1, new PowerChange(true)),
            At(26, new SeasonChange(true)),
            At(40, new SeasonChange(false)),
        ]);
    }

    private static void Compare(House house, int days, Func<ControllerSettings, IController> build, IReadOnlyList<ScriptEvent> events)
    {
        (List<Frame> skipped, List<double> warm, SeasonResult fast) = Run(false);
        (List<Frame> stepped, List<double> same, SeasonResult slow) = Run(true);
        Assert.True(skipped.Count > 10 * days, $"only {skipped.Count} frames");
        Assert.Equal(stepped.Count, skipped.Count);
        for (int i = 0; i < stepped.Count; i++)
            Assert.Equal(stepped[i], skipped[i]);
        Assert.Equal(same, warm);
        Assert.Equal(Winter.Figures(slow), Winter.Figures(fast));
        Assert.True(slow.Scans > 50 * fast.Scans, $"{slow.Scans} scans against {fast.Scans}");

        (List<Frame>, List<double>, SeasonResult) Run(bool everyScan)
        {
            var frames = new List<Frame>();
            var celsius = new List<double>();
            SeasonResult result = Winter.Run(house, days, new SeasonOptions
            {
                EveryScan = everyScan,
                Events = events,
                Watch = frame => frames.Add(frame with { NextDeadlineMs = 0 }),
                EachHour = at => celsius.AddRange([at.Heat.RoomC(0), at.Heat.SupplyC, at.Water.PumpFlowM3s]),
            }, build);
            return (frames, celsius, result);
        }
    }
}
