using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Web.View;

namespace ZoneControl.Web.Drawing;

/// <summary>The water circuit in words, for people who hear the page.</summary>
public static class CircuitWords
{
    /// <summary>What the drawing shows just now.</summary>
    public static string Of(CircuitView now, House house, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(house);
        var said = new List<string>
        {
            !now.Powered ? "No power."
            : now.Starved ? "The pump runs with less than its minimum flow: deadhead."
            : now.Pump ? $"The pump moves {Quantity.FlowValue(now.PumpFlowM3s, units):0.0} {Quantity.FlowUnit(units)}."
            : now.Held != HoldReason.None ? $"The pump is held: {HoldWords.Of(now.Held).Word}."
            : "The pump is off.",
            now.Heat ? "Heat is asked for." : "No heat is asked for.",
        };
        for (int i = 0; i < now.Zones.Count; i++)
        {
            ZoneNow zone = now.Zones[i];
            said.Add($"{house.Zones[i].Label}: {(zone.Calls ? "calls" : "no call")}, valve {zone.Travel:0 %} open" +
                $"{(zone.Proven ? ", proven" : "")}.");
        }

        return string.Join(' ', said);
    }
}
