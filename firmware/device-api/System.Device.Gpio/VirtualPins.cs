namespace ZoneControl.DeviceApi;

/// <summary>The level that whatever is wired to a pin gives it: 1 for high, 0 for low.</summary>
public delegate int PinReader(int pin);

/// <summary>A pin is driven to a level, or left to float.</summary>
public delegate void PinWriter(int pin, int level);

/// <summary>
/// The virtual board behind the stand-in: pins, and whoever is wired to them. Only the bench touches it; the firmware does
/// not know of it. There is one, as there is one chip; a bench that needs several loads the image several times.
/// </summary>
public static class VirtualPins
{
    /// <summary>What a pin is driven to when it is no output.</summary>
    public const int Floating = -1;

    /// <summary>How many pins the virtual chip has, numbered from 0: more than any real one, for houses that need them.</summary>
    public const int Count = 128;

    private static bool[]? _open;
    private static PinReader? _read;
    private static PinWriter? _drive;

    /// <summary>A chip fresh from reset: every pin shut and floating, wired to others from now on.</summary>
    public static void PowerUp(PinReader read, PinWriter drive)
    {
        _read = read;
        _drive = drive;
        _open = new bool[Count];
        for (int pin = 0; pin < Count; pin++)
            drive(pin, Floating);
    }

    internal static bool Reserve(int pin)
    {
        if (_open == null)
            _open = new bool[Count];
        if (pin < 0 || pin >= Count || _open[pin])
            return false;
        _open[pin] = true;
        return true;
    }

    internal static int Level(int pin) => _read == null ? 0 : _read(pin);

    internal static void Drive(int pin, int level)
    {
        if (_drive != null)
            _drive(pin, level);
    }
}
