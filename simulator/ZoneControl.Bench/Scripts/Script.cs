namespace ZoneControl.Bench.Scripts;

/// <summary>A run to be made on a house: what happens when, and what is expected. Times are ms from the start of the run.</summary>
public sealed record Script
{
    /// <summary>Name of the file it came from, without folders; "" when made in code.</summary>
    public string FileName { get; init; } = "";

    /// <summary>Title for people.</summary>
    public required string Title { get; init; }

    /// <summary>A few sentences about it; possibly "".</summary>
    public string Text { get; init; } = "";

    /// <summary>Length of the run, ms; more than 0.</summary>
    public required long DurationMs { get; init; }

    /// <summary>Conditions that stay the same throughout.</summary>
    public required ScriptConditions Conditions { get; init; }

    /// <summary>Events in order of time; those of one moment in the file's order.</summary>
    public IReadOnlyList<ScriptEvent> Events { get; init; } = [];

    /// <summary>Expectations in the file's order.</summary>
    public IReadOnlyList<Expectation> Expectations { get; init; } = [];
}

/// <summary>Conditions that stay the same throughout a run.</summary>
/// <param name="WaterC">Water temperature, °C; above 0, below 100.</param>
/// <param name="PlantRoomC">Air temperature around the pump, °C; -20 to 60.</param>
/// <param name="ClockStart">Time of day at the start, for display only; null when the file does not say.</param>
public sealed record ScriptConditions(double WaterC, double PlantRoomC, TimeOnly? ClockStart = null);
