using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing;

/// <summary>Loops: in balance or not, too slow to carry air out, too fast to be quiet.</summary>
internal static class LoopFindings
{
    /// <summary>Water takes bubbles along from about 2 ft/s (0.6 m/s) on (trade handbooks, from memory).</summary>
    public const double AirCarryingMPerS = 0.6;

    /// <summary>Tube is quiet up to about 4 ft/s (1.2 m/s) (common practice).</summary>
    public const double QuietMPerS = 1.2;

    /// <summary>A loop within a fifth of its share is in balance (common practice).</summary>
    public const double Tolerance = 0.2;

    public static IEnumerable<Finding> Of(House house, HouseFlows flows, IReadOnlyList<LoopFigures> loops)
    {
        yield return InBalance(house, flows, loops);
        yield return Air(house, loops);
        LoopFigures fastest = loops.MaxBy(loop => Math.Max(loop.VelocityMPerS, loop.AloneVelocityMPerS))!;
        double fast = Math.Max(fastest.VelocityMPerS, fastest.AloneVelocityMPerS);
        if (fast > QuietMPerS)
        {
            yield return new Finding("noise", FindingKind.Advice,
                $"water runs at {Measured.Velocity(fast, house.Units)} in {fastest.Label}",
                $"quiet up to about {(house.Units == DisplayUnits.Us ? "4 ft/s" : "1.2 m/s")} (common practice)", "a lower pump speed, or throttle this loop")
            {
                Value = fast,
                Unit = "m/s",
            };
        }
    }

    private static Finding InBalance(House house, HouseFlows flows, IReadOnlyList<LoopFigures> loops)
    {
        double mean = loops.Sum(loop => loop.FlowM3s) / loops.Sum(loop => loop.DesignM3s);
        double Share(LoopFigures loop) => loop.FlowM3s / loop.DesignM3s / mean;
        LoopFigures[] off = [.. loops.Where(loop => Math.Abs(Share(loop) - 1) > Tolerance)];
        LoopFigures worst = loops.MaxBy(loop => Math.Abs(Share(loop) - 1))!;
        const string Basis = "a loop's share is what all get now, in proportion to what each wants (see the table); within a fifth (common practice)";
        if (off.Length == 0)
        {
            return new Finding("balance", FindingKind.Fine,
                $"every loop has its share within a fifth; farthest off is {worst.Label} with {Share(worst) * 100:0} % of it", Basis)
            {
                Value = Share(worst) * 100,
                Unit = "%",
            };
        }

        IReadOnlyList<BalancedLoop> balanced = Balancing.Balance(flows, [.. loops.Select(loop => loop.DesignM3s)]);
        (LoopFigures Loop, BalancedLoop Share)[] all = [.. loops.Zip(balanced).Where(pair => double.IsFinite(pair.Second.Kv))];
        (LoopFigures Loop, BalancedLoop Share)[] over = [.. all.Where(pair => off.Contains(pair.Loop) && Share(pair.Loop) > 1)];
        IEnumerable<string> named = (over.Length > 0 ? over : all)
            .Select(pair => $"{pair.Loop.Label} to {Show.Flow(pair.Share.FlowM3s, house.Units)} ({Measured.Kv(pair.Share.Kv, house.Units)})");
        string rise = off.Any(loop => Share(loop) < 1) ? " Loops below their share rise as the others are throttled" : "";
        return new Finding("balance", FindingKind.Advice,
            $"{off[0].Label} gets {Share(off[0]) * 100:0} % of its share"
                + string.Concat(off.Skip(1).Select(loop => $", {loop.Label} {Share(loop) * 100:0} %")),
            Basis,
            $"throttle at the manifold, all zones open: {string.Join(", ", named)}. That is each one's share of all that this pump gives, more "
                + $"than it wants where the pump is large.{rise}".TrimEnd('.'))
        {
            Value = Share(worst) * 100,
            Unit = "%",
        };
    }

    private static Finding Air(House house, IReadOnlyList<LoopFigures> loops)
    {
        LoopFigures slowest = loops.MinBy(loop => loop.AloneVelocityMPerS)!;
        int slow = loops.Count(loop => loop.AloneVelocityMPerS < AirCarryingMPerS);
        string limit = house.Units == DisplayUnits.Us ? "2 ft/s" : "0.6 m/s";
        return new Finding("air", slow > 0 ? FindingKind.Advice : FindingKind.Fine,
            slow > 0
                ? $"with its zone alone open water stays slower than {limit} in {slow} of {loops.Count} loops; slowest is "
                    + $"{slowest.Label} with {Measured.Velocity(slowest.AloneVelocityMPerS, house.Units)}"
                : $"with one zone open water reaches {Measured.Velocity(slowest.AloneVelocityMPerS, house.Units)} or more in every loop",
            $"water carries air along from about {limit} on (trade handbooks, from memory)",
            slow > 0
                ? "this pump will not drive air out of them, as is usual, and no reason for a larger one: flush each loop by itself from the mains "
                    + "or with a purge pump"
                : "")
        {
            Value = slowest.AloneVelocityMPerS,
            Unit = "m/s",
        };
    }
}
