using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>What a house file says of the board; what it leaves open, <see cref="PinPlanner"/> fills in.</summary>
public sealed record HouseBoard
{
    /// <summary>Direct pins or chains of shift registers; null for whichever fits.</summary>
    public Setting<int>? Arrangement { get; init; }

    /// <summary>A low level energises a relay.</summary>
    public Setting<bool> RelaysActiveLow { get; init; } = Setting.Derived(false, "off is what a pin does at reset");

    /// <summary>A closed contact gives a high level.</summary>
    public Setting<bool> ClosedIsHigh { get; init; } = Setting.Derived(false, "an optocoupler pulls its pin to ground");

    /// <summary>Kinds of inputs whose contacts switch 24 V AC, one bit of <c>1 &lt;&lt; kind</c> each.</summary>
    public Setting<int> AcKinds { get; init; } = Setting.Derived(0, "the board feeds its contacts with DC");

    /// <summary>Pins that the file gives, by what they do (<see cref="PinNames"/>).</summary>
    public IReadOnlyDictionary<string, int> Pins { get; init; } = new Dictionary<string, int>();
}
