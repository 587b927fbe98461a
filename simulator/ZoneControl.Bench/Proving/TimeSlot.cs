using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>A place in the settings where a time stands that the search scales.</summary>
internal sealed record TimeSlot(string Name, int Ms, Action<int> Set)
{
    /// <summary>Every such place that this house has a use for. Debounce, exercise intervals and the stall limit are proven apart.</summary>
    public static List<TimeSlot> Of(ControllerSettings s, Func<int, string> nameOf)
    {
        var slots = new List<TimeSlot>();
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            AddZone(slots, "valve opening", s.OpeningMs, zone, nameOf);
            if ((s.SwitchedZones & (1 << zone)) != 0)
            {
                AddZone(slots, "valve closing", s.ClosingMs, zone, nameOf);
                AddZone(slots, "soonest end switch", s.SwitchMinMs, zone, nameOf);
                AddZone(slots, "end switch limit", s.SwitchLimitMs, zone, nameOf);
            }

            if (s.TransformerDeciVa > 0)
                AddZone(slots, "inrush", s.InrushMs, zone, nameOf);
        }

        slots.Add(new("start delay", s.PumpStartDelayMs, ms => s.PumpStartDelayMs = ms));
        slots.Add(new("overrun", s.PumpOverrunMs, ms => s.PumpOverrunMs = ms));
        slots.Add(new("rundown", s.PumpRundownMs, ms => s.PumpRundownMs = ms));
        slots.Add(new("heat lead", s.HeatLeadMs, ms => s.HeatLeadMs = ms));
        slots.Add(new("pump rest", s.PumpMinOffMs, ms => s.PumpMinOffMs = ms));
        slots.Add(new("start interval", s.PumpStartIntervalMs, ms => s.PumpStartIntervalMs = ms));
        if (s.Has(Contact.Flow))
        {
            slots.Add(new("flow proof", s.FlowProofMs, ms => s.FlowProofMs = ms));
            slots.Add(new("flow loss", s.FlowLossMs, ms => s.FlowLossMs = ms));
        }

        if (s.ExerciseIntervalS > 0)
            slots.Add(new("exercise run", s.ExerciseRunMs, ms => s.ExerciseRunMs = ms));
        if (s.Has(Contact.Freeze))
            slots.Add(new("frost heat", s.FreezeHeatMaxMs, ms => s.FreezeHeatMaxMs = ms));
        if (s.Has(Contact.Priority))
            slots.Add(new("priority limit", s.PriorityMaxMs, ms => s.PriorityMaxMs = ms));
        if (s.Has(Contact.ServicePump))
            slots.Add(new("service limit", s.ServiceLimitMs, ms => s.ServiceLimitMs = ms));
        return slots;
    }

    private static void AddZone(List<TimeSlot> slots, string name, int[] times, int zone, Func<int, string> nameOf) =>
        slots.Add(new($"{name} ({nameOf(zone)})", times[zone], ms => times[zone] = ms));
}
