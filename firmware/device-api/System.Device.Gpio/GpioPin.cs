using ZoneControl.DeviceApi;

namespace System.Device.Gpio;

/// <summary>
/// A pin that does what the interpreter's native code for the ESP32 does
/// (nf-interpreter, targets/ESP32/_nanoCLR/System.Device.Gpio/cpu_gpio.cpp): a pin that becomes an output is driven low
/// whatever came before, a pin that is no output refuses to be written, and an output always reads as low, because its
/// input stage is off.
/// </summary>
public sealed class GpioPin
{
    private readonly int _pinNumber;
    private bool _output;

    internal GpioPin(int pinNumber) => _pinNumber = pinNumber;

    /// <summary>Sets what the pin is.</summary>
    public void SetPinMode(PinMode value)
    {
        _output = value == PinMode.Output;
        VirtualPins.Drive(_pinNumber, _output ? 0 : VirtualPins.Floating);
    }

    /// <summary>The pin's level.</summary>
    public PinValue Read() => !_output && VirtualPins.Level(_pinNumber) != 0 ? PinValue.High : PinValue.Low;

    /// <summary>Drives an output.</summary>
    /// <exception cref="ArgumentException">The pin is no output.</exception>
    public void Write(PinValue value)
    {
        if (!_output)
            throw new ArgumentException();
        VirtualPins.Drive(_pinNumber, (int)value);
    }
}
