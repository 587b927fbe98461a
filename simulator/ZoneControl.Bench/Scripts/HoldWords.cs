using ZoneControl.Logic;

namespace ZoneControl.Bench.Scripts;

/// <summary>A hold reason as people and files call it.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="Word">Its short name, as script files write it.</param>
/// <param name="Sentence">One sentence that explains it to somebody new to it.</param>
public sealed record HoldWord(HoldReason Reason, string Word, string Sentence);

/// <summary>The words for hold reasons.</summary>
public static class HoldWords
{
    /// <summary>All reasons, in the order of <see cref="HoldReason"/>.</summary>
    public static IReadOnlyList<HoldWord> All { get; } =
    [
        new(HoldReason.None, "no hold", "The pump is running, or nobody asks for it."),
        new(HoldReason.Service, "hand control", "Somebody works valves and pump by hand, so thermostats may ask but nothing answers."),
        new(HoldReason.Priority, "hot water first", "Hot water for the taps has priority just now, so the rooms wait."),
        new(HoldReason.Lockout, "season lockout", "The season switch says summer, so thermostats may ask but nothing answers."),
        new(HoldReason.ValveLatched, "valve latched",
            "The valves of every calling zone failed to open too often and are no longer tried, so there is nothing to open."),
        new(HoldReason.Limit, "high limit",
            "The water to the floor was too hot and tripped the high limit: somebody has to find out why, then press reset."),
        new(HoldReason.FlowLatched, "no flow",
            "The pump was started several times and the flow switch saw nothing move: somebody has to look, then press reset."),
        new(HoldReason.PumpStuck, "flow with pump off",
            "The flow switch sees water move although the pump is off: either the pump's relay or the switch is stuck."),
        new(HoldReason.Supply, "no actuator supply", "The actuators have no supply, so no valve can open or stay open."),
        new(HoldReason.TooFewValves, "too few valves",
            "So many valves have failed to open that the good ones together cannot pass enough water for the pump."),
        new(HoldReason.Proof, "valves opening",
            "Valves are on their way, but too few are surely open yet: a pump started now would push against closed valves."),
        new(HoldReason.StartDelay, "start delay",
            "Enough valves are open, and the pump waits out its set delay since heat was first asked for."),
        new(HoldReason.Rest, "pump resting", "The pump stopped or started so recently that another start would wear it."),
        new(HoldReason.Reset, "reset", "Somebody has just pressed reset; everything starts over from here."),
    ];

    /// <summary>The words for one reason.</summary>
    public static HoldWord Of(HoldReason reason) => All.First(word => word.Reason == reason);
}
