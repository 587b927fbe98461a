using System.Runtime.CompilerServices;

namespace ZoneControl.Bench.Rules;

/// <summary>
/// Judges one rule from frames and settings. What it remembers is ints, masks and capped ages, named in <see cref="Walk"/>;
/// what it finds goes to <see cref="IFindings"/> and is no part of its state.
/// </summary>
/// <remarks>
/// A frame that shows the same as the one before is time passing, nothing else: so splitting a frame changes no verdict.
/// Bounds count from scan to scan. "Within two scans" leaves a controller one scan to see and one to act.
/// </remarks>
internal abstract class RuleMonitor(string rule, Evidence seen, IFindings findings)
{
    /// <summary>The rule's identity.</summary>
    public string Rule => rule;

    protected Evidence Seen => seen;

    protected Words Words => seen.Words;

    /// <summary>Two scan periods, ms.</summary>
    protected int TwoScansMs => 2 * seen.House.ScanPeriodMs;

    /// <summary>Power is lost or comes back: every obligation ends. The evidence is still that of before.</summary>
    public abstract void End();

    /// <summary>
    /// TIME-FAULT in the scan that is about to be judged: no time that passed before it counts. What a monitor remembers of
    /// latches stays.
    /// </summary>
    public virtual void ForgetTimes() => End();

    /// <summary>A scan showed something new.</summary>
    public abstract void OnFrame();

    /// <summary>The evidence changed by time alone. Nothing is broken yet: a frame at this very moment may answer it.</summary>
    public virtual void OnTime()
    {
    }

    /// <summary>Time passes, and nothing in the evidence changes meanwhile.</summary>
    public virtual void Pass(int ms)
    {
    }

    /// <summary>Names everything that the monitor remembers.</summary>
    public abstract void Walk(StateWalk walk);

    protected void Occasion() => findings.Occasion(rule);

    protected void Broken(string why) => findings.Broken(rule, seen.NowMs, why);

    /// <summary>Lets time pass over duties of zones, each of which has <paramref name="limitMs"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected void PassZones(ZoneDuties duties, int ms, int limitMs, Func<int, string> why)
    {
        for (int zone = 0; zone < duties.Count; zone++)
        {
            int at = duties.Pass(zone, ms, limitMs);
            if (at >= 0)
                findings.Broken(rule, seen.NowMs + at, why(zone));
        }
    }

    /// <summary>Reports a duty that ran out while time passed; nothing for a negative moment.</summary>
    /// <remarks>Inlined, so that the words cost nothing where they are not needed: a search asks a million times a second.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    protected void BrokenIn(int ms, Func<string> why)
    {
        if (ms >= 0)
            findings.Broken(rule, seen.NowMs + ms, why());
    }
}
