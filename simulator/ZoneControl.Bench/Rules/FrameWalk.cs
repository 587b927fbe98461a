using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules;

/// <summary>A frame as ints, for saving and loading; its times are left out.</summary>
internal static class FrameWalk
{
    public static Frame Walk(StateWalk walk, in Frame f)
    {
        int flags = (f.PowerUp ? 1 : 0) | (f.Unpowered ? 2 : 0) | (f.Pump ? 4 : 0) | (f.Heat ? 8 : 0) | ((int)f.Hold << 4);
        int calls = f.Calls, switches = f.EndSwitches, senses = f.Senses, hands = f.Hands, contacts = f.Contacts;
        int valves = f.Valves, late = f.LateValves, latched = f.LatchedValves;
        int early = f.EarlySwitches, stuck = f.StuckSwitches, alarms = f.Alarms;
        walk.Int(ref flags);
        walk.Int(ref calls);
        walk.Int(ref switches);
        walk.Int(ref senses);
        walk.Int(ref hands);
        walk.Int(ref contacts);
        walk.Int(ref valves);
        walk.Int(ref late);
        walk.Int(ref latched);
        walk.Int(ref early);
        walk.Int(ref stuck);
        walk.Int(ref alarms);
        return new Frame
        {
            Ms = 0,
            PowerUp = (flags & 1) != 0,
            Unpowered = (flags & 2) != 0,
            Pump = (flags & 4) != 0,
            Heat = (flags & 8) != 0,
            Hold = (HoldReason)(flags >> 4),
            Calls = calls,
            EndSwitches = switches,
            Senses = senses,
            Hands = hands,
            Contacts = contacts,
            Valves = valves,
            LateValves = late,
            LatchedValves = latched,
            EarlySwitches = early,
            StuckSwitches = stuck,
            Alarms = alarms,
        };
    }
}
