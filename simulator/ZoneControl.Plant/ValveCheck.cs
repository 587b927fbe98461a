namespace ZoneControl.Plant;

/// <summary>Finds what is wrong with tables of valves.</summary>
internal static class ValveCheck
{
    private const int MostPoints = 100;

    /// <summary>Mistakes of a characteristic.</summary>
    public static void Table(List<string> found, string place, IReadOnlyList<ValvePoint> table)
    {
        if (table.Count is < 2 or > MostPoints)
        {
            found.Add($"{place} has {table.Count} points; expected 2 to {MostPoints}.");
            return;
        }

        if (table[0] is not (0, 0) || table[^1] is not (1, 1))
        {
            (ValvePoint first, ValvePoint last) = (table[0], table[^1]);
            found.Add($"{place} goes from ({first.Travel}, {first.Opening}) to ({last.Travel}, {last.Opening}); expected from"
                + " (0, 0), shut, to (1, 1), open.");
        }

        for (int i = 1; i < table.Count; i++)
        {
            // Written so that NaN is found.
            if (!(table[i].Travel > table[i - 1].Travel))
            {
                found.Add($"{place}[{i}].Travel is {table[i].Travel} after {table[i - 1].Travel}; expected travel to rise.");
            }

            if (!(table[i].Opening > table[i - 1].Opening))
            {
                found.Add($"{place}[{i}].Opening is {table[i].Opening} after {table[i - 1].Opening}; expected opening to rise"
                    + " with travel, without a kink back.");
            }
        }
    }

    /// <summary>Mistakes of a balancing valve.</summary>
    public static void Balancing(List<string> found, string place, BalancingValveDescription? valve)
    {
        if (valve is null)
        {
            return;
        }

        IReadOnlyList<BalancingPoint> table = valve.Table;
        if (table.Count is < 1 or > MostPoints)
        {
            found.Add($"{place}.Table has {table.Count} points; expected 1 to {MostPoints}.");
            return;
        }

        for (int i = 0; i < table.Count; i++)
        {
            RangeCheck.Between(found, $"{place}.Table[{i}].Kv", table[i].Kv, 0.001, 1000, "m³/h at 1 bar");
            if (!double.IsFinite(table[i].Setting))
            {
                found.Add($"{place}.Table[{i}].Setting is {table[i].Setting}; expected a number.");
            }
            else if (i > 0 && !(table[i].Setting > table[i - 1].Setting && table[i].Kv > table[i - 1].Kv))
            {
                found.Add($"{place}.Table[{i}] is ({table[i].Setting}, {table[i].Kv}) after ({table[i - 1].Setting},"
                    + $" {table[i - 1].Kv}); expected setting and Kv to rise.");
            }
        }

        if (!(valve.Setting >= table[0].Setting && valve.Setting <= table[^1].Setting))
        {
            found.Add($"{place}.Setting is {valve.Setting}; expected a setting of its table, {table[0].Setting} to"
                + $" {table[^1].Setting}.");
        }
    }
}
