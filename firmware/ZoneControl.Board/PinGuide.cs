namespace ZoneControl.Board;

/// <summary>
/// Which pins of the module may be used for what, and why not.
/// <para>
/// Sources: ESP32-WROOM-32D datasheet (pins, strapping: section 2 and its table 4), ESP-IDF GPIO page (input-only pins, flash
/// pins), both as summarised in hardware-notes/pins.md.
/// </para>
/// </summary>
public static class PinGuide
{
    /// <summary>One more than the highest pin number that a plan may name.</summary>
    public const int Most = 128;

    /// <summary>Nothing is wrong with it.</summary>
    public const int Fine = 0;

    /// <summary>The module has no such pin.</summary>
    public const int Missing = 1;

    /// <summary>Its level at reset decides how the chip starts.</summary>
    public const int Strapping = 2;

    /// <summary>The module's flash memory is on it.</summary>
    public const int Flash = 3;

    /// <summary>The console is on it.</summary>
    public const int Console = 4;

    /// <summary>It cannot drive anything.</summary>
    public const int InputOnly = 5;

    /// <summary>Whether a pin may be an input or an output: <see cref="Fine"/> or the reason against it.</summary>
    public static int Look(int module, int pin, bool output)
    {
        if (module == BoardPlan.Virtual)
            return pin >= 0 && pin < Most ? Fine : Missing;
        switch (pin)
        {
            case 0:
            case 2:
            case 5:
            case 12:
            case 15:
                return Strapping;
            case 1:
            case 3:
                return Console;
            case 6:
            case 7:
            case 8:
            case 9:
            case 10:
            case 11:
                return Flash;
            case 34:
            case 35:
            case 36:
            case 39:
                return output ? InputOnly : Fine;
            case 4:
            case 13:
            case 14:
            case 16:
            case 17:
            case 18:
            case 19:
            case 21:
            case 22:
            case 23:
            case 25:
            case 26:
            case 27:
            case 32:
            case 33:
                return Fine;
            default:
                return Missing;
        }
    }

    /// <summary>Why a pin may not be used, as the end of a sentence; "" for <see cref="Fine"/>.</summary>
    public static string Words(int reason)
    {
        switch (reason)
        {
            case Missing:
                return "the module brings out no such pin";
            case Strapping:
                return "it is a strapping pin: its level at reset decides how the chip starts";
            case Flash:
                return "the module's flash memory is on it";
            case Console:
                return "the console is on it, and the chip prints there as it starts";
            case InputOnly:
                return "it is input-only and cannot drive anything";
            default:
                return "";
        }
    }
}
