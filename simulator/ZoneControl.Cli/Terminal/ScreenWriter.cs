using System.Text;
using System.Text.RegularExpressions;

namespace ZoneControl.Cli.Terminal;

/// <summary>
/// What is laid out for the screen on its way to the output: blanks that kept a quantity together become ordinary ones, and
/// the blanks that only fill a line up are left out, so that a copied line is the line.
/// </summary>
internal sealed partial class ScreenWriter(TextWriter into) : TextWriter
{
    /// <summary>
    /// Stands for a blank that must not part while lines are laid out. A non-breaking blank will not do: the layout breaks lines
    /// at every white space.
    /// </summary>
    public const char Joint = '\uE000';

    private readonly StringBuilder _line = new();

    public override Encoding Encoding => into.Encoding;

    public override void Write(char value)
    {
        if (value != '\n')
        {
            _line.Append(value == Joint ? ' ' : value);
            return;
        }

        into.Write(Trailing().Replace(_line.ToString(), tail => tail.Value.Replace(" ", "", StringComparison.Ordinal)));
        into.Write('\n');
        _line.Clear();
    }

    public override void Write(char[] buffer, int index, int count)
    {
        for (int i = index; i < index + count; i++)
            Write(buffer[i]);
    }

    public override void Write(string? value)
    {
        foreach (char c in value ?? "")
            Write(c);
    }

    /// <summary>A line that has not ended yet goes out as it is: somebody may wait for it.</summary>
    public override void Flush()
    {
        into.Write(_line.ToString());
        _line.Clear();
        into.Flush();
    }

    // Colours may be set back after the blanks.
    [GeneratedRegex(@"(?:[ ]|\x1B\[[0-9;]*m)+\r?$", RegexOptions.CultureInvariant)]
    private static partial Regex Trailing();
}
