namespace ZoneControl.Plant;

/// <summary>The sentence for a value outside its range.</summary>
internal static class RangeCheck
{
    /// <summary>Adds it when the value is outside.</summary>
    public static void Between(
        List<string> found, string place, double value, double low, double high, string unit,
        bool openLow = false, bool openHigh = false)
    {
        // Written so that NaN falls through to the message.
        if (value >= low && value <= high && !(openLow && value == low) && !(openHigh && value == high))
        {
            return;
        }

        string from = openLow ? $"more than {low}" : $"at least {low}";
        string to = openHigh ? $"less than {high}" : $"at most {high}";
        found.Add($"{place} is {value}; expected {from} and {to}{(unit.Length > 0 ? " " + unit : "")}.");
    }
}
