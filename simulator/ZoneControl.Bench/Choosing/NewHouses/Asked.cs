namespace ZoneControl.Bench.Choosing.NewHouses;

/// <summary>A question about a house: its words for a person and the option that answers it too.</summary>
/// <param name="Title">What is asked.</param>
/// <param name="Option">Its option.</param>
public sealed record Asked(string Title, string Option)
{
    /// <summary>Name of the house.</summary>
    public static Asked Name { get; } = new("Name of the house", "--name");

    /// <summary>Units of results.</summary>
    public static Asked Units { get; } = new("Units for results", "--units");

    /// <summary>Head at no flow.</summary>
    public static Asked PumpHead { get; } = new("Pump: most head", "--pump-head");

    /// <summary>Flow at no head.</summary>
    public static Asked PumpFlow { get; } = new("Pump: most flow", "--pump-flow");

    /// <summary>Electrical power.</summary>
    public static Asked PumpPower { get; } = new("Pump: power", "--pump-power");

    /// <summary>Minimum flow.</summary>
    public static Asked MinimumFlow { get; } = new("Pump: least flow", "--minimum-flow");

    /// <summary>Length of the mains.</summary>
    public static Asked MainsLength { get; } = new("Pipes to the manifold", "--mains-length");

    /// <summary>Their inside diameter.</summary>
    public static Asked MainsInside { get; } = new("Their inside diameter", "--mains-inside");

    /// <summary>Tube in the floor.</summary>
    public static Asked Tube { get; } = new("Tube in the floor", "--tube");

    /// <summary>Whether a panel drives the valves.</summary>
    public static Asked Gated { get; } = new("Does an existing panel drive the valves", "--gated");

    /// <summary>The zones.</summary>
    public static Asked Zones { get; } = new("Zones", "--zone");

    /// <summary>Loops that always stand open.</summary>
    public static Asked StandingLoops { get; } = new("Loops without an actuator", "--standing-loop");

    /// <summary>A spring bypass.</summary>
    public static Asked Bypass { get; } = new("Spring bypass opens at", "--bypass");

    /// <summary>The transformer.</summary>
    public static Asked Transformer { get; } = new("Transformer", "--transformer");

    /// <summary>Contacts fitted.</summary>
    public static Asked Contacts { get; } = new("Contacts fitted", "--contacts");

    /// <summary>Minimum open, which is no question but an option.</summary>
    public static Asked MinimumOpen { get; } = new("Minimum open", "--minimum-open");

    private static readonly (string Key, Asked Question)[] _keys =
    [
        ("pump.curve", PumpHead), ("pump.power", PumpPower), ("pump.minimum_flow", MinimumFlow), ("pump", PumpHead),
        ("mains.length", MainsLength), ("mains", MainsInside), ("every_loop", Tube), ("zone", Zones), ("actuator", Zones),
        ("standing_loop", StandingLoops), ("bypass", Bypass), ("transformer", Transformer), ("contacts", Contacts),
        ("controller", MinimumOpen), ("units", Units), ("name", Name),
    ];

    /// <summary>The question whose answer stands at a key of the house file: "pump.curve[1]"; null for a key that none answers.</summary>
    public static Asked? OfKey(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return _keys.FirstOrDefault(pair => key.StartsWith(pair.Key, StringComparison.Ordinal)).Question;
    }

    /// <summary>"Pump: most head (--pump-head)".</summary>
    public override string ToString() => $"{Title} ({Option})";
}
