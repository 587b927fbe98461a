using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class FloorTests
{
    // EN 1264-2 / ISO 11855-2 basic characteristic, q = 8.92·ΔK^1.1 (constants as on public pages, worked out elsewhere).
    [Theory]
    [InlineData(1, 8.92)]
    [InlineData(3, 29.87)]
    [InlineData(5, 52.39)]
    [InlineData(7, 75.85)]
    [InlineData(9, 100.01)]
    [InlineData(10, 112.30)]
    [InlineData(15, 175.41)]
    public void The_output_of_a_floor_is_the_characteristic_of_EN_1264_2(double kelvin, double watts)
    {
        Near.Absolute(watts, FloorOutput.OutputWPerM2(kelvin), 0.006);
        Near.Absolute(kelvin, FloorOutput.SurfaceAboveRoomK(FloorOutput.OutputWPerM2(kelvin)), 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    public void A_floor_no_warmer_than_its_room_gives_nothing_up(double kelvin)
    {
        Assert.Equal(0, FloorOutput.OutputWPerM2(kelvin));
        Assert.Equal(0, FloorOutput.SurfaceAboveRoomK(kelvin));
    }

    // EN 1264-2 as public training texts quote it: 29 °C at 20 °C is about 100 W/m², 35 °C at 20 °C about 175, 33 °C at 24 °C 100.
    [Theory]
    [InlineData(FloorUse.Occupied, 20, 29, 100)]
    [InlineData(FloorUse.Edge, 20, 35, 175)]
    [InlineData(FloorUse.Bath, 24, 33, 100)]
    public void The_highest_surface_temperatures_are_those_of_EN_1264_2(FloorUse use, double room, double highest, double watts)
    {
        Assert.Equal(highest, FloorOutput.HighestSurfaceC(use));
        Near.Relative(watts, FloorOutput.OutputWPerM2(highest - room), 0.005);
    }

    // The model's floor is linear, so its output differs from the characteristic; from 30 to 100 W/m² by at most 9 %.
    [Theory]
    [InlineData(30)]
    [InlineData(50)]
    [InlineData(75)]
    [InlineData(100)]
    public void The_models_linear_surface_stays_near_the_characteristic(double wattsPerM2)
    {
        double linear = wattsPerM2 / FloorDescription.SurfaceCoefficient;
        Near.Relative(wattsPerM2, FloorOutput.OutputWPerM2(linear), 0.09);
        Near.Absolute(linear, FloorOutput.SurfaceAboveRoomK(wattsPerM2), 0.3);
    }

    // By hand: 10 m² of 65 mm screed at 1.2 W/mK under 0.05 m²K/W: 1/(0.0325/1.2 + 0.05 + 1/10.8) = 5.8936 W/m²K upwards,
    // 1/(0.0325/1.2 + 1.25) = 0.7830 downwards, 130 kJ/m²K.
    [Fact]
    public void Conductances_and_capacity_of_a_floor_are_those_of_its_layers()
    {
        var floor = new FloorDescription { AreaM2 = 10 };
        Near.Relative(58.936, floor.UpWPerK, 1e-4);
        Near.Relative(7.830, floor.DownWPerK, 1e-4);
        Near.Relative(1.3e6, floor.CapacityJPerK, 1e-12);
    }
}
