namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>The owner's own prices, in the owner's own money. Null is not given.</summary>
public sealed record Prices
{
    /// <summary>Price of one of each part, by its name; a part without a price leaves its protections without a cost.</summary>
    public IReadOnlyDictionary<string, double> Parts { get; init; } = new Dictionary<string, double>();

    /// <summary>Price of a kWh of electricity.</summary>
    public double? Electricity { get; init; }

    /// <summary>Price of a kWh of heat.</summary>
    public double? Heat { get; init; }

    /// <summary>Years to add up, 1 to 50.</summary>
    public int Years { get; init; } = 10;

    /// <summary>Whether any price is given.</summary>
    public bool AreGiven => Parts.Count > 0 || Electricity is not null || Heat is not null;
}

/// <summary>What a protection costs.</summary>
/// <param name="Purchase">All its parts; null where a price is missing.</param>
/// <param name="AYear">Electricity of the pump and heat in a year of one such winter; null where no energy price is given.</param>
/// <param name="InAll">Purchase and the years together, without interest; null where either is missing.</param>
public sealed record Cost(double? Purchase, double? AYear, double? InAll)
{
    /// <summary>The cost of an outcome.</summary>
    public static Cost Of(Outcome outcome, Prices prices)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        ArgumentNullException.ThrowIfNull(prices);
        IReadOnlyList<PartCount> parts = outcome.Protection.Parts;
        double? purchase = parts.All(part => prices.Parts.ContainsKey(part.Part))
            ? parts.Sum(part => part.Count * prices.Parts[part.Part])
            : null;
        double? electricity = prices.Electricity * outcome.PumpEnergyKWh;
        double? heat = outcome.Winter is { } winter ? prices.Heat * winter.HeatKWh : null;
        double? year = electricity is null && heat is null ? null : (electricity ?? 0) + (heat ?? 0);
        return new Cost(purchase, year, purchase + (year * prices.Years));
    }
}
