using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware.Tests;

/// <summary>From reset to the first scan no relay moves, whatever the chips wake up with; looked at after every change of a pin.</summary>
public class PowerUpTests
{
    [Theory]
    [InlineData(BoardPlan.Direct)]
    [InlineData(BoardPlan.Chains)]
    public void No_relay_is_energised_at_any_moment_up_to_the_first_scans_end(int arrangement)
    {
        Assert.Equal([], Energised(Examples.House("pottery"), arrangement));
    }

    [Fact]
    public void Active_low_relays_in_chains_are_off_all_the_time_too()
    {
        House house = Examples.WithBoard("pottery", "[board]\nrelays = \"active-low\"").House!;

        Assert.Equal([], Energised(house, BoardPlan.Chains));
    }

    [Fact]
    public void An_active_low_direct_pin_dips_as_it_becomes_an_output_but_the_pumps_coil_is_not_fed_yet()
    {
        House house = Examples.WithBoard("pottery", "[board]\nrelays = \"active-low\"").House!;

        HashSet<string> moved = Energised(house, BoardPlan.Direct);

        Assert.Equal(["valves"], moved);
    }

    [Fact]
    public void A_pin_plan_that_cannot_be_touches_no_pin()
    {
        House house = Examples.House("pottery");
        BoardPlan plan = PinPlanner.Of(house);
        plan.OutputPlaces[0] = 12;
        var driven = new List<int>();

        FirmwareProgram program = PowerUp(house, plan, hardware => hardware.Moved = () => driven.Add(1));

        Assert.Equal(BoardFault.PinPlan, program.Fault);
        Assert.Equal("pin 12 cannot be pump: it is a strapping pin: its level at reset decides how the chip starts", program.FaultText);
        Assert.Equal(PinCount, driven.Count); // the reset let each float, and that is all
    }

    private const int PinCount = 128;

    private static HashSet<string> Energised(House house, int arrangement)
    {
        var moved = new HashSet<string>();
        var image = new OutputImage();
        FirmwareProgram program = PowerUp(house, PinPlanner.For(house, arrangement), hardware => hardware.Moved = () =>
        {
            hardware.ShowOutputs(image, 100);
            if (image.Valves != 0)
                moved.Add("valves");
            if (image.Pump || image.Heat)
                moved.Add("pump or heat");
        });
        program.Scan();
        Assert.Equal((BoardFault.None, ""), (program.Fault, program.FaultText));
        return moved;
    }

    private static FirmwareProgram PowerUp(House house, BoardPlan plan, Action<VirtualHardware> watch)
    {
        VirtualHardware hardware = VirtualHardware.Of(plan);
        watch(hardware);
        var image = new FirmwareImage(FirmwareImage.Folder);
        FirmwareProgram program = image.PowerUp(
            SettingsWords.Of(house.ToSettings(), plan), [.. house.Zones.Select(zone => zone.Name)], BoardSheet.FingerprintOf(house, plan),
            hardware, () => hardware.NowUs);
        program.Start();
        return program;
    }
}
