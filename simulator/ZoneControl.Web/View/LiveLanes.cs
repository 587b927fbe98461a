using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Web.Live;

namespace ZoneControl.Web.View;

/// <summary>Timing lanes of a bench that is still running, and what they say of a moment.</summary>
public static class LiveLanes
{
    /// <summary>Lanes of a stretch of a rig's time, ms.</summary>
    public static RunView Of(Rig rig, House house, long fromMs, long toMs)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(house);
        Trace part = TraceWindow.Cut(rig.Trace, fromMs, toMs);
        RunLanes lanes = LaneBuilder.From(part, ReportBuilder.Zones(house)) with { StartMs = fromMs, EndMs = toMs };
        return new RunView(rig.Name, lanes, ViewBuilder.Merge(HoldSpans.Of(part)), [], [], [], None, true);
    }

    /// <summary>What a rig did at a moment, in words; "" before its start.</summary>
    public static IReadOnlyList<string> At(Rig rig, House house, long ms, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(house);
        Trace trace = rig.Trace;
        if (TraceWindow.FrameAt(trace, ms) is not { } frame || TraceWindow.SampleAt(trace, ms) is not { } sample || ms > rig.NowMs)
            return [];
        var said = new List<string>
        {
            frame.Unpowered ? "no power" : frame.Pump ? "pump on" : frame.Hold == Logic.HoldReason.None
                ? "pump off, nobody asks" : $"pump held: {HoldWords.Of(frame.Hold).Word}",
            frame.Heat ? "heat asked for" : "no heat asked for",
            $"{Quantity.FlowValue(sample.PumpFlowM3s, units):0.0} {Quantity.FlowUnit(units)} through the pump",
            $"{Quantity.Temperature(sample.TrappedWaterC, units)} in its casing",
        };
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            int bit = 1 << zone;
            bool called = ((frame.Calls | frame.Senses) & bit) != 0;
            bool energised = ((frame.Valves | frame.Senses) & bit) != 0;
            bool proven = (frame.ProvenValves & bit) != 0;
            if (called || energised || sample.Travel[zone] > 0)
            {
                said.Add($"{house.Zones[zone].Label}: {(called ? "calls, " : "")}{sample.Travel[zone]:0 %} open" +
                    $"{(proven ? ", proven" : energised ? ", not proven" : "")}");
            }
        }

        return said;
    }

    private static RunTotals None => new()
    {
        DeadheadS = 0,
        ShutS = 0,
        DeadheadEvents = 0,
        HottestTrappedC = 0,
        PumpStarts = 0,
        PumpRunS = 0,
        PumpEnergyWh = 0,
        FirstWarmFlowS = null,
        ValveStrokes = 0,
    };
}
