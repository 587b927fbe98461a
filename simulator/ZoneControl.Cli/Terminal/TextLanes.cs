using ZoneControl.Web.View;

namespace ZoneControl.Cli.Terminal;

/// <summary>One lane of characters.</summary>
/// <param name="Label">Its name.</param>
/// <param name="Cells">One character for each stretch of time.</param>
public sealed record TextLane(string Label, string Cells);

/// <summary>
/// Timing lanes as characters that differ in shape, so that they read without colour. Each cell stands for an equal
/// stretch of time.
/// </summary>
/// <param name="lanes">What to draw.</param>
/// <param name="columns">Cells a lane, at least 10.</param>
public sealed class TextLanes(RunLanes lanes, int columns)
{
    /// <summary>Nothing.</summary>
    public const char Rest = '·';

    /// <summary>The thermostat calls and the valve is not energised.</summary>
    public const char Waiting = 'c';

    /// <summary>Energised, not proven yet.</summary>
    public const char Opening = '░';

    /// <summary>Proven open, with a call.</summary>
    public const char OpenCalled = '█';

    /// <summary>Proven open without a call of its own: companion or overrun.</summary>
    public const char OpenUncalled = '▒';

    /// <summary>Released, its stem still on the way.</summary>
    public const char Closing = '\\';

    /// <summary>Late, given up, or its end switch stuck; an alarm of the house.</summary>
    public const char Failed = 'x';

    /// <summary>On for the whole cell.</summary>
    public const char On = '█';

    /// <summary>On for a part of the cell.</summary>
    public const char PartlyOn = '▄';

    /// <summary>Pump on with less than its minimum flow, for any part of the cell.</summary>
    public const char Starved = '!';

    /// <summary>No supply.</summary>
    public const char Dark = ' ';

    private const int LooksInACell = 8;

    /// <summary>A zone's lane.</summary>
    public TextLane Zone(ZoneLane zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return new TextLane(zone.Zone.Name, Cells(i => ZoneCell(zone, i)));
    }

    /// <summary>The pump's lane.</summary>
    public TextLane Pump(string label) => new(label, Cells(i =>
        Share(lanes.Deadhead, i) > 0 ? Starved : OnOff(lanes.Pump, i)));

    /// <summary>The lane of heat demand.</summary>
    public TextLane Heat(string label) => new(label, Cells(i => OnOff(lanes.Heat, i)));

    /// <summary>The lane of a contact or an alarm of the house; an alarm shows wherever it touches a cell.</summary>
    public TextLane House(HouseLane lane)
    {
        ArgumentNullException.ThrowIfNull(lane);
        return new TextLane(lane.Name, Cells(i =>
            !lane.IsAlarm ? OnOff(lane.When, i) : Share(lane.When, i) > 0 ? Failed : Rest));
    }

    /// <summary>The lane of hold reasons: the letter of the one that fills most of the cell.</summary>
    public TextLane Holds(string label, IReadOnlyList<HoldView> holds) => new(label, Cells(i =>
    {
        HoldView? most = holds.Where(h => Share([h.When], i) > 0).MaxBy(h => Share([h.When], i));
        return most is null ? Rest : HoldSign.For(most.Reason).Letter;
    }));

    /// <summary>Two lines of a time axis: labels at round times and the marks under them.</summary>
    public (string Labels, string Marks) Axis(Clock clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        char[] labels = new string(' ', columns).ToCharArray();
        char[] marks = new string('─', columns).ToCharArray();
        int free = 0;
        int longest = Math.Max(clock.Minutes(0).Length, clock.Minutes(lanes.EndMs).Length);
        foreach (long ms in TimeAxis.Ticks(lanes.EndMs, clock, Math.Max(1, columns / (longest + 3))))
        {
            int at = (int)(ms * columns / Math.Max(1, lanes.EndMs));
            string label = clock.Minutes(ms);
            if (at >= columns)
                continue;
            marks[at] = '┬';
            if (at < free || at + label.Length > columns)
                continue;
            label.CopyTo(0, labels, at, label.Length);
            free = at + label.Length + 1;
        }

        return (new string(labels), new string(marks));
    }

    private char ZoneCell(ZoneLane zone, int cell)
    {
        if (Share(zone.Late, cell) > 0 || Share(zone.Latched, cell) > 0 || Share(zone.Stuck, cell) > 0)
            return Failed;
        var seen = new Dictionary<char, int>();
        for (int look = 0; look < LooksInACell; look++)
        {
            char now = ZoneMoment(zone, Start(cell) + (Start(cell + 1) - Start(cell)) * (2 * look + 1) / (2 * LooksInACell));
            seen[now] = seen.GetValueOrDefault(now) + 1;
        }

        return seen.MaxBy(pair => pair.Value).Key;
    }

    private static char ZoneMoment(ZoneLane zone, long ms)
    {
        bool call = Holds(zone.Calls, ms);
        if (Holds(zone.Energised, ms))
            return !Holds(zone.Proven, ms) ? Opening : call ? OpenCalled : OpenUncalled;
        if (call)
            return Waiting;
        return Curve.At(zone.Travel, ms) > 0.01 ? Closing : Rest;
    }

    private char OnOff(IReadOnlyList<Stretch> on, int cell)
    {
        double share = Share(on, cell);
        return share >= 0.999 ? On : share > 0 ? PartlyOn : Rest;
    }

    private string Cells(Func<int, char> cell) => string.Create(columns, (this, cell), static (into, state) =>
    {
        for (int i = 0; i < into.Length; i++)
            into[i] = state.Item1.Share(state.Item1.Unpowered, i) > 0.5 ? Dark : state.cell(i);
    });

    private IReadOnlyList<Stretch> Unpowered => lanes.Unpowered;

    private double Share(IReadOnlyList<Stretch> stretches, int cell)
    {
        long from = Start(cell);
        long to = Start(cell + 1);
        long covered = 0;
        foreach (Stretch s in stretches)
            covered += Math.Max(0, Math.Min(to, s.ToMs) - Math.Max(from, s.FromMs));
        return to > from ? (double)covered / (to - from) : 0;
    }

    private long Start(int cell) => lanes.EndMs * cell / columns;

    private static bool Holds(IReadOnlyList<Stretch> stretches, long ms) => stretches.Any(s => s.Holds(ms));
}
