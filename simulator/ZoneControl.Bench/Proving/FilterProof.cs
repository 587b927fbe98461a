using System.IO.Hashing;
using System.Runtime.InteropServices;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>
/// The debounce filter by itself: under every sequence of a contact's states, a change is accepted in the very scan in which
/// it has stood for its debounce since a scan first saw it, and at no other. So what the filter lets through is among what a
/// contact that may change in any scan does, and the search over the core need not count debounce.
/// </summary>
internal static class FilterProof
{
    private const int LongestScans = 4;

    /// <summary>Tries every debounce from none to a few scans; the filter only counts and compares.</summary>
    public static FrontEnd Run(Func<ControllerSettings, IProvable> build)
    {
        long states = 0;
        string? fault = null;
        for (int scans = 0; scans <= LongestScans && fault is null; scans++)
            fault = Try(build(House(scans)), scans, ref states);
        return new FrontEnd("debounce filter", states, fault);
    }

    private static ControllerSettings House(int debounceScans) => new()
    {
        ZoneCount = 1,
        ScanPeriodMs = Scaling.ScanMs,
        Capacity = [1],
        MinimumOpen = 1,
        OpeningMs = [Scaling.ScanMs],
        ClosingMs = [Scaling.ScanMs],
        SwitchMinMs = [0],
        SwitchLimitMs = [Scaling.ScanMs],
        HoldDeciVa = [0],
        InrushDeciVa = [0],
        InrushMs = [0],
        CompanionOrder = [0],
        HeatLeadMs = Scaling.ScanMs,
        PumpOverrunMs = Scaling.ScanMs,
        PumpRundownMs = Scaling.ScanMs,
        CallDebounceMs = debounceScans * Scaling.ScanMs,
        FittedContacts = 0,
    };

    private static string? Try(IProvable subject, int debounceScans, ref long states)
    {
        const long NowMs = 1_000_000_000;
        var inputs = new InputImage();
        var outputs = new OutputImage();
        var seen = new HashSet<UInt128>();
        var waiting = new Queue<(int[] State, Reference Filter)>();
        foreach (bool asks in (bool[])[false, true])
        {
            subject.PowerUp();
            inputs.Calls = asks ? 1 : 0;
            subject.Scan(NowMs, inputs, outputs);
            Keep(subject, new Reference(false, asks, 0), seen, waiting);
        }

        while (waiting.TryDequeue(out var from))
        {
            foreach (bool asks in (bool[])[false, true])
            {
                subject.Load(from.State, NowMs);
                inputs.Calls = asks ? 1 : 0;
                subject.Scan(NowMs + Scaling.ScanMs, inputs, outputs);
                Reference filter = from.Filter.Next(asks, debounceScans);
                if ((outputs.AcceptedCalls != 0) != filter.Accepted)
                {
                    return $"debounce filter: a contact with {debounceScans} scans of debounce that has stood for {filter.Stood} "
                        + $"is {(filter.Accepted ? "not " : "")}accepted";
                }

                Keep(subject, filter, seen, waiting);
            }
        }

        states += seen.Count;
        return null;
    }

    private static void Keep(IProvable subject, Reference filter, HashSet<UInt128> seen, Queue<(int[] State, Reference Filter)> waiting)
    {
        int[] state = new int[subject.StateLength + 3];
        subject.Save(state);
        (state[^3], state[^2], state[^1]) = (filter.Accepted ? 1 : 0, filter.Raw ? 1 : 0, filter.Stood);
        if (seen.Add(XxHash128.HashToUInt128(MemoryMarshal.AsBytes<int>(state))))
            waiting.Enqueue((state, filter));
    }

    /// <summary>What debounce is: how many scans the contact has stood otherwise than accepted, since one first saw it so.</summary>
    private readonly record struct Reference(bool Accepted, bool Raw, int Stood)
    {
        public Reference Next(bool raw, int debounceScans)
        {
            if (raw == Accepted)
                return new Reference(Accepted, raw, 0);
            int stood = raw == Raw ? Stood + 1 : 0;
            return stood >= debounceScans ? new Reference(raw, raw, 0) : new Reference(Accepted, raw, stood);
        }
    }
}
