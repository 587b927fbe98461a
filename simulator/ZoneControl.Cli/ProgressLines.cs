namespace ZoneControl.Cli;

/// <summary>Tells how far long work has come: a line each quarter, on the error stream, so that results stay clean.</summary>
internal sealed class ProgressLines(TextWriter error, string work) : IProgress<double>
{
    private readonly Lock _lock = new();
    private int _told;

    public void Report(double value)
    {
        lock (_lock)
        {
            int quarter = (int)(value * 4);
            if (quarter <= _told)
                return;
            _told = quarter;
            error.WriteLine($"{work}: {quarter * 25} % done");
        }
    }
}
