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

    private const string EndSwitch = "end switch";

    private const string OpeningTime = "opening time";

    private static readonly TimeSpan _tolerance = TimeSpan.FromSeconds(ToleranceS);

    private static readonly string _fine =
        $"up to {ToleranceS:0} s over is fine, a watch tells no finer; none over the time from which it counts as open";

    /// <summary>Every time of a zone that was measured.</summary>
    public static IEnumerable<Finding> Of(HouseZone zone, ZoneRecord measured)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(measured);
        TimeSpan? watched = Time(measured.OpenedS);
        TimeSpan? made = zone.Actuator.HasSwitch ? Time(measured.SwitchMadeS) : null;
        if (made is { } at)
            yield return Switch(zone, at, watched);
        if (watched is { } opened)
            yield return Opened(zone, opened, made);
        if (measured.ClosedS is { } closed)
            yield return Closed(zone, TimeSpan.FromSeconds(closed));
    }

    /// <summary>A zone's time by its end switch or by a watch; the other of the two is what it is held against as well.</summary>
    public static Finding Opening(HouseZone zone, ZoneRecord measured, bool bySwitch)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(measured);
        return Of(zone, measured).First(finding => finding.Topic == (bySwitch ? EndSwitch : OpeningTime));
    }

    /// <summary>Whether a time by the end switch or by a watch can be, so that something may be reckoned from it.</summary>
    public static bool Counts(HouseActuator actuator, ZoneRecord measured, bool bySwitch)
    {
        ArgumentNullException.ThrowIfNull(measured);
        TimeSpan? watched = Time(measured.OpenedS);
        return bySwitch
            ? Time(measured.SwitchMadeS) is { } made && SwitchTiming.Impossible(actuator, made, watched) is null
            : watched is { } opened && !SwitchTiming.OpensTooSoon(actuator, opened);
    }

    /// <summary>
    /// When the valve is fully open: by a watch, or reckoned from the travel at which its end switch makes. Null when nothing
    /// tells it, or only a time that cannot be.
    /// </summary>
    public static TimeSpan? FullyOpen(HouseActuator actuator, ZoneRecord measured)
    {
        ArgumentNullException.ThrowIfNull(actuator);
        ArgumentNullException.ThrowIfNull(measured);
        if (Time(measured.OpenedS) is { } opened)
            return SwitchTiming.OpensTooSoon(actuator, opened) ? null : opened;
        return Time(measured.SwitchMadeS) is { } made && actuator.HasSwitch && made >= actuator.DeadTime.Value
            ? FromSwitch(actuator, made)
            : null;
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

    private static Finding Switch(HouseZone zone, TimeSpan made, TimeSpan? watched)
    {
        string said = $"{zone.Label}: its end switch said open after {Words(made)}";
        if (SwitchTiming.Impossible(zone.Actuator, made, watched) is { } why)
        {
            string early = made < zone.Actuator.DeadTime.Value && made >= zone.SwitchMinTime.Value
                ? $". The switch is believed from {Words(zone.SwitchMinTime.Value)} on: the pump may start against a shut valve"
                : "";
            return InSeconds(new Finding(EndSwitch, FindingKind.Fault, $"{said}, {why}{early}", SwitchTiming.Basis, SwitchTiming.Look(zone)), made);
        }

        // What a watch saw is not reckoned anew from the switch.
        TimeSpan full = watched ?? FromSwitch(zone.Actuator, made);
        (FindingKind kind, string change) = made switch
        {
            _ when made < zone.SwitchMinTime.Value => (FindingKind.Fault,
                "it would never be believed: look at the switch and its wires first; only if they are sound, make switch_min_time "
                    + $"{Words(made)}, and never less than the dead time of {Words(zone.Actuator.DeadTime.Value)}"),
            _ when made > zone.SwitchLimit.Value => (FindingKind.Fault,
                "it would always be late: renew the actuator, or give it a longer opening_time"),
            _ when watched is not null => (FindingKind.Fine, ""),
            _ when SwitchTiming.IsEarly(zone.Actuator, made) => (FindingKind.Advice,
                "time the stem with a watch once: a quick valve is fine, a switch that says open too soon is not"),
            _ => Slow(zone, full),
        };
        // A switch that is not believed says nothing of the stroke either.
        string reckoned = made < zone.SwitchMinTime.Value || watched is not null ? ""
            : $", so fully open after about {Words(full)}; the house file says {Words(zone.Actuator.OpeningTime)} at worst";
        return InSeconds(
            new Finding(EndSwitch, kind,
                $"{said}{reckoned}. The switch is believed from {Words(zone.SwitchMinTime.Value)} on, late after {Words(zone.SwitchLimit.Value)}"
                    + (watched is null ? Hazard(zone, full) : ""),
                _fine, change),
            made);
    }

    private static Finding Opened(HouseZone zone, TimeSpan opened, TimeSpan? made)
    {
        string said = $"{zone.Label}: fully open after {Words(opened)}";
        if (SwitchTiming.OpensTooSoon(zone.Actuator, opened))
        {
            return InSeconds(
                new Finding(OpeningTime, FindingKind.Fault,
                    $"{said} by the watch, and the house file says that the stem stands still for {Words(zone.Actuator.DeadTime.Value)} at first "
                        + "(dead_time): the two contradict each other, and the time is not reckoned on",
                    SwitchTiming.Basis, "measure again, from cold; if the valve is as quick as that, mend dead_time and opening_time in the house file"),
                opened);
        }

        (FindingKind kind, string change) = Slow(zone, opened);
        string counts = !zone.Actuator.HasSwitch ? "By time alone it counts as open after "
            : made is { } at && SwitchTiming.Impossible(zone.Actuator, at, opened) is null && at >= zone.SwitchMinTime.Value
                ? $"It counts as open when its end switch says so, here after {Words(at)}; by time alone after "
                : "It counts as open when its end switch says so; by time alone after ";
        return InSeconds(
            new Finding(OpeningTime, kind,
                $"{said}; the house file says {Words(zone.Actuator.OpeningTime)} at worst. {counts}{Words(zone.ProofTime.Value)}{Hazard(zone, opened)}",
                _fine, change),
            opened);
    }

    private static Finding InSeconds(Finding finding, TimeSpan time) => finding with { Value = time.TotalSeconds, Unit = "s" };

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

    private static string Hazard(HouseZone zone, TimeSpan full) => full > zone.ProofTime.Value
        ? $". {(zone.Actuator.HasSwitch ? "Were its switch not believed, the" : "The")} pump may start up to {Words(full - zone.ProofTime.Value)} "
            + "too early, against a valve that is not open yet"
        : "";

    private static TimeSpan? Time(double? seconds) => seconds is { } s ? TimeSpan.FromSeconds(s) : null;

    internal static string Words(TimeSpan time) => Durations.InWords(TimeSpan.FromSeconds(Math.Round(time.TotalSeconds)));
}
