using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Seasons;

/// <summary>
/// Holds a measured time against the house file. Commissioning, records by hand, the history and checks all ask here, so that
/// none of them calls good what another calls a fault.
/// </summary>
public static class TimeJudge
{
    /// <summary>A watch and a scan tell no finer, s: what is over a time of the house file by no more than this is not over it.</summary>
    public const double ToleranceS = 3;

    private static readonly TimeSpan _tolerance = TimeSpan.FromSeconds(ToleranceS);

    private static readonly string _fine =
        $"up to {ToleranceS:0} s over is fine, a watch tells no finer; none over the time from which it counts as open";

    /// <summary>Every time of a zone that was measured.</summary>
    public static IEnumerable<Finding> Of(HouseZone zone, ZoneRecord measured)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(measured);
        if (measured.SwitchMadeS is { } made && zone.Actuator.HasSwitch)
            yield return Switch(zone, TimeSpan.FromSeconds(made));
        if (measured.OpenedS is { } opened)
            yield return Opened(zone, TimeSpan.FromSeconds(opened));
        if (measured.ClosedS is { } closed)
            yield return Closed(zone, TimeSpan.FromSeconds(closed));
    }

    /// <summary>A time by the end switch or by a watch.</summary>
    public static Finding Opening(HouseZone zone, double seconds, bool bySwitch) => bySwitch
        ? Switch(zone, TimeSpan.FromSeconds(seconds))
        : Opened(zone, TimeSpan.FromSeconds(seconds));

    /// <summary>
    /// When the valve is fully open: by a watch, or reckoned from the travel at which its end switch makes. Null when nothing
    /// tells it.
    /// </summary>
    public static TimeSpan? FullyOpen(HouseActuator actuator, ZoneRecord measured)
    {
        ArgumentNullException.ThrowIfNull(actuator);
        ArgumentNullException.ThrowIfNull(measured);
        if (measured.OpenedS is { } opened)
            return TimeSpan.FromSeconds(opened);
        return measured.SwitchMadeS is { } made && actuator.HasSwitch ? FromSwitch(actuator, TimeSpan.FromSeconds(made)) : null;
    }

    /// <summary>Fully open, reckoned from the moment at which the end switch made.</summary>
    public static TimeSpan FromSwitch(HouseActuator actuator, TimeSpan made)
    {
        ArgumentNullException.ThrowIfNull(actuator);
        TimeSpan dead = actuator.DeadTime.Value < made ? actuator.DeadTime.Value : made;
        return dead + ((made - dead) / (actuator.SwitchAt?.Value ?? 1));
    }

    /// <summary>Whether a time is within another, as far as can be told.</summary>
    public static bool Within(TimeSpan measured, TimeSpan allowed) => measured <= allowed + _tolerance;

    private static Finding Switch(HouseZone zone, TimeSpan made)
    {
        TimeSpan full = FromSwitch(zone.Actuator, made);
        (FindingKind kind, string change) = made switch
        {
            _ when made < zone.SwitchMinTime.Value => (FindingKind.Fault,
                $"it would never be believed: make switch_min_time less than {Words(made)}, or look why it says open so soon"),
            _ when made > zone.SwitchLimit.Value => (FindingKind.Fault,
                "it would always be late: renew the actuator, or give it a longer opening_time"),
            _ => Slow(zone, full),
        };
        // A switch that is not believed says nothing of the stroke either.
        string reckoned = made < zone.SwitchMinTime.Value ? ""
            : $", so fully open after about {Words(full)}; the house file says {Words(zone.Actuator.OpeningTime)} at worst";
        return new Finding("end switch", kind,
            $"{zone.Label}: its end switch said open after {Words(made)}{reckoned}. The switch is believed from "
                + $"{Words(zone.SwitchMinTime.Value)} on, late after {Words(zone.SwitchLimit.Value)}"
                + Hazard(zone, full, "Were its switch not believed, the"),
            _fine, change)
        {
            Value = made.TotalSeconds,
            Unit = "s",
        };
    }

    private static Finding Opened(HouseZone zone, TimeSpan opened)
    {
        (FindingKind kind, string change) = Slow(zone, opened);
        return new Finding("opening time", kind,
            $"{zone.Label}: fully open after {Words(opened)}; the house file says {Words(zone.Actuator.OpeningTime)} at worst. "
                + "By time alone it counts as open after "
                + Words(zone.ProofTime.Value) + Hazard(zone, opened, "The"),
            _fine, change)
        {
            Value = opened.TotalSeconds,
            Unit = "s",
        };
    }

    private static Finding Closed(HouseZone zone, TimeSpan closed)
    {
        bool slow = !Within(closed, zone.ClosingTime.Value);
        return new Finding("closing time", slow ? FindingKind.Advice : FindingKind.Fine,
            $"{zone.Label}: shut after {Words(closed)}; it counts as shut after {Words(zone.ClosingTime.Value)}",
            $"up to {ToleranceS:0} s over is fine, a watch tells no finer",
            slow ? $"renew the actuator, or give {zone.Actuator.Name} closing_time = \"{Words(closed)}\"" : "")
        {
            Value = closed.TotalSeconds,
            Unit = "s",
        };
    }

    private static (FindingKind Kind, string Change) Slow(HouseZone zone, TimeSpan full) => full switch
    {
        _ when full > zone.ProofTime.Value => (FindingKind.Fault,
            "renew the actuator, or give it the longer opening_time in the house file; until then do not leave the pump to this zone"),
        _ when !Within(full, zone.Actuator.OpeningTime) => (FindingKind.Advice,
            "renew the actuator, or give it the longer opening_time in the house file"),
        _ => (FindingKind.Fine, ""),
    };

    private static string Hazard(HouseZone zone, TimeSpan full, string when) => full > zone.ProofTime.Value
        ? $". {when} pump may start up to {Words(full - zone.ProofTime.Value)} too early, against a valve that is not open yet"
        : "";

    private static string Words(TimeSpan time) => Durations.InWords(TimeSpan.FromSeconds(Math.Round(time.TotalSeconds)));
}
