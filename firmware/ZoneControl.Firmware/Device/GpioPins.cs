using System.Device.Gpio;
using ZoneControl.Board;

namespace ZoneControl.Firmware;

/// <summary>The chip's own pins.</summary>
public sealed class GpioPins : IPins
{
    private readonly GpioController _controller = new GpioController();
    private readonly GpioPin?[] _pins = new GpioPin?[PinGuide.Most];

    /// <inheritdoc/>
    public void OpenInput(int pin) => Open(pin).SetPinMode(PinMode.Input);

    /// <inheritdoc/>
    public void OpenOutput(int pin, bool high)
    {
        GpioPin opened = Open(pin);
        opened.SetPinMode(PinMode.Output);
        opened.Write(high ? PinValue.High : PinValue.Low);
    }

    /// <inheritdoc/>
    public bool Read(int pin) => (int)_pins[pin]!.Read() != 0;

    /// <inheritdoc/>
    public void Write(int pin, bool high) => _pins[pin]!.Write(high ? PinValue.High : PinValue.Low);

    private GpioPin Open(int pin)
    {
        GpioPin opened = _controller.OpenPin(pin);
        _pins[pin] = opened;
        return opened;
    }
}
