using ZoneControl.Web.View;

namespace ZoneControl.Web.Tests;

public class UnpartedTests
{
    [Theory]
    [InlineData("after 3 min 45 s at 2.42 L/min", "after 3_min_45_s at 2.42_L/min")]
    [InlineData("Kv 0.27 then, 5 W/m²", "Kv_0.27 then, 5_W/m²")]
    [InlineData("10 starts, 4 zones", "10 starts, 4 zones")]
    [InlineData("2 minutes", "2 minutes")]
    [InlineData("1,200 kWh and 100 °C", "1,200_kWh and 100_°C")]
    public void A_number_stays_with_its_unit_and_nothing_else_is_joined(string text, string expected) =>
        Assert.Equal(expected, Unparted.Of(text, '_'));

    [Fact]
    public void The_parts_of_a_time_may_part_where_room_is_scarce() =>
        Assert.Equal("377_h 28_min", Unparted.Of("377 h 28 min", '_', alsoTimes: false));

    [Fact]
    public void Signs_that_the_renderer_codes_are_units_too() =>
        Assert.Equal("<p>84\u00A0°F, 12\u00A0W/m²</p>", Unparted.Html("<p>84 &#xB0;F, 12 W/m&#xB2;</p>"));

    [Fact]
    public void In_a_document_only_text_is_joined_and_what_is_to_be_copied_stays() => Assert.Equal(
        "<p title=\"3 min\">3\u00A0min</p><pre>x = \"3 min\"</pre><td>1\u00A0h 2\u00A0min</td><p>1\u00A0h\u00A02\u00A0min</p>",
        Unparted.Html("<p title=\"3 min\">3 min</p><pre>x = \"3 min\"</pre><td>1 h 2 min</td><p>1 h 2 min</p>"));
}
