using Moq;
using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware.Tests;

/// <summary>The firmware on mocked pins, clock and console: what it asks of them, in which order, and what it makes of their failures.</summary>
public class SeamTests
{
    private readonly Mock<IPins> _pins = new(MockBehavior.Strict);
    private readonly Mock<IClock> _clock = new();
    private long _us;

    public SeamTests()
    {
        _clock.Setup(clock => clock.NowUs()).Returns(() => _us);
        _clock.Setup(clock => clock.Sleep(It.IsAny<int>())).Callback((int ms) => _us += ms * 1000L);
    }

    [Fact]
    public void Every_output_is_opened_at_its_safe_level_before_any_input_is()
    {
        var order = new List<string>();
        _pins.Setup(pins => pins.OpenOutput(It.IsAny<int>(), It.IsAny<bool>())).Callback((int pin, bool high) => order.Add($"out {pin} {high}"));
        _pins.Setup(pins => pins.OpenInput(It.IsAny<int>())).Callback((int pin) => order.Add($"in {pin}"));
        House house = Examples.WithBoard("pottery", "[board]\nrelays = \"active-low\"\n").House!;
        BoardPlan plan = PinPlanner.Of(house);

        Program(house, plan).Start();

        Assert.Equal(
            [
                $"out {plan.HeartbeatPin} False", .. plan.OutputPlaces.Select(pin => $"out {pin} True"),
                .. plan.InputPlaces.Select(pin => $"in {pin}"),
            ],
            order);
    }

    [Fact]
    public void Output_enable_is_the_first_pin_of_the_chains_and_off()
    {
        var order = new List<string>();
        _pins.Setup(pins => pins.OpenOutput(It.IsAny<int>(), It.IsAny<bool>())).Callback((int pin, bool high) => order.Add($"{pin} {high}"));
        _pins.Setup(pins => pins.OpenInput(It.IsAny<int>()));
        _pins.Setup(pins => pins.Write(It.IsAny<int>(), It.IsAny<bool>()));
        _pins.Setup(pins => pins.Read(It.IsAny<int>())).Returns(false);
        BoardPlan plan = PinPlanner.For(Examples.House("pottery"), BoardPlan.Chains);

        Program(Examples.House("pottery"), plan).Start();

        Assert.Equal([$"{plan.HeartbeatPin} False", $"{plan.ChainPins[BoardPlan.Enable]} False"], order.Take(2));
        _pins.Verify(pins => pins.Write(plan.ChainPins[BoardPlan.Enable], true), Times.Never);
    }

    [Fact]
    public void A_plan_with_a_mistake_is_refused_without_a_word_to_the_pins()
    {
        BoardPlan plan = PinPlanner.Of(Examples.House("pottery"));
        plan.InputPlaces[2] = plan.InputPlaces[1];
        BoardProgram program = Program(Examples.House("pottery"), plan);

        program.Start();
        program.Scan();

        Assert.Equal(BoardFault.PinPlan, program.Fault);
        Assert.EndsWith("it is call z2 already", program.FaultText, StringComparison.Ordinal);
        _pins.VerifyNoOtherCalls();
    }

    [Fact]
    public void Settings_that_are_not_lawful_are_refused_with_every_output_off()
    {
        House house = Examples.House("pottery");
        BoardPlan plan = PinPlanner.Of(house);
        ControllerSettings settings = house.ToSettings();
        settings.MinimumOpen = 0;
        Obey();
        var program = new BoardProgram(settings, plan, [], "", _pins.Object, _clock.Object);

        program.Start();
        program.Scan();

        Assert.Equal((BoardFault.Settings, "MinimumOpen is not lawful"), (program.Fault, program.FaultText));
        _pins.Verify(pins => pins.Write(It.IsAny<int>(), true), Times.Never);
    }

    [Fact]
    public void A_pin_that_throws_does_not_keep_the_others_from_being_put_to_safe()
    {
        House house = Examples.House("pottery");
        BoardPlan plan = PinPlanner.Of(house);
        Obey();
        BoardProgram program = Program(house, plan);
        program.Start();
        _pins.Setup(pins => pins.Read(It.IsAny<int>())).Throws(new InvalidOperationException("read"));
        _pins.Setup(pins => pins.Write(plan.OutputPlaces[0], It.IsAny<bool>())).Throws(new InvalidOperationException("write"));
        _pins.Invocations.Clear();

        program.Scan();

        Assert.Equal((BoardFault.Thrown, "read"), (program.Fault, program.FaultText));
        foreach (int pin in plan.OutputPlaces)
            _pins.Verify(pins => pins.Write(pin, false), Times.Once);
        _pins.Verify(pins => pins.Write(plan.HeartbeatPin, It.IsAny<bool>()), Times.Never);
    }

    [Fact]
    public void A_pin_that_cannot_be_opened_is_a_fault_and_no_crash()
    {
        Obey();
        _pins.Setup(pins => pins.OpenInput(It.IsAny<int>())).Throws(new InvalidOperationException("busy"));
        BoardProgram program = Program(Examples.House("pottery"), PinPlanner.Of(Examples.House("pottery")));

        program.Start();

        Assert.Equal((BoardFault.Thrown, "busy"), (program.Fault, program.FaultText));
    }

    [Fact]
    public void The_heartbeat_changes_once_in_every_good_scan()
    {
        House house = Examples.House("pottery");
        BoardPlan plan = PinPlanner.Of(house);
        Obey();
        var beats = new List<bool>();
        _pins.Setup(pins => pins.Write(plan.HeartbeatPin, It.IsAny<bool>())).Callback((int _, bool high) => beats.Add(high));
        BoardProgram program = Program(house, plan);
        program.Start();

        for (int i = 0; i < 5; i++)
            Scan(program);

        Assert.Equal([true, false, true, false, true], beats);
    }

    [Fact]
    public void Scans_begin_on_a_grid_of_the_period_however_long_each_takes()
    {
        var begun = new List<long>();
        Obey(() =>
        {
            if (begun.Count == 0 || begun[^1] / 100_000 != _us / 100_000)
                begun.Add(_us);
        });
        ScanLoop loop = Loop(out _);
        for (int i = 0; i < 4; i++)
        {
            loop.RunOne();
            _us += 30_000 + (i * 5000);
        }

        Assert.Equal([0, 100_000, 200_000, 300_000], begun);
    }

    [Fact]
    public void A_scan_that_begins_more_than_a_period_late_is_logged_and_moves_the_grid()
    {
        Obey();
        ScanLoop loop = Loop(out BoardProgram program);
        loop.RunOne();
        _us += 350_000;
        loop.RunOne();

        Assert.Contains("@350 waited us=250000 n=1", Lines(program));
        Assert.Equal(100_000, loop.RoomUs);
    }

    [Fact]
    public void The_clock_is_64_bits_of_microseconds_so_that_a_year_is_no_event()
    {
        Obey();
        _us = 365L * 24 * 3600 * 1_000_000; // past 2^44; 32 bits of ms wrap after 49.7 days
        ScanLoop loop = Loop(out BoardProgram program);
        loop.RunOne();
        loop.RunOne();

        Assert.Equal(BoardFault.None, program.Fault);
        Assert.StartsWith("@31536000000 boot ", Lines(program)[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_is_begun_only_while_no_scan_is_due_soon()
    {
        Obey();
        ScanLoop loop = Loop(out BoardProgram program);
        loop.RunOne();
        var console = new Mock<IConsole>();
        var pump = new LogPump(program, loop, console.Object);

        _us = 100_000 - LogPump.RoomUs + 1;
        Assert.False(pump.WriteOne());
        console.Verify(c => c.WriteLine(It.IsAny<string>()), Times.Never);
        _us = 100_000 - LogPump.RoomUs;
        Assert.True(pump.WriteOne());
        console.Verify(c => c.WriteLine(It.IsRegex(" boot ")), Times.Once);
    }

    [Fact]
    public async Task A_console_that_blocks_for_ever_holds_up_no_scan()
    {
        Obey();
        ScanLoop loop = Loop(out BoardProgram program);
        using var blocked = new ManualResetEventSlim();
        using var entered = new ManualResetEventSlim();
        var console = new Mock<IConsole>();
        console.Setup(c => c.WriteLine(It.IsAny<string>())).Callback(() =>
        {
            entered.Set();
            blocked.Wait();
        });
        loop.RunOne();
        var pump = new LogPump(program, loop, console.Object);
        Task writing = Task.Run(pump.WriteOne, TestContext.Current.CancellationToken);
        entered.Wait(TestContext.Current.CancellationToken);

        for (int i = 0; i < 3000; i++)
        {
            _closed = i % 40 < 20;
            loop.RunOne();
        }

        Assert.Equal((BoardFault.None, 0), (program.Fault, program.Overruns));
        Assert.Equal(300_000_000, _us);
        blocked.Set();
        await writing;
        Lines(program);
        _closed = !_closed;
        for (int i = 0; i < 20; i++)
            loop.RunOne();
        Assert.Contains(Lines(program), line => line.Contains(" lost n=", StringComparison.Ordinal));
    }

    private bool _closed;

    private void Obey(Action? read = null)
    {
        _pins.Setup(pins => pins.OpenOutput(It.IsAny<int>(), It.IsAny<bool>()));
        _pins.Setup(pins => pins.OpenInput(It.IsAny<int>()));
        _pins.Setup(pins => pins.Write(It.IsAny<int>(), It.IsAny<bool>()));
        _pins.Setup(pins => pins.Read(It.IsAny<int>())).Callback(() => read?.Invoke()).Returns(() => !_closed);
    }

    private BoardProgram Program(House house, BoardPlan plan)
    {
        string[] names = [.. house.Zones.Select(zone => zone.Name)];
        return new BoardProgram(house.ToSettings(), plan, names, BoardSheet.FingerprintOf(house, plan), _pins.Object, _clock.Object);
    }

    private ScanLoop Loop(out BoardProgram program)
    {
        House house = Examples.House("pottery");
        program = Program(house, PinPlanner.Of(house));
        program.Start();
        return new ScanLoop(program, _clock.Object);
    }

    private void Scan(BoardProgram program)
    {
        program.Scan();
        _us += 100_000;
    }

    private static string[] Lines(BoardProgram program)
    {
        var lines = new List<string>();
        while (program.NextLine() is { } line)
            lines.Add(line);
        return [.. lines];
    }
}
