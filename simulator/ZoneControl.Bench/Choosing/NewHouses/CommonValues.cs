namespace ZoneControl.Bench.Choosing.NewHouses;

/// <summary>The common value of each answer, in the units of the house (all common practice for a small dwelling).</summary>
public sealed record CommonValues
{
    /// <summary>Common values in metric units.</summary>
    public static CommonValues Si { get; } = new()
    {
        PumpHead = "5 m",
        PumpFlow = "40 L/min",
        PumpPower = "60 W",
        MainsLength = "10 m",
        MainsInside = "26 mm",
        Tube = "16x2 mm",
    };

    /// <summary>Common values in US units.</summary>
    public static CommonValues Us { get; } = new()
    {
        PumpHead = "16 ft",
        PumpFlow = "11 gpm",
        PumpPower = "60 W",
        MainsLength = "30 ft",
        MainsInside = "1.05 in",
        Tube = "1/2 in",
    };

    /// <summary>Head at no flow.</summary>
    public required string PumpHead { get; init; }

    /// <summary>Flow at no head.</summary>
    public required string PumpFlow { get; init; }

    /// <summary>Electrical power.</summary>
    public required string PumpPower { get; init; }

    /// <summary>Pipes from pump to manifold and back.</summary>
    public required string MainsLength { get; init; }

    /// <summary>Their inside diameter.</summary>
    public required string MainsInside { get; init; }

    /// <summary>Tube in the floor.</summary>
    public required string Tube { get; init; }

    /// <summary>Those of "si" or "us".</summary>
    public static CommonValues Of(string units) => units == "us" ? Us : Si;

    /// <summary>Opening time of an actuator of a kind, at worst.</summary>
    public static string Opening(string kind) => kind switch
    {
        "two-wire" => "4 min",
        "four-wire" => "3 min",
        _ => "1 min",
    };
}
