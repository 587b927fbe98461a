using ZoneControl.Logic;

namespace ZoneControl.Bench.Scripts;

/// <summary>An alarm of the house as people and files call it.</summary>
/// <param name="Alarm">Its bit in <see cref="Logic.Alarm"/>.</param>
/// <param name="Word">Its short name, as script files write it.</param>
/// <param name="Sentence">One sentence that explains it to somebody new to it.</param>
public sealed record AlarmWord(int Alarm, string Word, string Sentence);

/// <summary>The words for alarms that belong to no zone.</summary>
public static class AlarmWords
{
    /// <summary>All alarms, in the order of their bits.</summary>
    public static IReadOnlyList<AlarmWord> All { get; } =
    [
        new(Alarm.FlowTrip, "flow trip", "The flow switch saw nothing move, so the pump was stopped; it is tried again."),
        new(Alarm.FlowLatched, "no flow", "The pump was stopped for want of flow too often and waits for reset."),
        new(Alarm.PumpStuck, "flow with pump off", "Water moves although the pump is off: its relay or the flow switch is stuck."),
        new(Alarm.LimitLatched, "high limit", "The water to the floor was too hot; pump and heat wait for reset."),
        new(Alarm.FrostInLockout, "frost in lockout", "The freeze contact asks in summer: frost, or a broken wire."),
        new(Alarm.PriorityLong, "hot water too long", "Hot water kept its priority too long and is ignored until it lets go."),
        new(Alarm.ExercisePutOff, "exercise put off", "Pump and valves should have been moved, and something forbade it."),
        new(Alarm.TimeFault, "clock fault", "The controller's clock could not be trusted; everything began anew."),
        new(Alarm.NoSupply, "no actuator supply", "The actuators have no supply, so no valve can open or stay open."),
        new(Alarm.ServiceEnded, "hand control ended", "Hand switches were left on too long and are ignored until all are off."),
    ];

    /// <summary>The words for one alarm, a bit of <see cref="Logic.Alarm"/>.</summary>
    public static AlarmWord Of(int alarm) => All.First(word => word.Alarm == alarm);

    /// <summary>The words of a mask, in the order of the bits: "high limit, clock fault"; "none" for no alarm.</summary>
    public static string Several(int alarms)
    {
        string words = string.Join(", ", All.Where(word => (alarms & word.Alarm) != 0).Select(word => word.Word));
        return words.Length > 0 ? words : "none";
    }
}
