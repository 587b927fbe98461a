using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware.Tests;

/// <summary>The compiled firmware on a virtual board, scan by scan, with the bath of the pottery calling.</summary>
internal sealed class Rig
{
    public const int PeriodMs = 100;

    private const int Bath = 1 << 5;

    private readonly InputImage _inputs = new() { Calls = Bath };

    public Rig(int arrangement, House? house = null, string? stated = null)
    {
        House = house ?? Examples.House("pottery");
        Plan = PinPlanner.For(House, arrangement);
        Board = new FirmwareController(House, Plan, stated) { EveryScan = true };
    }

    public House House { get; }

    public BoardPlan Plan { get; }

    public FirmwareController Board { get; }

    public OutputImage Outputs { get; } = new();

    public long NowMs { get; private set; } = -PeriodMs;

    public VirtualHardware Hardware => Board.Hardware;

    public VirtualChains Chains => (VirtualChains)Board.Hardware;

    /// <summary>The longest that a fault may take to the safe state: one scan, and as long as the charge pump feeds.</summary>
    public static long SafeMs => PeriodMs + (VirtualHardware.BeatHoldUs(PeriodMs) / 1000);

    public void Scan(int scans = 1)
    {
        for (int i = 0; i < scans; i++)
        {
            NowMs += PeriodMs;
            // End switches follow their valves: the firmware is on trial, not the actuators.
            _inputs.EndSwitches = NowMs > 120_000 ? Outputs.Valves : 0;
            Board.Scan(NowMs, _inputs, Outputs);
        }
    }

    /// <summary>Scans until the pump runs and heat is asked for.</summary>
    public void Run()
    {
        for (int i = 0; i < 10_000 && !(Outputs.Pump && Outputs.Heat); i++)
            Scan();
        Assert.True(Outputs.Pump && Outputs.Heat, "the pump never ran");
        Assert.NotEqual(0, Outputs.Valves);
    }

    /// <summary>Scans until pump and heat are off, and asserts that this is soon and stays so.</summary>
    public void AssertSafeSoon(bool valvesToo)
    {
        long begun = NowMs;
        while ((Outputs.Pump || Outputs.Heat || (valvesToo && Outputs.Valves != 0)) && NowMs < begun + 60_000)
            Scan();
        Assert.InRange(NowMs - begun, 0, SafeMs);
        for (int i = 0; i < 600; i++)
        {
            Scan();
            Assert.False(Outputs.Pump || Outputs.Heat || (valvesToo && Outputs.Valves != 0));
        }
    }
}
