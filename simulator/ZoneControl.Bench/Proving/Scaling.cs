using System.Reflection;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>
/// Small whole numbers, in scans, for a house's times. They keep the order of all times, which of them are equal and, as far
/// as the largest number allows, whether the sum of two is shorter than, equal to or longer than a third. ARGUMENT.md beside
/// this file says what that covers.
/// </summary>
public sealed class Scaling
{
    /// <summary>The shortest lawful scan period: one scan of scaled time, ms. Small, so that ages pack small.</summary>
    public const int ScanMs = 10;

    private Scaling(IReadOnlyList<ScaledTime> times, int sumsKept, IReadOnlyList<string> sumsLost, ControllerSettings settings)
    {
        Times = times;
        SumsKept = sumsKept;
        SumsLost = sumsLost;
        Settings = settings;
    }

    /// <summary>Each time of the house and what became of it.</summary>
    public IReadOnlyList<ScaledTime> Times { get; }

    /// <summary>How many comparisons of the sum of two times with a third come out as they do in the house.</summary>
    public int SumsKept { get; }

    /// <summary>Those that do not, in words, such as "overrun + rundown against valve opening (den)".</summary>
    public IReadOnlyList<string> SumsLost { get; }

    /// <summary>The house's settings with scaled times and without debounce.</summary>
    public ControllerSettings Settings { get; }

    /// <summary>Scales a house's times.</summary>
    /// <param name="house">Lawful settings.</param>
    /// <param name="mostScans">The largest number to be used if the order of times can be kept with it.</param>
    /// <param name="nameOf">A zone's name by its number.</param>
    /// <param name="filterScans">Debounce of every contact inside the search, scans; 0 for none.</param>
    public static Scaling Of(ControllerSettings house, int mostScans, Func<int, string> nameOf, int filterScans = 0)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(nameOf);
        ControllerSettings scaled = Copy(house);
        List<TimeSlot> slots = TimeSlot.Of(scaled, nameOf);
        long Scans(int ms) => (ms + (long)house.ScanPeriodMs - 1) / house.ScanPeriodMs;
        long[] scans = [.. slots.Select(slot => Scans(slot.Ms)).Append(1).Where(time => time > 0).Distinct().Order()];
        int Place(int ms) => Array.BinarySearch(scans, Scans(ms));
        int[] limits = [.. Switched(house).Select(zone => Place(house.SwitchLimitMs[zone]))];
        var solver = new OrderAndSums(scans, mostScans, limits);
        int[] ticks = solver.Solve();
        foreach (TimeSlot slot in slots)
            slot.Set(slot.Ms == 0 ? 0 : ticks[Place(slot.Ms)] * ScanMs);
        scaled.ScanPeriodMs = ScanMs;
        scaled.CallDebounceMs = scaled.SwitchDebounceMs = filterScans * ScanMs;
        Array.Fill(scaled.ContactDebounceMs, filterScans * ScanMs);
        scaled.StallLimitMs = ScanMs;
        scaled.StallScans = 2;
        scaled.ExerciseLimitMs = LongestExercise(scaled);
        Straighten(scaled, filterScans);
        DropUnused(scaled);
        ScaledTime[] times =
            [.. slots.Zip(TimeSlot.Of(scaled, nameOf), (real, small) => new ScaledTime(real.Name, real.Ms, small.Ms / ScanMs))];
        string Named(int place) => place == 0 ? "one scan" : slots.First(slot => slot.Ms > 0 && Place(slot.Ms) == place).Name;
        string[] lost = [.. solver.Lost.Select(sum => $"{Named(sum.A)} + {Named(sum.B)} against {Named(sum.C)}").Distinct()];
        return new Scaling(times, solver.Kept, lost, scaled);
    }

    /// <summary>A copy whose arrays are its own.</summary>
    public static ControllerSettings Copy(ControllerSettings settings)
    {
        var copy = new ControllerSettings();
        foreach (FieldInfo field in typeof(ControllerSettings).GetFields(BindingFlags.Instance | BindingFlags.Public))
        {
            object? value = field.GetValue(settings);
            field.SetValue(copy, value is int[] ints ? ints.Clone() : value);
        }

        return copy;
    }

    private static IEnumerable<int> Switched(ControllerSettings s) =>
        Enumerable.Range(0, s.ZoneCount).Where(zone => (s.SwitchedZones & (1 << zone)) != 0);

    /// <summary>What a house's file derives from its times: everything that may hold an exercise up, and its run.</summary>
    private static int LongestExercise(ControllerSettings s)
    {
        int slowest = 0;
        int stagger = 0;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int bit = 1 << zone;
            if ((s.GatedZones & bit) != 0)
                continue;
            slowest = Math.Max(slowest, (s.SwitchedZones & bit) != 0 ? s.SwitchLimitMs[zone] : s.OpeningMs[zone]);
            stagger += s.TransformerDeciVa == 0 ? 0 : s.InrushMs[zone];
        }

        return slowest + stagger + s.PumpStartDelayMs + s.PumpMinOffMs + s.PumpStartIntervalMs + s.ExerciseRunMs + s.ScanPeriodMs;
    }

    /// <summary>
    /// Times that decide nothing in this house are not counted, since that would only multiply states: those of contacts that
    /// are not fitted, and how long a valve without an end switch has been shut.
    /// </summary>
    private static void DropUnused(ControllerSettings s)
    {
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if ((s.SwitchedZones & (1 << zone)) == 0)
                s.ClosingMs[zone] = s.SwitchMinMs[zone] = ScanMs;
            if (s.TransformerDeciVa == 0)
                s.InrushMs[zone] = 0;
        }

        if (!s.Has(Contact.Flow))
            s.FlowProofMs = s.FlowLossMs = 0;
        if (!s.Has(Contact.Freeze))
            s.FreezeHeatMaxMs = 0;
        if (!s.Has(Contact.Priority))
            s.PriorityMaxMs = 0;
        if (!s.Has(Contact.ServicePump))
            s.ServiceLimitMs = ScanMs;
    }

    /// <summary>What is lawful for real times and may have been lost with small ones.</summary>
    private static void Straighten(ControllerSettings s, int filterScans)
    {
        foreach (int zone in Switched(s))
        {
            s.SwitchLimitMs[zone] = Math.Max(s.SwitchLimitMs[zone], s.OpeningMs[zone] + ((2 + filterScans) * ScanMs));
        }

        if (s.Has(Contact.Limit))
            s.PumpMinOffMs = Math.Max(s.PumpMinOffMs, (1 + filterScans) * ScanMs);
    }
}

/// <summary>A time of a house and what became of it.</summary>
/// <param name="Name">What it is: "pump overrun".</param>
/// <param name="Ms">What the house has, ms.</param>
/// <param name="Scans">What the search takes for it, scans.</param>
public sealed record ScaledTime(string Name, int Ms, int Scans);
