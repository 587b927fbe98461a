using System;
using ZoneControl.DeviceApi;

namespace nanoFramework.Hardware.Esp32;

/// <summary>The chip's timer.</summary>
public class HighResTimer
{
    /// <summary>Microseconds since boot, 64 bit.</summary>
    public static UInt64 GetCurrent() => VirtualClock.Micros();
}
