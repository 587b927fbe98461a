using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Houses;

/// <summary>
/// What each time is when the house file does not give it. All are on the safe side of the actuators; the factors are
/// common practice, since actuators differ and slow down with cold, age and low voltage.
/// </summary>
public static class Derivations
{
    /// <summary>Margin on the actuator's own worst times.</summary>
    public const double Margin = 1.25;

    /// <summary>End switch point of a four-wire actuator: 80 to 90 % of travel is usual.</summary>
    public static Setting<double> SwitchAt { get; } = Setting.Derived(0.85, "common practice: 80 to 90 % of travel");

    /// <summary>Opening time with margin, rounded up to 5 s.</summary>
    public static Setting<TimeSpan> ProofTime(HouseActuator actuator) =>
        Setting.Derived(WithMargin(actuator.OpeningTime), $"opening time of {actuator.Name} and a quarter more");

    /// <summary>Closing time with margin, rounded up to 5 s.</summary>
    public static Setting<TimeSpan> ClosingTime(HouseActuator actuator) =>
        Setting.Derived(WithMargin(actuator.ClosingTime.Value), $"closing time of {actuator.Name} and a quarter more");

    /// <summary>A quarter of the opening time, or the dead time where that is longer: no healthy switch makes sooner.</summary>
    public static Setting<TimeSpan> SwitchMinTime(HouseActuator actuator) => actuator.DeadTime.Value > Times(actuator.OpeningTime, 0.25)
        ? Setting.Derived(actuator.DeadTime.Value, $"dead time of {actuator.Name}")
        : Setting.Derived(Times(actuator.OpeningTime, 0.25), $"a quarter of the opening time of {actuator.Name}");

    /// <summary>A switch that makes at the last moment has yet to stand through its debounce and be scanned.</summary>
    public static TimeSpan LeastSwitchLimit(TimeSpan proofTime) => proofTime + TimeSpan.FromSeconds(3);

    /// <summary>One and a half proof times, or the least that can be.</summary>
    public static Setting<TimeSpan> SwitchLimit(TimeSpan proofTime) => Times(proofTime, 1.5) >= LeastSwitchLimit(proofTime)
        ? Setting.Derived(Times(proofTime, 1.5), $"one and a half proof times of {Durations.InWords(proofTime)}")
        : Setting.Derived(LeastSwitchLimit(proofTime), $"proof time of {Durations.InWords(proofTime)} and 3 s more");

    /// <summary>The quickest actuator's opening time: no path can surely be open sooner.</summary>
    public static Setting<TimeSpan> PumpStartDelay(HouseActuator? quickest) => quickest is null
        ? Setting.Derived(TimeSpan.Zero, "no actuators")
        : Setting.Derived(quickest.OpeningTime, $"opening time of {quickest.Name}, the quickest actuator");

    /// <summary>Closing time: a thermal actuator cools half as long again as it warms, a spring is as quick as its motor.</summary>
    public static Setting<TimeSpan> ClosingOf(ActuatorKind kind, TimeSpan opening) => kind == ActuatorKind.Motorised
        ? Setting.Derived(opening, "the opening time")
        : Setting.Derived(Times(opening, 1.5), "one and a half opening times");

    /// <summary>Time before anything moves: a quarter of the whole for a thermal actuator, none for a motor.</summary>
    public static Setting<TimeSpan> DeadTimeOf(ActuatorKind kind, TimeSpan whole, string what) => kind == ActuatorKind.Motorised
        ? Setting.Derived(TimeSpan.Zero, "a motor moves at once")
        : Setting.Derived(Times(whole, 0.25), $"a quarter of the {what}");

    /// <summary>What actuators and transformers are made for where nobody says.</summary>
    public static Setting<double> Supply { get; } = Setting.Derived(24.0, "common practice");

    /// <summary>Load of one actuator that holds: a thermal one takes 1 to 3 W, a motor some more (common practice).</summary>
    public static Setting<double> HoldOf(ActuatorKind kind) => kind == ActuatorKind.Motorised
        ? Setting.Derived(6.0, "common practice for a motor with spring return")
        : Setting.Derived(3.0, "common practice: 1 to 3 VA");

    /// <summary>Load of one actuator that starts: a cold thermal one takes two to five times its load, a motor its own.</summary>
    public static Setting<double> InrushOf(ActuatorKind kind, double holdVa) => kind == ActuatorKind.Motorised
        ? Setting.Derived(holdVa, "a motor takes no more when it starts")
        : Setting.Derived(holdVa * 3, "three times the load that holds (common practice: two to five)");

    /// <summary>How long that start lasts: a thermal actuator is warm when it begins to move.</summary>
    public static Setting<TimeSpan> InrushTimeOf(ActuatorKind kind, TimeSpan deadTime, TimeSpan opening) =>
        kind == ActuatorKind.Motorised
            ? Setting.Derived(opening, "the opening time")
            : Setting.Derived(deadTime, "the dead time: it is warm when it moves");

    /// <summary>
    /// What an exercise may take before it is put off: the slowest valve, everything that may hold the pump, the run itself,
    /// and a minute in hand. ms, at most <see cref="Logic.ControllerSettings.LongestMs"/>.
    /// </summary>
    public static int ExerciseLimitMs(House house)
    {
        HouseController c = house.Controller;
        HouseZone[] driven = [.. house.Zones.Where(zone => !zone.Gated)];
        TimeSpan slowest = driven.Select(zone => zone.Actuator.HasSwitch ? zone.SwitchLimit.Value : zone.ProofTime.Value)
            .DefaultIfEmpty(TimeSpan.Zero).Max();
        TimeSpan stagger = house.Transformer is null
            ? TimeSpan.Zero
            : driven.Aggregate(TimeSpan.Zero, (sum, zone) => sum + zone.Actuator.InrushTime.Value);
        TimeSpan limit = slowest + stagger + c.PumpStartDelay.Value + c.PumpMinOff.Value + c.PumpStartInterval
            + c.ExerciseRun.Value + TimeSpan.FromMinutes(1);
        return (int)Math.Min(limit.TotalMilliseconds, Logic.ControllerSettings.LongestMs);
    }

    private static TimeSpan WithMargin(TimeSpan time)
    {
        var step = TimeSpan.FromSeconds(5);
        return step * Math.Ceiling(Math.Round(time * Margin / step, 6));
    }

    private static TimeSpan Times(TimeSpan time, double factor) =>
        TimeSpan.FromMilliseconds(Math.Round(time.TotalMilliseconds * factor));
}
