using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>Times that no sound valve and end switch can have. Nothing is reckoned from them.</summary>
internal static class SwitchTiming
{
    /// <summary>A switch this share of the opening time away from where its travel puts it is not set right (common practice).</summary>
    private const double FarShare = 0.25;

    /// <summary>What these judgements rest on.</summary>
    public static string Basis { get; } =
        $"a stem stands still for its dead time and then moves evenly; a switch is far off by {FarShare * 100:0} % of the opening time or more "
        + "(common practice)";

    /// <summary>A valve that was open before its stem can have begun to move.</summary>
    public static bool OpensTooSoon(HouseActuator actuator, TimeSpan opened) => !TimeJudge.Within(actuator.DeadTime.Value, opened);

    /// <summary>Why a switch cannot have made then; null when it can.</summary>
    /// <param name="actuator">Its actuator.</param>
    /// <param name="made">When it made.</param>
    /// <param name="watched">When a watch saw the valve fully open; null without one.</param>
    public static string? Impossible(HouseActuator actuator, TimeSpan made, TimeSpan? watched)
    {
        TimeSpan dead = actuator.DeadTime.Value;
        if (made < dead)
            return $"before its stem can have begun to move (dead_time is {TimeJudge.Words(dead)})";
        if (watched is not { } opened || OpensTooSoon(actuator, opened))
            return null;
        string seen = $"and the watch saw the valve fully open after {TimeJudge.Words(opened)}";
        if (!TimeJudge.Within(made, opened))
            return $"{seen}: a switch makes before the end of the stroke, so the two contradict each other";
        TimeSpan expected = Expected(actuator, opened);
        return TimeJudge.Within((made - expected).Duration(), actuator.OpeningTime * FarShare)
            ? null
            : $"{seen}: at {actuator.SwitchAt!.Value * 100:0} % of the travel (switch_at) it would be {TimeJudge.Words(expected)}";
    }

    /// <summary>Sooner than can be told from a quick valve, where no watch was used.</summary>
    public static bool IsEarly(HouseActuator actuator, TimeSpan made) =>
        !TimeJudge.Within(Expected(actuator, actuator.OpeningTime) - made, actuator.OpeningTime * FarShare);

    /// <summary>What to do about a switch that cannot be right.</summary>
    public static string Look(HouseZone zone) =>
        "look at the switch and its wires first (a short, a switch that is bent or set wrong), and measure again; until it is right, its zone "
        + $"must not be trusted to start the pump. Do not make switch_min_time less than the dead time of {TimeJudge.Words(zone.Actuator.DeadTime.Value)}";

    private static TimeSpan Expected(HouseActuator actuator, TimeSpan opened)
    {
        TimeSpan dead = actuator.DeadTime.Value < opened ? actuator.DeadTime.Value : opened;
        return dead + ((opened - dead) * (actuator.SwitchAt?.Value ?? 1));
    }
}
