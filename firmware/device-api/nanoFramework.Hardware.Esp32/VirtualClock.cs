using System;

namespace ZoneControl.DeviceApi;

/// <summary>Microseconds that a clock shows.</summary>
public delegate long ClockReader();

/// <summary>The clock behind the stand-in. Without a bench it is the runtime's own.</summary>
public static class VirtualClock
{
    private static ClockReader? _read;

    /// <summary>From now on this clock is read.</summary>
    public static void Attach(ClockReader read) => _read = read;

    internal static ulong Micros() => (ulong)(_read == null ? DateTime.UtcNow.Ticks / 10 : _read());
}
