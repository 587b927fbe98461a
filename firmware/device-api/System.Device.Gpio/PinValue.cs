namespace System.Device.Gpio;

/// <summary>A level: low or high.</summary>
public readonly struct PinValue
{
    private readonly byte _value;

    private PinValue(byte value) => _value = value;

    /// <summary>High level.</summary>
    public static PinValue High => new PinValue(1);

    /// <summary>Low level.</summary>
    public static PinValue Low => new PinValue(0);

    /// <summary>1 for high, 0 for low.</summary>
    public static explicit operator int(PinValue value) => value._value;
}
