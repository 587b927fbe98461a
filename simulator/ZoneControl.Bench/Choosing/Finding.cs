namespace ZoneControl.Bench.Choosing;

/// <summary>How much a finding matters.</summary>
public enum FindingKind
{
    /// <summary>As it should be; the number is for the record.</summary>
    Fine,

    /// <summary>It works, and something could be better or wants a look.</summary>
    Advice,

    /// <summary>It cannot stay so.</summary>
    Fault,
}

/// <summary>One thing that a check found.</summary>
/// <param name="Topic">What it is about, a short word for tables and programs: "minimum open".</param>
/// <param name="Kind">How much it matters.</param>
/// <param name="Says">What was found, with its number, in the units asked for.</param>
/// <param name="Basis">The rule, standard or practice behind it.</param>
/// <param name="Change">What to change; "" when nothing needs to be.</param>
public sealed record Finding(string Topic, FindingKind Kind, string Says, string Basis, string Change = "")
{
    /// <summary>The number itself, in <see cref="Unit"/>; null where the finding is not one number.</summary>
    public double? Value { get; init; }

    /// <summary>Unit of <see cref="Value"/>, SI or the trade's: "L/min", "m", "s", "VA"; "" without a number.</summary>
    public string Unit { get; init; } = "";
}
