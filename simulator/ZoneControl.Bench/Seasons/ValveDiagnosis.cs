using System.Numerics;
using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Seasons;

/// <summary>What the strokes say of valves, actuators, switches and their wires.</summary>
internal sealed class ValveDiagnosis(House house, CommissioningRun run)
{
    public IEnumerable<Diagnosed> Faults()
    {
        HashSet<(int, int)> pairs = [];
        foreach (Stroke stroke in run.Strokes.Where(stroke => stroke.NotTried.Length == 0 && !stroke.BrokenOff))
        {
            if (Crossed(stroke) is { } crossed)
            {
                if (pairs.Add((Math.Min(crossed.Zone, crossed.Other), Math.Max(crossed.Zone, crossed.Other))))
                    yield return crossed;
            }
            else if (Own(stroke) is { } own && !CrossedElsewhere(stroke.Zone))
            {
                yield return own;
            }
        }
    }

    public IEnumerable<string> Unknown()
    {
        bool told = run.BrokenOff.Length > 0; // once, for the whole run
        foreach (Stroke stroke in run.Strokes.Where(stroke => !told || stroke.NotTried.Length == 0 && !stroke.BrokenOff))
        {
            string name = Name(stroke.Zone);
            if (stroke.NotTried.Length > 0)
                yield return $"{name} was not stroked: {stroke.NotTried}.";
            else if (stroke.BrokenOff)
                yield return $"{name}'s stroke was broken off: {HandDesk.WaterMoves}.";
            else if (!HasSwitch(stroke.Zone) && stroke.Seen.Moved is null && stroke.OtherSwitches == 0 && !CrossedElsewhere(stroke.Zone))
                yield return $"{name} has no end switch and nobody looked: whether it opened, or another valve in its place, is not known.";
        }
    }

    /// <summary>Something of another zone answered.</summary>
    private Diagnosed? Crossed(Stroke stroke)
    {
        int zone = stroke.Zone;
        int? moved = stroke.Seen.Moved;
        int movedElsewhere = (moved ?? 0) & ~(1 << zone);
        bool movedItself = moved is { } m && (m & (1 << zone)) != 0;
        if (One(stroke.OtherSwitches) is { } other && stroke.SwitchMadeMs is null)
            return OtherSwitch(stroke, other, movedItself, moved is null);
        if (One(movedElsewhere) is { } stem && !movedItself)
        {
            return stroke.SwitchMadeMs is not null
                ? Exchange(Fault.SwappedZones, zone, stem,
                    $"told to open {Name(zone)}, the stem of {Name(stem)} moved and the switch said {Name(zone)}",
                    "exchange both pairs of wires, or the names in the house file")
                : Wires(zone, stem, $"told to open {Name(zone)}, the stem of {Name(stem)} moved");
        }

        return null;
    }

    private Diagnosed OtherSwitch(Stroke stroke, int other, bool movedItself, bool unseen)
    {
        int zone = stroke.Zone;
        string seen = $"told to open {Name(zone)}, the end switch of {Name(other)} said open{After(stroke.OtherSwitchMs)}";
        // Without a switch of its own there is no switch wire to exchange.
        if (!HasSwitch(zone))
            return Wires(zone, other, seen);
        if (unseen)
        {
            return Exchange(Fault.SwappedActuatorsOrSwitches, zone, other,
                $"{seen}: either their actuator wires or their end-switch wires are exchanged, which look alike to contacts",
                "look which stem moves, then exchange the pair of wires that is wrong");
        }

        return movedItself
            ? Exchange(Fault.SwappedSwitches, zone, other, $"{seen}, and the stem of {Name(zone)} moved: the end-switch wires are exchanged",
                $"exchange the end-switch wires of {Name(zone)} and {Name(other)}")
            : Wires(zone, other, $"{seen}, and the stem of {Name(zone)} did not move");
    }

    private Diagnosed Wires(int zone, int other, string seen) => Exchange(Fault.SwappedActuators, zone, other,
        $"{seen}: the actuator wires are exchanged", $"exchange the actuator wires of {Name(zone)} and {Name(other)}");

    private static Diagnosed Exchange(Fault fault, int zone, int other, string says, string change) =>
        new(fault, zone, other, says, change);

    /// <summary>The zone's own valve, actuator or switch.</summary>
    private Diagnosed? Own(Stroke stroke)
    {
        int zone = stroke.Zone;
        bool? movedItself = stroke.Seen.Moved is { } moved ? (moved & (1 << zone)) != 0 : null;
        if (stroke.SwitchMadeAtRest)
        {
            return Of(Fault.SwitchMadeAtRest, zone, "its end switch said open before any valve was switched on",
                "see whether the valve stands open by hand, then look for a short in the switch wire or a welded switch");
        }

        if (HasSwitch(zone) && stroke.SwitchMadeMs is { } made)
        {
            Finding judged = TimeJudge.Opening(house.Zones[zone], new ZoneRecord { Zone = house.Zones[zone].Name, SwitchMadeS = made / 1000.0 }, bySwitch: true);
            return judged.Kind == FindingKind.Fault && made >= house.Zones[zone].SwitchMinTime.Value.TotalMilliseconds
                    && made >= house.Zones[zone].Actuator.DeadTime.Value.TotalMilliseconds
                ? new Diagnosed(Fault.SlowValve, zone, -1, judged.Says, judged.Change)
                : null;
        }

        return movedItself switch
        {
            false => Still(stroke),
            true when HasSwitch(zone) => Of(Fault.DeadSwitch, zone, $"its stem moved and its end switch did not say open{Within(stroke)}",
                "look for a broken switch wire; until then it proves nothing"),
            true => null,
            null when HasSwitch(zone) => Of(Fault.DoesNotShowOpen, zone,
                $"its end switch did not say open{Within(stroke)}: a stuck valve, a dead actuator, a broken wire or a dead switch, "
                    + "which contacts cannot tell apart",
                "feel whether the actuator gets warm and look whether the stem moves"),
            null => null,
        };
    }

    private Diagnosed Still(Stroke stroke)
    {
        int zone = stroke.Zone;
        return stroke.Seen.Warmed switch
        {
            { } warmed when (warmed & (1 << zone)) != 0 => Of(Fault.StuckValve, zone,
                $"its actuator worked and the stem did not move{Within(stroke)}: the valve is stuck",
                "free the small pin under the actuator, with the pump off; if it does not spring back, renew the valve's insert"),
            { } => Of(Fault.DeadActuator, zone, $"its actuator stayed cold or silent and the stem did not move{Within(stroke)}: no supply, or dead",
                "look for voltage at the actuator while it is told to open; without any, a broken wire"),
            null => Of(Fault.DoesNotShowOpen, zone, $"its stem did not move{Within(stroke)}",
                "feel whether the actuator gets warm: warm, the valve is stuck; cold, it is dead or its wire is broken"),
        };
    }

    private Diagnosed Of(Fault fault, int zone, string says, string change) => new(fault, zone, -1, $"{Name(zone)}: {says}", change);

    /// <summary>How long it was watched; "" where that was not noted.</summary>
    private static string Within(Stroke stroke) => stroke.WatchedMs > 0 ? $" within {Seconds(stroke.WatchedMs)}" : "";

    private static string After(long? ms) => ms is { } at ? $" after {Seconds(at)}" : "";

    private static string Seconds(long ms) => Durations.InWords(TimeSpan.FromSeconds(Math.Round(ms / 1000.0)));

    /// <summary>Another zone's stroke has moved or made something of this one, so its own silence is part of that.</summary>
    private bool CrossedElsewhere(int zone) => run.Strokes.Any(stroke =>
        stroke.Zone != zone && Crossed(stroke) is { } crossed && crossed.Other == zone);

    private static int? One(int mask) => BitOperations.PopCount((uint)mask) == 1 ? BitOperations.TrailingZeroCount(mask) : null;

    private bool HasSwitch(int zone) => house.Zones[zone].Actuator.HasSwitch;

    private string Name(int zone) => house.Zones[zone].Label;
}
