using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>What to look out for with a house's board.</summary>
internal static class BoardWarnings
{
    public static IReadOnlyList<string> Of(House house, BoardPlan plan)
    {
        int periodMs = (int)house.Controller.ScanPeriod.Value.TotalMilliseconds;
        var warnings = new List<string>();
        bool direct = plan.Arrangement == BoardPlan.Direct;
        if (direct)
        {
            warnings.Add("Direct pins are not read back: the runtime switches an output's input stage off. A driver or pin that "
                + "fails is seen only by what it does not move. Chains are read back.");
        }

        if (direct && plan.RelaysActiveLow)
        {
            warnings.Add("Active-low relays on direct pins: the runtime drives a pin low as it becomes an output, for some tens of "
                + "microseconds, whatever was written before. A relay is too slow for that; a solid-state switch is not.");
        }

        AddPins(warnings, plan, direct);
        if (house.GatedZones != 0 && (plan.AcKinds & (1 << Role.Sense)) == 0)
        {
            warnings.Add("Sense inputs are taken as dry contacts. If they see the panel's 24 V AC itself, say so: "
                + "ac_contacts = [\"senses\"] under [board].");
        }

        if (house.Transformer is null && house.Zones.Any(zone => !zone.Gated))
            warnings.Add("The house file has no [transformer]: valves may all start at once, and their load is not watched.");
        if (house.Transformer is { } transformer && transformer.RatingVa > LoadSums.Class2Va)
        {
            warnings.Add($"A transformer of {transformer.RatingVa:0.#} VA is above {LoadSums.Class2Va:0} VA: its circuit is not Class 2, and "
                + "is wired as the local code asks.");
        }

        warnings.Add($"Heartbeat: a change every {periodMs} ms. The charge pump must let go of pump and heat relays within "
            + $"{VirtualHardware.BeatHoldUs(periodMs) / 1000} ms of the last one, and not between two.");
        return warnings;
    }

    private static void AddPins(List<string> warnings, BoardPlan plan, bool direct)
    {
        IEnumerable<int> Chain(bool output) => plan.ChainPins.Where((_, place) => PinNames.ChainPinIsOutput(place) == output);
        int[] outputs = [plan.HeartbeatPin, .. direct ? plan.OutputPlaces : Chain(output: true)];
        int[] inputs = [.. direct ? plan.InputPlaces : Chain(output: false)];
        int[] all = [.. outputs, .. inputs];
        Add(outputs, [14], "pulses while the chip boots (reported, common practice)");
        Add(all, [13, 14], "a JTAG pin, so no such debugger");
        Add(all, [16, 17], "free only on modules without PSRAM");
        Add(inputs, [36, 39], "can dip for 80 ns when the chip powers some of its parts up (errata GPIO-3.11); debounce hides that");

        void Add(int[] used, int[] pins, string why)
        {
            int[] found = [.. used.Intersect(pins).Order()];
            if (found.Length > 0)
                warnings.Add($"GPIO {string.Join(" and ", found)}: {why}.");
        }
    }
}
