namespace ZoneControl.Firmware;

/// <summary>
/// Carries lines from the log to the console, on a thread of its own below the scan's: a console that takes for ever holds up
/// only this thread. A line is begun only while a scan is not due soon, because the runtime's native console code stops every
/// thread until a line is out (GenericPort_Write of nf-interpreter's ESP32 target prints character by character).
/// </summary>
public sealed class LogPump
{
    /// <summary>A line is begun only with so much time left before a scan, microseconds: 100 characters at 115,200 Bd take 8.7 ms.</summary>
    public const long RoomUs = 15000;

    private readonly BoardProgram _program;
    private readonly ScanLoop _loop;
    private readonly IConsole _console;
    private string? _line; // made but not yet out

    /// <summary>Joins a program's log and a console.</summary>
    public LogPump(BoardProgram program, ScanLoop loop, IConsole console)
    {
        _program = program;
        _loop = loop;
        _console = console;
    }

    /// <summary>Writes one line if there is one and time for it.</summary>
    public bool WriteOne()
    {
        if (_line == null)
            _line = _program.NextLine();
        if (_line == null || _loop.RoomUs < RoomUs)
            return false;
        string line = _line;
        _line = null;
        _console.WriteLine(line);
        return true;
    }
}
