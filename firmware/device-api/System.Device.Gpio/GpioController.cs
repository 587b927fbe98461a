using ZoneControl.DeviceApi;

namespace System.Device.Gpio;

/// <summary>The chip's pins.</summary>
public sealed class GpioController
{
    /// <summary>Opens a pin; it stays as the reset left it until a mode is set.</summary>
    /// <exception cref="InvalidOperationException">The pin does not exist or is open already.</exception>
    public GpioPin OpenPin(int pinNumber)
    {
        if (!VirtualPins.Reserve(pinNumber))
            throw new InvalidOperationException();
        return new GpioPin(pinNumber);
    }
}
