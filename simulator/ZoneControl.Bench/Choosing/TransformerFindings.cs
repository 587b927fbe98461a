using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Choosing;

/// <summary>Load of the actuators' transformer, and how long valves wait for their turn.</summary>
internal static class TransformerFindings
{
    /// <summary>Most that a Class 2 circuit's source may give, VA (NEC article 725, chapter 9 table 11, from trade texts).</summary>
    private const double ClassTwoVa = 100;

    private const double CommonShare = 0.8;

    private static readonly double[] _sizes = [20, 40, 50, 75, 96, 100];

    public static IEnumerable<Finding> Of(House house)
    {
        HouseZone[] driven = [.. house.Zones.Where(zone => !zone.Gated)];
        if (driven.Length == 0)
            yield break;
        double hold = driven.Sum(zone => zone.HoldVa);
        double inrush = driven.Sum(zone => zone.InrushVa);
        double last = hold + driven.Max(zone => zone.InrushVa - zone.HoldVa);
        string loads = $"all valves held take {hold:0.#} VA, all starting at once {inrush:0.#} VA, the last one starting {last:0.#} VA";
        if (house.Transformer is not { } transformer)
        {
            yield return Missing(loads, last);
            yield break;
        }

        TimeSpan wait = Stagger.LongestWait(driven, transformer.AllowedVa);
        bool tooLarge = transformer.SupplyV.Value <= 30 && transformer.RatingVa > ClassTwoVa;
        yield return new Finding("transformer", tooLarge ? FindingKind.Advice : FindingKind.Fine,
            $"{loads}; {transformer.AllowedVa:0.#} of {transformer.RatingVa:0.#} VA may be used, so "
                + (wait > TimeSpan.Zero
                    ? $"when all call at once the last zone starts {Durations.InWords(wait)} after the first"
                    : "all zones may start at once"),
            "a valve waits to open until the transformer can feed it (rule VALVE-STAGGER); four fifths of the plate (common practice), "
                + "Class 2 at most 100 VA (NEC article 725, from trade texts)",
            tooLarge ? "a source above 100 VA is no Class 2 circuit: ask the electrician, or split it in two" : "")
        {
            Value = last,
            Unit = "VA",
        };
    }

    private static Finding Missing(string loads, double last)
    {
        double needed = last / CommonShare;
        double size = _sizes.FirstOrDefault(va => va >= needed);
        return new Finding("transformer", FindingKind.Advice,
            $"{loads}; the house file names no transformer, so loads are not watched",
            "four fifths of the plate may be used (common practice), Class 2 at most 100 VA (NEC article 725, from trade texts)",
            size > 0
                ? $"add [transformer] with its rating; {needed:0} VA would hold all and start them in turns"
                    + (size > needed + 0.5 ? $", and {size:0} VA is the next usual size" : "")
                : $"{needed:0} VA are more than one Class 2 transformer gives: two of them, and [transformer] for the one on ZoneControl")
        {
            Value = last,
            Unit = "VA",
        };
    }
}

/// <summary>How long valves wait when all want to open at once.</summary>
public static class Stagger
{
    /// <summary>From the first zone's start to the last one's, in the house file's order, as VALVE-STAGGER lets them.</summary>
    /// <param name="zones">Zones that ZoneControl drives.</param>
    /// <param name="allowedVa">What may be drawn, VA; enough for the last to start while all others are held.</param>
    public static TimeSpan LongestWait(IReadOnlyList<HouseZone> zones, double allowedVa)
    {
        ArgumentNullException.ThrowIfNull(zones);
        TimeSpan now = TimeSpan.Zero;
        var warming = new List<(TimeSpan Until, HouseZone Zone)>();
        double load = 0;
        foreach (HouseZone zone in zones)
        {
            while (load + zone.InrushVa > allowedVa + 1e-6 && warming.Count > 0)
            {
                (TimeSpan until, HouseZone done) = warming.MinBy(one => one.Until);
                now = until;
                load -= done.InrushVa - done.HoldVa;
                warming.Remove((until, done));
            }

            load += zone.InrushVa;
            warming.Add((now + zone.Actuator.InrushTime.Value, zone));
        }

        return now;
    }
}
