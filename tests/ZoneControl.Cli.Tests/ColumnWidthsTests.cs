using ZoneControl.Cli.Terminal;

namespace ZoneControl.Cli.Tests;

public class ColumnWidthsTests
{
    [Fact]
    public void Columns_that_fit_are_as_wide_as_their_widest_cell() =>
        Assert.Equal([4, 10], ColumnWidths.Fit([["zone", "open"], ["Bath", "3 min 40 s"]], 40));

    [Fact]
    public void Columns_give_way_at_blanks_before_a_word_is_cut()
    {
        int[] widths = ColumnWidths.Fit([["zone", "moved"], ["Grandmother's sewing room", "Hauswirtschaftsraum and hall"]], 36);
        Assert.True(widths.Sum() <= 36);
        Assert.True(widths[0] >= "Grandmother's".Length && widths[1] >= "Hauswirtschaftsraum".Length);
    }

    [Fact]
    public void Numbers_keep_their_units_as_long_as_words_can_give_way() =>
        Assert.Equal([8, 10], ColumnWidths.Fit([["room", "open"], ["Throwing room", "2 min 42 s"]], 18, [false, true]));

    [Fact]
    public void A_numbers_heading_gives_way_before_a_name_does() =>
        Assert.Equal([15, 9], ColumnWidths.Fit([["loop", "velocity, m/s"], ["Throwing room 1", "0.31"]], 24, [false, true]));

    [Fact]
    public void Only_where_even_the_words_do_not_fit_are_they_cut() =>
        Assert.Equal(10, ColumnWidths.Fit([["Hauswirtschaftsraum", "Bath"]], 10).Sum());

    [Theory]
    [InlineData("Throwing room", 13, "Throwing room")]
    [InlineData("Throwing room", 8, "Throwing\nroom")]
    [InlineData("Hauswirtschaftsraum", 10, "Hauswirts-\nchaftsraum")]
    [InlineData("", 5, "")]
    public void Text_wraps_between_words(string text, int width, string expected) => Assert.Equal(expected, ColumnWidths.Wrap(text, width));
}
