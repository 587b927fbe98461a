using ZoneControl.Cli.Terminal;

namespace ZoneControl.Cli.Tests;

public class ScreenWriterTests
{
    [Fact]
    public void Quantities_stay_on_one_line_and_lines_end_where_their_words_end()
    {
        using var output = new StringWriter { NewLine = "\n" };
        var streams = new Streams(output, TextWriter.Null, OutIsTerminal: false);
        Screen.Say(streams.Terminal(), string.Concat(Enumerable.Repeat("the pump waits for 3 min 45 s and more, ", 20)));
        string text = output.ToString();
        Assert.DoesNotContain(ScreenWriter.Joint, text);
        Assert.All(text.TrimEnd('\n').Split('\n'), line =>
        {
            Assert.Equal(line.TrimEnd(), line);
            Assert.Equal(line.Split("3 min 45 s").Length, line.Split("min").Length);
        });
        Assert.True(text.Split('\n').Length > 5);
    }

    [Fact]
    public void Blanks_before_the_end_of_a_colour_go_too_and_an_open_line_is_not_held_back()
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var screen = new ScreenWriter(output);
        screen.Write("\u001b[1mwords   \u001b[0m  \n");
        Assert.Equal("\u001b[1mwords\u001b[0m\n", output.ToString());
        screen.Write("a question: ");
        screen.Flush();
        Assert.EndsWith("a question: ", output.ToString(), StringComparison.Ordinal);
    }
}
