namespace ZoneControl.Logic.Tests;

/// <summary>Which valves may, must and must not be energised, as the judge sees it.</summary>
internal sealed class JudgedDrive(ControllerSettings s, JudgedInputs inputs, JudgedValves valves)
{
    public int Valves { get; private set; }

    public string? Look(long now, OutputImage o, int wanted, int resting, JudgedDemand d, bool waterMayMove, bool reset)
    {
        int opened = o.Valves & ~Valves;
        int released = Valves & ~o.Valves;
        Valves = o.Valves;
        if ((o.Valves & s.GatedZones) != 0)
            return "GATE: a valve is driven that is only sensed";
        if (!inputs.Supplied)
            return o.Valves == 0 ? null : "VALVE-SUPPLY: a valve is energised without supply";
        bool demandEnded = !d.Demand && now == d.Since;
        if (waterMayMove && released != 0 && !Enough(valves.Proven))
            return "PUMP-ORDER: a valve was released that nothing replaces";
        if (waterMayMove && released != 0 && !d.Demand && !d.Service && !demandEnded)
            return "PUMP-OVERRUN: a valve was released before the rundown was over";
        if ((opened & ~wanted) != 0)
            return "OPEN-COMPANION, SEASON-LOCKOUT, SERVICE: a valve was opened for nobody";
        if ((opened & resting) != 0)
            return "VALVE-LATE: a valve was tried again before its rest was over";
        if (reset && opened != 0)
            return "ALARM-LATCH: a valve was opened in the scan of a reset";
        int late = o.LateValves | o.StuckSwitches;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((o.Valves & ~wanted & bit) == 0)
                continue;
            if (d.Service)
            {
                if (!waterMayMove || Enough(valves.Proven & ~bit))
                    return $"SERVICE: zone {zone} is open and no hand holds it";
                continue;
            }

            if (!d.Demand && (!waterMayMove || (demandEnded && Enough(valves.Proven) && (valves.Proven & bit) == 0)))
                return $"ANSWER-OFF: zone {zone} is open for nobody";
            if (d.Demand && (Enough(valves.Proven & ~bit) || (!waterMayMove && (late & bit) != 0)))
                return $"OPEN-HANDOVER: zone {zone} is replaced and still open";
        }

        return Waiting(o, wanted, opened, resting, d, reset);
    }

    /// <summary>What is wanted and not open waits for its rest, for the reset's scan or for the transformer, and for nothing else.</summary>
    private string? Waiting(OutputImage o, int wanted, int opened, int resting, JudgedDemand d, bool reset)
    {
        int waiting = wanted & ~(o.Valves | o.LatchedValves | resting);
        if (s.TransformerDeciVa == 0)
            return waiting == 0 || reset ? null : $"OPEN-COMPANION: zones {waiting:b} are wanted and not opened";
        int load = 0;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if (Bits.Has(o.Valves, zone))
                load += valves.Age(zone) < s.InrushMs[zone] ? s.InrushDeciVa[zone] : s.HoldDeciVa[zone];
        }

        if (opened != 0 && load > s.TransformerDeciVa)
            return "VALVE-STAGGER: the transformer is overloaded";
        if (waiting == 0 || reset)
            return null;
        int asked = waiting & d.Asked;
        int first = int.TrailingZeroCount(asked != 0 ? asked : waiting);
        if (load + s.InrushDeciVa[first] <= s.TransformerDeciVa)
            return $"VALVE-STAGGER, OPEN-COMPANION: zone {first} is wanted, fits and is not opened";
        return asked != 0 && (opened & ~d.Asked) != 0 ? "VALVE-STAGGER: a companion went before one who asks" : null;
    }

    private bool Enough(int proven) => JudgedPlan.Enough(s, proven);
}
