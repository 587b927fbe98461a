namespace System.Device.Gpio;

/// <summary>How a pin works; the numbers are the real package's.</summary>
public enum PinMode
{
    /// <summary>High impedance.</summary>
    Input = 0,

    /// <summary>Driven.</summary>
    Output = 3,
}
