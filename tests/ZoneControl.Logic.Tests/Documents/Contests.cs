namespace ZoneControl.Logic.Tests;

/// <summary>Scenes in which two rules, or two who ask, want different things.</summary>
internal static class Contests
{
    private const string Limits = "trips and limits";
    private const string Latches = "latches";
    private const string Calls = "calls with COMPANION and HANDOVER";
    private const string Retry = "VALVE-LATE retry";

    /// <summary>Rules that nobody who asks can overrule.</summary>
    public static IReadOnlyList<Contest> Vetoes { get; } =
    [
        new("PUMP-PROOF", "SERVICE", "a hand asks for the pump and opens nothing", o => !o.Pump, o => o.Pump,
            () => Rig.InSeason(Served(1)).On(Contact.ServicePump).RunFor(5000),
            () => Rig.InSeason(Served(1)).Hand(0).On(Contact.ServicePump).RunFor(5000)),
        new("PUMP-REST", "SERVICE", "a hand asks for a pump that has just stopped", o => !o.Pump, o => o.Pump,
            () => Rested(20_000).RunFor(5000),
            () => Rested(0).RunFor(5000)),
        new("HEAT-FLOW", "FREEZE", "frost asks for heat, and no water flows", o => !o.Heat, o => o.Heat,
            () => Rig.InSeason(Frosty(Contact.Flow)).On(Contact.Freeze).RunFor(House.Opening + 500),
            () => Rig.InSeason(Frosty(0)).On(Contact.Freeze).RunFor(House.Opening + 500)),
        new("VALVE-STAGGER", "SERVICE", "a hand opens more at once than the transformer can feed", o => o.Valves != 7, o => o.Valves == 7,
            () => Rig.InSeason(House.OfZones(3).Transformer(200, 50, 100, 500)).Hand(0, 1, 2).Step(),
            () => Rig.InSeason(House.OfZones(3)).Hand(0, 1, 2).Step()),
    ];

    /// <summary>Scenes that settle the order of the rest.</summary>
    public static IReadOnlyList<Contest> Ranks { get; } =
    [
        new("BOOT-SAFE", "TIME-FAULT", "the power fails, and the board's clock begins anew",
            o => o is { PowerUp: true, Valves: 0, Alarms: 0 }, o => (o.Alarms & Alarm.TimeFault) != 0,
            () => Rig.Running(House.OfZones(1), 0).PowerCut().Step(),
            () => Rig.Running(House.OfZones(1), 0).StepAfter(-100)),
        new("TIME-FAULT", Limits, "the clock jumps back in the scan in which the limit opens",
            o => o.Alarms == Alarm.TimeFault, o => o.Alarms == Alarm.LimitLatched,
            () => Rig.Running(Limited(), 0).On(Contact.Limit).StepAfter(-100),
            () => Rig.Running(Limited(), 0).On(Contact.Limit).Step()),
        new(Limits, Latches, "the reset button goes down while the limit is open",
            o => o.Alarms == Alarm.LimitLatched, o => o.Alarms == 0,
            () => Rig.Running(Limited(), 0).On(Contact.Limit).Step().Reset(),
            () => Rig.Running(Limited(), 0).On(Contact.Limit).Step().Off(Contact.Limit).Step().Reset()),
        new(Limits, "PUMP-ORDER", "the actuators' supply is lost while the pump runs",
            o => o is { Pump: false, Valves: 0 }, o => o is { Pump: false, Valves: 1 },
            () => Rig.Running(House.OfZones(1).Fit(Contact.Supply), 0).Off(Contact.Supply).Step(),
            () => Rig.Running(Limited(), 0).On(Contact.Limit).Step()),
        new(Latches, "SERVICE", "a hand opens a zone whose valve is latched", o => o.Valves == 0, o => o.Valves == 1,
            () => Latched().EndCall(0).Hand(0).RunFor(500),
            () => Rig.InSeason(Sticking().Retries(0)).Hand(0).RunFor(500)),
        new("PUMP-ORDER", "SERVICE", "a hand lets go the zone that the pump runs on", o => o.Valves == 3, o => o.Valves == 2,
            () => HandChangesZone(Contact.ServicePump),
            () => HandChangesZone(0)),
        new("SERVICE", "PUMP-STUCK", "a hand opens one zone while the pump runs on by itself", o => o.Valves == 2, o => (o.Valves & 1) != 0,
            () => Rig.InSeason(Sensed(2)).Hand(1).RunFor(3000).On(Contact.Flow).RunFor(2000),
            () => Rig.InSeason(Sensed(2)).On(Contact.Flow).RunFor(2000)),
        new("PUMP-STUCK", "FREEZE", "frost asks while the pump runs on by itself", o => !o.Pump, o => o.Pump,
            () => Rig.InSeason(Frosty(Contact.Flow)).On(Contact.Flow).RunFor(2000).On(Contact.Freeze).RunFor(3000),
            () => Rig.InSeason(Frosty(Contact.Flow)).On(Contact.Freeze).RunFor(2500)),
        new("FREEZE", "PRIORITY", "frost and a call ask while hot water has priority", o => o.Pump, o => !o.Pump,
            () => Rig.InSeason(Frosty(Contact.Priority)).Call(0).On(Contact.Priority | Contact.Freeze).RunFor(5000),
            () => Rig.InSeason(Frosty(Contact.Priority)).Call(0).On(Contact.Priority).RunFor(5000)),
        new("PRIORITY", "SEASON-LOCKOUT", "in lockout a zone calls while hot water has priority",
            o => o.Hold == HoldReason.Priority, o => o.Hold == HoldReason.Lockout,
            () => Rig.InSeason(House.OfZones(1).Fit(Contact.Priority)).Lockout().Call(0).On(Contact.Priority).Step(),
            () => Rig.InSeason(House.OfZones(1).Fit(Contact.Priority)).Lockout().Call(0).Step()),
        new("SEASON-LOCKOUT", Calls, "a zone calls in lockout", o => o.Valves == 0, o => o.Valves == 1,
            () => Rig.InSeason(House.OfZones(1)).Lockout().Call(0).RunFor(500),
            () => Rig.InSeason(House.OfZones(1)).Call(0).RunFor(500)),
        new(Calls, "OVERRUN", "a zone calls in an overrun", o => o is { Pump: true, Heat: true }, o => o is { Pump: true, Heat: false },
            () => Rig.Running(House.OfZones(1), 0).EndCall(0).RunFor(500).Call(0).Step(),
            () => Rig.Running(House.OfZones(1), 0).EndCall(0).RunFor(600)),
        new("OVERRUN", Retry, "a valve becomes late in an overrun",
            o => o is { LateValves: 1, Valves: 3 }, o => o is { LateValves: 1, Valves: 2 },
            () => BothProven().EndCall(0, 1).Step().Break(0).RunFor(House.SwitchLimit + 500),
            () => BothProven().Break(0).RunFor(House.SwitchLimit + 500)),
        new(Retry, "EXERCISE", "a valve becomes late in an exercise", o => o is { LateValves: 1, Valves: 2 }, o => o.Valves == 3,
            () => Exercising().RunFor(House.SwitchLimit),
            () => Exercising().RunFor(House.SwitchLimit - 500)),
        new(Calls, "EXERCISE", "a zone calls in an exercise", o => o.Valves == 2 && o.Heat, o => o.Valves == 3,
            () => Exercising().Season().Call(1).RunFor(House.Opening + 500),
            () => Exercising().RunFor(House.Opening + 500)),
    ];

    private static House Served(int zones) => House.OfZones(zones).Fit(Contact.ServicePump);

    private static House Limited() => House.OfZones(1).Fit(Contact.Limit | Contact.Reset);

    private static House Sensed(int zones) => House.OfZones(zones).Fit(Contact.Flow);

    private static House Frosty(int contacts) => House.OfZones(1).Fit(Contact.Freeze | contacts);

    private static House Sticking() => House.OfZones(1).Switched(0);

    private static Rig Latched() => Rig.InSeason(Sticking().Retries(0)).Call(0).RunFor(House.SwitchLimit + 500);

    private static Rig Rested(int ms)
    {
        Rig rig = Rig.Running(House.OfZones(1).Fit(Contact.Limit | Contact.Reset | Contact.ServicePump).With(s => s.PumpMinOffMs = Math.Max(House.Scan, ms)), 0);
        return rig.On(Contact.Limit).Step().Off(Contact.Limit).Step().Reset().Hand(0).On(Contact.ServicePump);
    }

    private static Rig HandChangesZone(int pump)
    {
        Rig rig = Rig.InSeason(Served(2)).Hand(0).On(pump).RunFor(House.Opening + 500);
        return rig.EndHand(0).Hand(1).RunFor(500);
    }

    private static Rig BothProven()
    {
        House house = House.OfZones(2).Switched(0).Companions(1).With(s => s.PumpOverrunMs = House.SwitchLimit + 1000);
        Rig rig = Rig.Running(house, 0, 1);
        rig.RunUntil(o => o.ProvenValves == 3, 5000);
        return rig;
    }

    private static Rig Exercising()
    {
        House house = House.OfZones(2).Switched(0).Companions(1).Exercised(60, 60, 3000, 9000);
        Rig rig = Rig.BeforePowerUp(house).Lockout();
        rig.RunUntil(o => o.Valves == 3, 61_000);
        return rig;
    }
}
