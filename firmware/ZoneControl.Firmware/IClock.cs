namespace ZoneControl.Firmware;

/// <summary>The board's monotonic clock.</summary>
public interface IClock
{
    /// <summary>Microseconds since boot; 64 bit, so that it never wraps.</summary>
    long NowUs();

    /// <summary>Lets other threads run for so long, ms; more than 0.</summary>
    void Sleep(int ms);
}
