namespace ZoneControl.Cli;

/// <summary>What the program's exit code says.</summary>
public static class ExitCode
{
    /// <summary>The verdict is pass.</summary>
    public const int Pass = 0;

    /// <summary>The verdict is fail.</summary>
    public const int Fail = 1;

    /// <summary>The command line or a file cannot be used.</summary>
    public const int BadInput = 2;

    /// <summary>A proof was ended by a limit before it came to its end: nothing is broken so far, and nothing is proven.</summary>
    public const int Explored = 3;

    /// <summary>The program itself failed; EX_SOFTWARE of the BSD sysexits list (from memory).</summary>
    public const int Fault = 70;

    /// <summary>Stopped by Ctrl-C: 128 plus the signal's number, as shells have it (common practice).</summary>
    public const int Cancelled = 130;
}
