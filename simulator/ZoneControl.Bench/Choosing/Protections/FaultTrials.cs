using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>Something that breaks in the middle of winter.</summary>
/// <param name="Name">Name for tables.</param>
/// <param name="Explains">What happens, in a sentence.</param>
/// <param name="Events">It as events of a run.</param>
public sealed record FaultTrial(string Name, string Explains, IReadOnlyList<ScriptEvent> Events);

/// <summary>What breaks, made for a house.</summary>
public static class FaultTrials
{
    /// <summary>Length of the run in which it breaks, for a winter of that many days: three weeks, or as long as a short winter; days.</summary>
    public static int Days(int winterDays) => Math.Clamp(winterDays, 3, 21);

    private const long DayMs = 86_400_000;

    /// <summary>A valve that stays shut, a switch that lies where there is one, and a power cut.</summary>
    public static IReadOnlyList<FaultTrial> Of(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        var trials = new List<FaultTrial>();
        // The zone that others lean on is the one whose failure tells most.
        int leaned = house.Controller.Companions.Value.Count > 0 ? house.Controller.Companions.Value[0] : 0;
        string name = house.Zones[leaned].Label;
        trials.Add(new FaultTrial("actuator sticks", $"{name}'s valve shuts after a day and stays shut, whatever its actuator is told.",
            [new(DayMs, new FaultChange(leaned, new ActuatorFault { Dead = true }, "stays shut"))]));
        int switched = Enumerable.Range(0, house.Zones.Count).FirstOrDefault(zone => house.Zones[zone].Actuator.HasSwitch, -1);
        if (switched >= 0)
        {
            trials.Add(new FaultTrial("switch lies", $"{house.Zones[switched].Label}'s end switch says open from the second day on, and its actuator is dead.",
                [new(DayMs, new FaultChange(switched, new ActuatorFault { Dead = true, Switch = SwitchFault.AlwaysMade }, "lies"))]));
        }

        trials.Add(new FaultTrial("power fails", "The power is off for two hours on the third day.",
            [new(2 * DayMs, new PowerChange(false)), new((2 * DayMs) + 7_200_000, new PowerChange(true))]));
        return trials;
    }
}
