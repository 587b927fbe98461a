using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>Parts by generic type. Values are a starting point (common practice); the parts' data sheets have the last word.</summary>
internal static class PartsList
{
    public static IReadOnlyList<PartLine> Of(House house, BoardPlan plan)
    {
        int inputs = plan.InputRoles.Length;
        int outputs = plan.OutputRoles.Length;
        int valves = outputs - 2;
        int ac = plan.InputRoles.Count(role => (plan.AcKinds & (1 << Role.Kind(role))) != 0);
        bool chains = plan.Arrangement == BoardPlan.Chains;
        List<PartLine> parts =
        [
            new(1, "ESP32 module (WROOM-32 kind) on a carrier", "the controller"),
            new(1, $"5 V supply, SELV or Class 2, at least {LoadSums.SupplyA(plan):0.0} A", "module and coils"),
        ];
        if (chains)
        {
            parts.Add(new PartLine(plan.InputBits / 8, "74HC165 at 3.3 V, 100 nF each", "input chain"));
            parts.Add(new PartLine(plan.OutputBits / 8, "74HC595 at 3.3 V, 100 nF each", "output chain"));
            parts.Add(new PartLine(1, "small N-channel FET, 10 kΩ at gate, 10 kΩ pull-up", "output enable, off at reset"));
        }

        parts.AddRange(
        [
            new(inputs - ac, "optocoupler, LED resistor for the contact supply", "contacts on DC"),
            new(ac, "optocoupler for AC, LED and load resistor for 24 V", "contacts on 24 V AC"),
            new(inputs, "10 kΩ pull-up to 3.3 V", "inputs"),
            new(((valves + 6) / 7) + 1, plan.RelaysActiveLow ? "active-low driver" : "seven-fold Darlington driver",
                "valve coils; pump and heat coils have their own"),
            new(valves, "relay, contact for 24 V AC actuators", "valves"),
            new(1, "relay, contact rated for the pump motor, reinforced insulation", "pump"),
            new(1, "relay, dry contact", "heat demand"),
            new(outputs + 1, $"10 kΩ {(plan.RelaysActiveLow && !chains ? "pull-up" : "pull-down")}", "outputs held off at reset"),
            new(1, "charge pump: 2 capacitors, 2 diodes, FET (hardware-notes)", "feeds pump and heat coils"),
            new(1, $"24 V transformer, {Transformer(house)}, fused", "actuators"),
        ]);
        return [.. parts.Where(part => part.Count > 0)];
    }

    private static string Transformer(House house) =>
        house.Transformer is { } transformer ? $"{transformer.RatingVa:0.#} VA" : "size as below";
}
