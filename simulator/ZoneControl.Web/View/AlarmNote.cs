using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Web.View;

/// <summary>An alarm that stands now, with what may lie behind it.</summary>
/// <param name="Title">What is wrong: "Bath: valve late".</param>
/// <param name="Meaning">What the controller saw and does.</param>
/// <param name="Causes">What may cause it, likeliest first (common practice).</param>
public sealed record AlarmNote(string Title, string Meaning, string Causes)
{
    /// <summary>Every alarm of a frame, zones first.</summary>
    public static IReadOnlyList<AlarmNote> Of(in Frame frame, House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        var notes = new List<AlarmNote>();
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            int bit = 1 << zone;
            string name = house.Zones[zone].Label;
            if ((frame.LatchedValves & bit) != 0)
            {
                notes.Add(new($"{name}: valve given up", "It failed to prove open too often and is no longer tried until reset.",
                    "stuck pin, dead actuator, broken end switch or its wire"));
            }
            else if ((frame.LateValves & bit) != 0)
            {
                notes.Add(new($"{name}: valve late", "It was not proven within its limit, does not count as open, and is tried again.",
                    "stuck pin, dead or slow actuator, low supply, broken end switch or its wire"));
            }

            if ((frame.EarlySwitches & bit) != 0)
            {
                notes.Add(new($"{name}: end switch too soon", "It made sooner than the stem can travel, so its full opening time is waited out.",
                    "shorted or welded end switch, water on its plug, a valve that was never shut"));
            }

            if ((frame.StuckSwitches & bit) != 0)
            {
                notes.Add(new($"{name}: end switch stuck", "It is still made long after the valve was released, so it proves nothing any more.",
                    "shorted or welded end switch, a stem that no longer returns"));
            }
        }

        foreach (AlarmWord word in AlarmWords.All)
        {
            if ((frame.Alarms & word.Alarm) != 0)
                notes.Add(new(char.ToUpperInvariant(word.Word[0]) + word.Word[1..], word.Sentence, CausesOf(word.Alarm)));
        }

        return notes;
    }

    private static string CausesOf(int alarm) => alarm switch
    {
        Alarm.FlowTrip or Alarm.FlowLatched => "seized pump, air, a shut isolator, a blocked strainer, a flow switch that sticks",
        Alarm.PumpStuck => "welded pump relay, a flow switch that sticks, another pump pushing through",
        Alarm.LimitLatched => "mixing valve or heat source set too hot, a broken wire to the limit",
        Alarm.FrostInLockout => "a broken wire to the freeze thermostat, or frost",
        Alarm.PriorityLong => "a tank that never gets warm, a relay that sticks",
        Alarm.ExercisePutOff => "another alarm, priority or a missing supply stood in the way",
        Alarm.TimeFault => "a restarted or overloaded board, a failing crystal",
        Alarm.NoSupply => "a blown fuse, an overloaded transformer, a pulled plug",
        Alarm.ServiceEnded => "somebody forgot the hand switches",
        _ => "",
    };
}
