using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Scripts;

/// <summary>Something the script expects of the run.</summary>
/// <param name="State">What is expected.</param>
/// <param name="When">At which times.</param>
/// <param name="Note">Remark for people; possibly "".</param>
/// <param name="Line">Line of the script file; 0 when made in code.</param>
public sealed record Expectation(ExpectedState State, ExpectedTime When, string Note = "", int Line = 0)
{
    /// <summary>The expectation in words, with the house's own labels.</summary>
    public string InWords(House house) => $"{State.InWords(house)} {When.InWords()}".TrimEnd();
}

/// <summary>What is expected.</summary>
public abstract record ExpectedState
{
    /// <summary>The state in words, with the house's own labels.</summary>
    public abstract string InWords(House house);
}

/// <summary>A state that one frame shows or does not show.</summary>
public abstract record FrameState : ExpectedState
{
    /// <summary>Whether the frame shows it.</summary>
    public abstract bool IsShownBy(in Frame frame);

    /// <summary>What the frame shows instead, in words.</summary>
    public abstract string Seen(in Frame frame, House house);
}

/// <summary>The pump is on or off.</summary>
/// <param name="On">Which.</param>
public sealed record PumpIs(bool On) : FrameState
{
    /// <inheritdoc/>
    public override string InWords(House house) => On ? "pump on" : "pump off";

    /// <inheritdoc/>
    public override bool IsShownBy(in Frame frame) => frame.Pump == On;

    /// <inheritdoc/>
    public override string Seen(in Frame frame, House house) =>
        frame.Pump ? "the pump was on" : $"the pump was off, hold reason \"{HoldWords.Of(frame.Hold).Word}\"";
}

/// <summary>Heat demand is on or off.</summary>
/// <param name="On">Which.</param>
public sealed record HeatIs(bool On) : FrameState
{
    /// <inheritdoc/>
    public override string InWords(House house) => On ? "heat demand on" : "heat demand off";

    /// <inheritdoc/>
    public override bool IsShownBy(in Frame frame) => frame.Heat == On;

    /// <inheritdoc/>
    public override string Seen(in Frame frame, House house) => frame.Heat ? "heat demand was on" : "heat demand was off";
}

/// <summary>
/// A zone's valves are energised ("open") or released ("shut"); a gated zone's as sensed. Where the stem is, is the plant's
/// matter.
/// </summary>
/// <param name="Zone">The zone, from 0.</param>
/// <param name="Open">Which.</param>
public sealed record ValveIs(int Zone, bool Open) : FrameState
{
    /// <inheritdoc/>
    public override string InWords(House house) => $"{house.Zones[Zone].Label}: valves {(Open ? "opened" : "released")}";

    /// <inheritdoc/>
    public override bool IsShownBy(in Frame frame) => (((frame.Valves | frame.Senses) & (1 << Zone)) != 0) == Open;

    /// <inheritdoc/>
    public override string Seen(in Frame frame, House house) => $"valves opened were: {house.ZoneLabels(frame.Valves | frame.Senses)}";
}

/// <summary>The published hold reason.</summary>
/// <param name="Reason">Which.</param>
public sealed record HoldIs(HoldReason Reason) : FrameState
{
    /// <inheritdoc/>
    public override string InWords(House house) => $"hold reason \"{HoldWords.Of(Reason).Word}\"";

    /// <inheritdoc/>
    public override bool IsShownBy(in Frame frame) => frame.Hold == Reason;

    /// <inheritdoc/>
    public override string Seen(in Frame frame, House house) => $"the hold reason was \"{HoldWords.Of(frame.Hold).Word}\"";
}

/// <summary>Kinds of alarm about one zone's valves.</summary>
public enum ValveAlarm
{
    /// <summary>Not proven within its limit (latched ones included).</summary>
    Late,

    /// <summary>Late so often that it is no longer driven.</summary>
    Latched,

    /// <summary>The end switch made too soon to be believed.</summary>
    Early,

    /// <summary>The end switch stays made though the valve is released.</summary>
    Stuck,
}

/// <summary>An alarm about a zone's valves is raised or clear.</summary>
/// <param name="Alarm">Which alarm.</param>
/// <param name="Zone">The zone, from 0.</param>
/// <param name="Raised">Whether it is raised.</param>
public sealed record AlarmIs(ValveAlarm Alarm, int Zone, bool Raised) : FrameState
{
    private string Word => Alarm.ToString().ToLowerInvariant();

    /// <inheritdoc/>
    public override string InWords(House house) => $"alarm \"{Word}\" for {house.Zones[Zone].Label} {(Raised ? "raised" : "clear")}";

    /// <inheritdoc/>
    public override bool IsShownBy(in Frame frame) => ((Mask(frame) & (1 << Zone)) != 0) == Raised;

    /// <inheritdoc/>
    public override string Seen(in Frame frame, House house) => $"alarm \"{Word}\" was raised for: {house.ZoneLabels(Mask(frame))}";

    private int Mask(in Frame frame) => Alarm switch
    {
        ValveAlarm.Late => frame.LateValves,
        ValveAlarm.Latched => frame.LatchedValves,
        ValveAlarm.Stuck => frame.StuckSwitches,
        _ => frame.EarlySwitches,
    };
}

/// <summary>An alarm of the house as a whole is raised or clear.</summary>
/// <param name="Alarm">Its bit in <see cref="Logic.Alarm"/>.</param>
/// <param name="Raised">Whether it is raised.</param>
public sealed record HouseAlarmIs(int Alarm, bool Raised) : FrameState
{
    /// <inheritdoc/>
    public override string InWords(House house) => $"alarm \"{AlarmWords.Of(Alarm).Word}\" {(Raised ? "raised" : "clear")}";

    /// <inheritdoc/>
    public override bool IsShownBy(in Frame frame) => ((frame.Alarms & Alarm) != 0) == Raised;

    /// <inheritdoc/>
    public override string Seen(in Frame frame, House house) => $"alarms of the house were: {AlarmWords.Several(frame.Alarms)}";
}

/// <summary>So many exercises of pump and valves were done within the stated stretch.</summary>
/// <param name="Count">How many.</param>
public sealed record ExercisesDone(int Count) : ExpectedState
{
    /// <inheritdoc/>
    public override string InWords(House house) => Count == 1 ? "1 exercise done" : $"{Count} exercises done";
}

/// <summary>The pump is energised with less than its minimum flow for at most this long, within the stated stretch.</summary>
/// <param name="Ms">At most, ms.</param>
public sealed record DeadheadAtMost(long Ms) : ExpectedState
{
    /// <inheritdoc/>
    public override string InWords(House house) => $"deadhead at most {Durations.InWords(Ms)}";
}
