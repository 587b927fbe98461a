namespace ZoneControl.Firmware;

/// <summary>
/// The clockwork: a scan each period, on a grid of the monotonic clock. A scan that begins more than a period late is noted
/// and moves the grid; a shorter delay does not.
/// </summary>
public sealed class ScanLoop
{
    private readonly BoardProgram _program;
    private readonly IClock _clock;
    private long _dueUs;

    /// <summary>For a program that has been started; the first scan is due at once.</summary>
    public ScanLoop(BoardProgram program, IClock clock)
    {
        _program = program;
        _clock = clock;
        _dueUs = clock.NowUs();
    }

    /// <summary>Time until the next scan is due, microseconds; negative when it is late.</summary>
    public long RoomUs => _dueUs - _clock.NowUs();

    /// <summary>Waits until a scan is due and makes it.</summary>
    public void RunOne()
    {
        long room = RoomUs;
        while (room >= 1000)
        {
            int ms = (int)(room / 1000);
            _clock.Sleep(_program.Samples && ms > Envelope.SampleMs ? Envelope.SampleMs : ms);
            if (_program.Samples)
                _program.Sample();
            room = RoomUs;
        }

        if (-room > _program.PeriodUs)
        {
            _program.NoteWait(-room);
            _dueUs -= room;
        }

        _program.Scan();
        _dueUs += _program.PeriodUs;
    }
}
