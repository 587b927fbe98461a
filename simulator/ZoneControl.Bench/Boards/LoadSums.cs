using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>Sums of currents on the board and of loads on the actuators' transformer.</summary>
internal static class LoadSums
{
    /// <summary>What the module's supply must give, mA (ESP32-WROOM-32 datasheet, recommended operating conditions; from memory).</summary>
    public const int ModuleMa = 500;

    /// <summary>Coil of a small 5 V relay, mA (common practice: 0.36 W).</summary>
    public const int CoilMa = 72;

    /// <summary>LED of a contact's optocoupler, mA (common practice).</summary>
    public const int LedMa = 5;

    /// <summary>What a Class 2 supply may give, VA (NEC chapter 9 table 11, from trade texts).</summary>
    public const double Class2Va = 100;

    /// <summary>What the 5 V supply must give, A, to the next half.</summary>
    public static double SupplyA(BoardPlan plan) => Math.Ceiling((ModuleMa + (plan.OutputRoles.Length * CoilMa)) / 500.0) / 2;

    public static IReadOnlyList<LoadLine> Of(House house, BoardPlan plan)
    {
        int coils = plan.OutputRoles.Length * CoilMa;
        int leds = plan.InputRoles.Length * LedMa;
        HouseZone[] driven = [.. house.Zones.Where(zone => !zone.Gated)];
        var lines = new List<LoadLine>
        {
            new("5 V supply", $"{(ModuleMa + coils) / 1000.0:0.00} A", $"module {ModuleMa} mA, {plan.OutputRoles.Length} coils of {CoilMa} mA"),
            new("contact supply", $"{leds} mA", $"{plan.InputRoles.Length} inputs of {LedMa} mA"),
        };
        if (driven.Length == 0)
            return lines;
        string source = house.Transformer is null ? "; common values, the house file has no [transformer]" : "";
        double hold = driven.Sum(zone => zone.HoldVa);
        double cold = driven.Sum(zone => zone.InrushVa);
        HouseZone worst = driven.MaxBy(zone => zone.InrushVa - zone.HoldVa)!;
        lines.Add(new LoadLine("all valves held", $"{hold:0.#} VA", $"{driven.Sum(zone => zone.Actuators.Value)} actuators{source}"));
        lines.Add(new LoadLine("the last to open", $"{hold - worst.HoldVa + worst.InrushVa:0.#} VA", $"{worst.Label} starting, all others held"));
        lines.Add(new LoadLine("all starting at once", $"{cold:0.#} VA", Starting(house, cold)));
        if (house.Transformer is { } transformer)
        {
            double amps = transformer.RatingVa / transformer.SupplyV.Value;
            lines.Add(new LoadLine("transformer", $"{transformer.AllowedVa:0.#} VA",
                $"{transformer.Share.Value * 100:0.#} % of {transformer.RatingVa:0.#} VA; {amps:0.00} A at {transformer.SupplyV.Value:0.#} V"));
        }

        return lines;
    }

    private static string Starting(House house, double cold) => house.Transformer switch
    {
        null => "nothing staggers them without a [transformer]",
        { } transformer when cold <= transformer.AllowedVa => "within what may be used: they need not take turns",
        _ => "more than may be used: they take turns",
    };
}
