namespace ZoneControl.Plant;

/// <summary>What is wrong with one zone's actuator and end switch.</summary>
public sealed record ActuatorFault
{
    /// <summary>Nothing is wrong.</summary>
    public static ActuatorFault None { get; } = new();

    /// <summary>The stem stays where it is, whatever is energised.</summary>
    public bool Stuck { get; init; }

    /// <summary>The actuator gets no supply: a broken wire or a dead heater. It closes as if released.</summary>
    public bool Dead { get; init; }

    /// <summary>Dead times and strokes are longer by this factor; 0.1 to 100.</summary>
    public double Slowness { get; init; } = 1;

    /// <summary>What the end switch does.</summary>
    public SwitchFault Switch { get; init; }
}

/// <summary>What an end switch does.</summary>
public enum SwitchFault
{
    /// <summary>It follows the stem.</summary>
    None,

    /// <summary>It never makes: a broken wire.</summary>
    NeverMakes,

    /// <summary>It is always made: welded or shorted.</summary>
    AlwaysMade,
}
