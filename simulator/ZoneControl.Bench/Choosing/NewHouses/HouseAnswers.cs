namespace ZoneControl.Bench.Choosing.NewHouses;

/// <summary>
/// What a person in front of the manifold can answer about a house. Quantities are as people write them, unit included; null
/// is "the common value, please".
/// </summary>
public sealed record HouseAnswers
{
    /// <summary>Name of the house.</summary>
    public string Name { get; init; } = "My house";

    /// <summary>"si" or "us".</summary>
    public string Units { get; init; } = "si";

    /// <summary>Head of the pump at no flow, from its label.</summary>
    public string? PumpHead { get; init; }

    /// <summary>Flow of the pump at no head, from its label.</summary>
    public string? PumpFlow { get; init; }

    /// <summary>Electrical power of the pump, from its label.</summary>
    public string? PumpPower { get; init; }

    /// <summary>Flow below which the pump's maker does not want it run.</summary>
    public string? MinimumFlow { get; init; }

    /// <summary>Length of the pipes from the pump to the manifold and back.</summary>
    public string? MainsLength { get; init; }

    /// <summary>Inside diameter of those pipes.</summary>
    public string? MainsInside { get; init; }

    /// <summary>Size of the tube in the floor: a name such as "16x2 mm" or "1/2 in".</summary>
    public string? Tube { get; init; }

    /// <summary>Names of the manifolds; at least one.</summary>
    public IReadOnlyList<string> Manifolds { get; init; } = ["main"];

    /// <summary>The zones, in the order of the terminals.</summary>
    public IReadOnlyList<ZoneAnswers> Zones { get; init; } = [];

    /// <summary>Lengths of loops without an actuator, always open.</summary>
    public IReadOnlyList<string> StandingLoops { get; init; } = [];

    /// <summary>Pressure at which a spring bypass opens; null for none.</summary>
    public string? Bypass { get; init; }

    /// <summary>Rating of the actuators' transformer; null when it is not known.</summary>
    public string? Transformer { get; init; }

    /// <summary>Contacts fitted, by their keys under [contacts].</summary>
    public IReadOnlyList<string> Contacts { get; init; } = [];

    /// <summary>An existing panel drives the valves of every zone; ZoneControl only gates pump and heat demand.</summary>
    public bool Gated { get; init; }

    /// <summary>Minimum open; null to reckon it from pump and pipes.</summary>
    public int? MinimumOpen { get; init; }
}

/// <summary>What a person answers about a zone.</summary>
/// <param name="Name">Its name for people; the name in files follows from it.</param>
/// <param name="Kind">"two-wire", "four-wire", "motorised" or "motorised with switch".</param>
/// <param name="Opening">Opening time of its actuator at worst; null for the common one.</param>
/// <param name="Loops">Lengths of its loops.</param>
/// <param name="Manifold">Which of the manifolds; null for the first.</param>
public sealed record ZoneAnswers(string Name, string Kind, string? Opening, IReadOnlyList<string> Loops, string? Manifold = null)
{
    /// <summary>Kinds of actuator, the commonest first.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["two-wire", "four-wire", "motorised", "motorised with switch"];
}
