using System.Threading;
using nanoFramework.Hardware.Esp32;

namespace ZoneControl.Firmware;

/// <summary>The chip's own microsecond timer.</summary>
public sealed class BoardClock : IClock
{
    /// <inheritdoc/>
    public long NowUs() => (long)HighResTimer.GetCurrent();

    /// <inheritdoc/>
    public void Sleep(int ms) => Thread.Sleep(ms);
}
