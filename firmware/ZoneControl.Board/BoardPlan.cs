namespace ZoneControl.Board;

/// <summary>
/// Which pin does what on one board. Filled once, before the board starts, and not changed afterwards; the bench makes it
/// from the house file and <see cref="PlanCheck"/> looks at it there and again on the board.
/// </summary>
public sealed class BoardPlan
{
    /// <summary>An ESP32 module of the WROOM-32 kind.</summary>
    public const int Esp32 = 0;

    /// <summary>The bench's virtual chip: any pin from 0 to 127 does anything. For houses that fit no real board's direct pins.</summary>
    public const int Virtual = 1;

    /// <summary>Every input and output has a pin of its own.</summary>
    public const int Direct = 0;

    /// <summary>Inputs through 74HC165, outputs through 74HC595 shift registers.</summary>
    public const int Chains = 1;

    /// <summary>Places in <see cref="ChainPins"/>: clock of both chains, rising edge.</summary>
    public const int Clock = 0;

    /// <summary>Low loads the inputs, the rising edge latches the outputs.</summary>
    public const int Strobe = 1;

    /// <summary>Data into the output chain.</summary>
    public const int OutputData = 2;

    /// <summary>Data out of the input chain.</summary>
    public const int InputData = 3;

    /// <summary>Data out of the end of the output chain.</summary>
    public const int ReadBack = 4;

    /// <summary>High enables the outputs, through a transistor that pulls the chips' enable low.</summary>
    public const int Enable = 5;

    /// <summary>How many pins the chains take.</summary>
    public const int ChainPinCount = 6;

    /// <summary><see cref="Esp32"/> or <see cref="Virtual"/>.</summary>
    public int Module;

    /// <summary><see cref="Direct"/> or <see cref="Chains"/>.</summary>
    public int Arrangement;

    /// <summary>A low level energises a relay; else a high one.</summary>
    public bool RelaysActiveLow;

    /// <summary>A closed contact gives a high level; else a low one, as an optocoupler to ground does.</summary>
    public bool ClosedIsHigh;

    /// <summary>Kinds of inputs whose contacts switch 24 V AC, one bit of <c>1 &lt;&lt; kind</c> each: they are seen through an envelope.</summary>
    public int AcKinds;

    /// <summary>The pin that toggles after every good scan.</summary>
    public int HeartbeatPin;

    /// <summary>Roles of the inputs, in the order of the terminals.</summary>
    public int[] InputRoles = new int[0];

    /// <summary>Each input's pin, or its place in the chain: 0 is the first bit that comes out.</summary>
    public int[] InputPlaces = new int[0];

    /// <summary>Roles of the outputs, in the order of the terminals.</summary>
    public int[] OutputRoles = new int[0];

    /// <summary>Each output's pin, or its place in the chain: 0 is the first output of the first chip.</summary>
    public int[] OutputPlaces = new int[0];

    /// <summary>The chains' pins in the order of the constants above; empty for direct pins.</summary>
    public int[] ChainPins = new int[0];

    /// <summary>Bits of the input chain, whole chips: the inputs, and at its two ends a bit wired high and one wired low; 0 for direct pins.</summary>
    public int InputBits;

    /// <summary>Bits of the output chain, whole chips; 0 for direct pins.</summary>
    public int OutputBits;
}
