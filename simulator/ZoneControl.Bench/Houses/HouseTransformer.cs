namespace ZoneControl.Bench.Houses;

/// <summary>The transformer that feeds the actuators.</summary>
/// <param name="RatingVa">What its plate says, VA.</param>
/// <param name="Share">How much of that may be used, 0.1 to 1.</param>
/// <param name="SupplyV">What it gives, V.</param>
public sealed record HouseTransformer(double RatingVa, Setting<double> Share, Setting<double> SupplyV)
{
    /// <summary>What may be drawn from it, VA.</summary>
    public double AllowedVa => RatingVa * Share.Value;

    /// <summary>What may be drawn from it, whole tenths of a VA, rounded down.</summary>
    public int AllowedDeciVa => (int)Math.Floor((AllowedVa * 10) + 1e-6);
}
