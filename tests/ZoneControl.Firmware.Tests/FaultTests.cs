using ZoneControl.Bench.Boards;
using ZoneControl.Board;

namespace ZoneControl.Firmware.Tests;

/// <summary>Every fault of the board ends in the safe state within a scan and the heartbeat's time, on the compiled image.</summary>
public class FaultTests
{
    public static TheoryData<int> Arrangements => [BoardPlan.Direct, BoardPlan.Chains];

    [Theory]
    [InlineData(ChainFault.StuckLow, BoardFault.ReadBack)]
    [InlineData(ChainFault.StuckHigh, BoardFault.ReadBack)]
    [InlineData(ChainFault.OutputsUnplugged, BoardFault.ReadBack)]
    [InlineData(ChainFault.InputsUnplugged, BoardFault.InputChain)]
    public void A_broken_chain_disables_the_outputs_in_the_scan_that_sees_it(ChainFault fault, int cause)
    {
        var rig = new Rig(BoardPlan.Chains);
        rig.Run();
        rig.Chains.Fault = fault;

        rig.Scan();

        Assert.Equal(cause, rig.Board.Program.Fault);
        Assert.False(rig.Chains.Enabled);
        Assert.Equal((0, false, false), (rig.Outputs.Valves, rig.Outputs.Pump, rig.Outputs.Heat));
        rig.AssertSafeSoon(valvesToo: true);
    }

    [Fact]
    public void Every_stage_of_the_output_register_is_seen_at_both_levels()
    {
        int stages = PinPlanner.For(Examples.House("pottery"), BoardPlan.Chains).OutputBits;
        for (int stage = 0; stage < stages; stage++)
        {
            foreach (ChainFault fault in (ChainFault[])[ChainFault.StuckLow, ChainFault.StuckHigh])
            {
                var rig = new Rig(BoardPlan.Chains);
                rig.Scan(5);
                rig.Chains.StuckPlace = stage;
                rig.Chains.Fault = fault;
                rig.Scan();
                Assert.Equal((stage, BoardFault.ReadBack), (stage, rig.Board.Program.Fault));
            }
        }
    }

    [Fact]
    public void Without_a_clock_the_latches_keep_what_they_had_and_output_enable_takes_it_away()
    {
        var rig = new Rig(BoardPlan.Chains);
        rig.Run();
        rig.Chains.Fault = ChainFault.ClockLost;

        rig.Scan();

        Assert.NotEqual(BoardFault.None, rig.Board.Program.Fault);
        Assert.False(rig.Chains.Enabled);
        rig.AssertSafeSoon(valvesToo: true);
    }

    [Fact]
    public void Output_chips_that_lost_their_supply_for_a_moment_are_noticed_before_what_they_woke_up_with_is_used_again()
    {
        var rig = new Rig(BoardPlan.Chains);
        rig.Run();
        rig.Chains.Scramble();

        rig.Scan();

        Assert.Equal(BoardFault.ReadBack, rig.Board.Program.Fault);
        Assert.Equal((0, false, false), (rig.Outputs.Valves, rig.Outputs.Pump, rig.Outputs.Heat));
    }

    [Theory]
    [MemberData(nameof(Arrangements))]
    public void Whatever_is_thrown_in_a_scan_puts_every_output_to_safe_and_its_words_are_kept(int arrangement)
    {
        var rig = new Rig(arrangement);
        rig.Run();
        rig.Hardware.Throws = new InvalidOperationException("the pin fell off");

        rig.Scan();

        Assert.Equal(BoardFault.Thrown, rig.Board.Program.Fault);
        Assert.Equal("the pin fell off", rig.Board.Program.FaultText);
        Assert.Equal((0, false, false), (rig.Outputs.Valves, rig.Outputs.Pump, rig.Outputs.Heat));
        rig.AssertSafeSoon(valvesToo: true);
        Assert.Contains(rig.Board.Log, line => line.EndsWith("text the pin fell off", StringComparison.Ordinal));
        Assert.InRange(rig.Board.Log.Count(line => line.Contains(" fault exception ", StringComparison.Ordinal)), 6, 7); // once, and every 10 s of 60
    }

    [Theory]
    [MemberData(nameof(Arrangements))]
    public void Scans_that_take_longer_than_their_period_leave_the_heartbeat_out_and_the_charge_pump_lets_go(int arrangement)
    {
        var rig = new Rig(arrangement);
        rig.Run();
        rig.Hardware.ReadTakesUs = 20_000; // every read of a pin

        rig.AssertSafeSoon(valvesToo: false);

        Assert.Equal(BoardFault.None, rig.Board.Program.Fault);
        Assert.InRange(rig.Board.Program.Overruns, 600, 700);
        Assert.Contains(rig.Board.Log, line => line.Contains(" overrun us=", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Arrangements))]
    public void One_long_scan_is_counted_and_stops_nothing(int arrangement)
    {
        var rig = new Rig(arrangement);
        rig.Run();
        rig.Hardware.ReadTakesUs = 20_000;
        rig.Scan();
        rig.Hardware.ReadTakesUs = 0;

        for (int i = 0; i < 50; i++)
        {
            rig.Scan();
            Assert.True(rig.Outputs.Pump);
        }

        Assert.Equal(1, rig.Board.Program.Overruns);
    }

    [Theory]
    [MemberData(nameof(Arrangements))]
    public void A_brown_out_during_a_stroke_leaves_nothing_on_and_nothing_proven(int arrangement)
    {
        var rig = new Rig(arrangement);
        while (rig.Outputs.Valves == 0)
            rig.Scan();
        rig.Scan(600); // a minute into the stroke
        int opening = rig.Outputs.Valves;

        rig.Board.PowerUp();
        rig.Hardware.ShowOutputs(rig.Outputs, Rig.PeriodMs);
        Assert.Equal((0, false, false), (rig.Outputs.Valves, rig.Outputs.Pump, rig.Outputs.Heat));
        rig.Scan();
        Assert.True(rig.Outputs.PowerUp);
        Assert.Equal((0, 0, false, false), (rig.Outputs.Valves, rig.Outputs.ProvenValves, rig.Outputs.Pump, rig.Outputs.Heat));
        while (rig.Outputs.Valves == 0)
            rig.Scan();
        long again = rig.NowMs;
        Assert.Equal(opening, rig.Outputs.Valves);
        rig.Run();
        Assert.True(rig.NowMs - again >= 179_000, "the pump waited out its delay from the new start on");
    }

    [Theory]
    [MemberData(nameof(Arrangements))]
    public void Settings_that_a_hand_changed_are_refused(int arrangement)
    {
        var rig = new Rig(arrangement, stated: "12345678");

        rig.Scan(10_000);

        Assert.Equal(BoardFault.Settings, rig.Board.Program.Fault);
        Assert.Contains("12345678", rig.Board.Program.FaultText, StringComparison.Ordinal);
        Assert.Equal((0, false, false), (rig.Outputs.Valves, rig.Outputs.Pump, rig.Outputs.Heat));
        Assert.DoesNotContain(rig.Board.Log, line => line.Contains(" boot ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_healthy_board_has_no_fault_and_no_overrun()
    {
        var rig = new Rig(BoardPlan.Chains);
        rig.Run();
        rig.Scan(2000);

        Assert.Equal((BoardFault.None, 0, ""), (rig.Board.Program.Fault, rig.Board.Program.Overruns, rig.Board.Program.FaultText));
        Assert.True(rig.Outputs.Pump);
    }
}
