using System.Text;

namespace ZoneControl.Cli;

/// <summary>Standard output. That it cannot be written is nobody's fault in here, and told as such.</summary>
internal sealed class GuardedOutput(TextWriter into) : TextWriter
{
    public override Encoding Encoding => into.Encoding;

    public override void Write(char value) => Guard(() => into.Write(value));

    public override void Write(string? value) => Guard(() => into.Write(value));

    public override void Write(char[] buffer, int index, int count) => Guard(() => into.Write(buffer, index, count));

    public override void Flush() => Guard(into.Flush);

    private static void Guard(Action write)
    {
        try
        {
            write();
        }
        catch (IOException e)
        {
            throw new BadInputException($"standard output: cannot be written ({e.Message.Split('\n')[0].TrimEnd('.')}).");
        }
    }
}
