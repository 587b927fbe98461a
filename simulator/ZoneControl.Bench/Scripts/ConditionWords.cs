using ZoneControl.Logic;

namespace ZoneControl.Bench.Scripts;

/// <summary>A condition between "wanted" and "on" as people call it.</summary>
/// <param name="Condition">The condition.</param>
/// <param name="Word">What holds when it is met, in a few words.</param>
/// <param name="Sentence">What it is about, in a sentence for somebody new to it.</param>
public sealed record ConditionWord(Condition Condition, string Word, string Sentence);

/// <summary>The words for conditions.</summary>
public static class ConditionWords
{
    /// <summary>All conditions, in the order of <see cref="Condition"/>.</summary>
    public static IReadOnlyList<ConditionWord> All { get; } =
    [
        new(Condition.Wanted, "somebody asks for the pump", "A call, frost, an exercise or a hand asks, and nothing withholds it."),
        new(Condition.NoLimit, "high limit not latched", "Once tripped it stays so until somebody presses reset."),
        new(Condition.NoFlowLatch, "not given up for want of flow", "After too many starts without flow the pump waits for reset."),
        new(Condition.NoStrayFlow, "no flow while the pump is off", "Flow with the pump off means that its relay or the flow switch sticks."),
        new(Condition.Supply, "actuators have their supply", "Without it no valve can open or stay open."),
        new(Condition.EnoughValves, "enough healthy valves", "Valves that failed to open are not counted on."),
        new(Condition.Proof, "enough valves proven open", "By their opening time, or by their end switches, they reach minimum open."),
        new(Condition.StartDelay, "start delay over", "It counts from the moment at which heat was first asked for."),
        new(Condition.Rested, "pump has rested", "Starts too close together wear it."),
        new(Condition.PumpOn, "pump on", "Heat is asked for only while the pump carries it away."),
        new(Condition.Flow, "flow seen", "Where a flow switch is fitted it must see the water move."),
        new(Condition.LimitClosed, "high limit closed", "Water to the floor is not too hot."),
        new(Condition.HeatAsked, "a call or frost asks for heat", "An exercise or a hand moves water without heat."),
        new(Condition.FrostTime, "frost heat not used up", "In lockout frost gets heat for a limited time."),
    ];

    /// <summary>The words for one condition.</summary>
    public static ConditionWord Of(Condition condition) => All.First(word => word.Condition == condition);
}
