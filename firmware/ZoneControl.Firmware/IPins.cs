namespace ZoneControl.Firmware;

/// <summary>The pins as the firmware uses them.</summary>
public interface IPins
{
    /// <summary>Makes a pin an input without a pull; the board's own resistors give it a level.</summary>
    void OpenInput(int pin);

    /// <summary>
    /// Makes a pin an output at a level. The runtime drives a pin low as it becomes an output, so a pin that is to be high is
    /// low for the moment between two calls (hardware-notes/power-up.md).
    /// </summary>
    void OpenOutput(int pin, bool high);

    /// <summary>Level of an input.</summary>
    bool Read(int pin);

    /// <summary>Drives an output.</summary>
    void Write(int pin, bool high);
}
