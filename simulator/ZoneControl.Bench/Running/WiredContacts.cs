using System.Numerics;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using LogicContact = ZoneControl.Logic.Contact;

namespace ZoneControl.Bench.Running;

/// <summary>
/// Rules judge contacts as the controller publishes them, so a controller that does not listen, dreams up end switches,
/// hangs or restarts at will could keep them all. The bench knows the wires: a contact that has stood for its debounce is
/// published so two scans later at the latest and not before, none is published as what its wire does not say at that scan,
/// and a power-up comes only with the supply.
/// </summary>
/// <remarks>
/// It speaks only of a breach, the first. What a wire did between two samples is not seen; there is one at every scan.
/// </remarks>
internal sealed class WiredContacts
{
    private readonly ControllerSettings _house;
    private readonly Func<int, string> _nameOf;
    private readonly HashSet<long> _suppliedMs;
    private readonly Contact[] _contacts;
    private bool _debounced;
    private (long Ms, string Why)? _first;

    private WiredContacts(ControllerSettings house, Script script, Func<int, string> nameOf)
    {
        _house = house;
        _nameOf = nameOf;
        int period = house.ScanPeriodMs;
        _suppliedMs =
        [
            .. script.Events.Where(e => e.Action is PowerChange { On: true }).Select(e => (e.AtMs + period - 1) / period * period),
        ];
        _contacts =
        [
            new("thermostat", true, house.DrivenZones, house.CallDebounceMs, sample => sample.RawCalls, frame => frame.Calls),
            new("end switch", true, house.SwitchedZones, house.SwitchDebounceMs, sample => sample.RawSwitches, frame => frame.EndSwitches),
            new("sensed valve", true, house.GatedZones, house.SwitchDebounceMs, sample => sample.RawSenses, frame => frame.Senses),
            .. Enumerable.Range(0, LogicContact.Count).Select(place => Single(house, place)),
        ];
    }

    /// <summary>A verdict that is not met where the controller published what the wires did not say; else none.</summary>
    public static IEnumerable<ExpectationVerdict> Owes(
        ControllerSettings house, Script script, Trace trace, Func<int, string> nameOf, bool debounced)
    {
        // Debounce counts by the controller's clock: where that is tampered with, the wires cannot tell what to expect when.
        if (script.Events.Any(e => e.Action is ClockJump or ClockStop))
            yield break;
        var check = new WiredContacts(house, script, nameOf) { _debounced = debounced };
        check.Read(trace);
        if (check._first is { } first)
            yield return new ExpectationVerdict("contacts published as wired", 0, false, first.Ms, first.Why);
    }

    private static Contact Single(ControllerSettings house, int place) => new(
        $"{(1 << place == LogicContact.ServicePump ? "service pump" : ContactKind.Of(1 << place).Key)} contact",
        false,
        house.FittedContacts & (1 << place),
        house.ContactDebounceMs[place],
        sample => sample.RawContacts,
        frame => frame.Contacts);

    private void Read(Trace trace)
    {
        int next = 0;
        Frame? before = null;
        for (int i = 0; i < trace.Samples.Count && _first is null; i++)
        {
            PlantSample sample = trace.Samples[i];
            if (i + 1 < trace.Samples.Count && trace.Samples[i + 1].Ms == sample.Ms)
                continue; // the other side of a step; contacts are the same on both
            foreach (Contact contact in _contacts)
                JudgeWait(contact, sample.Ms);
            Frame? now = before;
            for (; next < trace.Frames.Count && trace.Frames[next].Ms <= sample.Ms; next++)
            {
                now = trace.Frames[next];
                JudgeFrame(before, now.Value, sample);
                before = now;
            }

            foreach (Contact contact in _contacts)
                contact.Compare(now, sample);
        }
    }

    private void JudgeFrame(Frame? before, in Frame now, PlantSample sample)
    {
        if (now.Unpowered || now.PowerUp)
        {
            if (now.PowerUp && before is { Unpowered: false } && !_suppliedMs.Contains(now.Ms))
                Tell(now.Ms, "the controller restarted though its supply was there");
            foreach (Contact contact in _contacts)
                contact.Forget();
            return;
        }

        if (before is not { } last || last.Unpowered)
            return;
        foreach (Contact contact in _contacts)
        {
            int changed = contact.Accepted(now) ^ contact.Accepted(last);
            int untrue = changed & (contact.Accepted(now) ^ contact.Raw(sample)) & contact.Mask;
            if (untrue != 0)
                Tell(now.Ms, $"{Name(contact, untrue)}: a change was published that its wire does not show");
            int tooSoon = _debounced ? contact.StoodLess(changed & contact.Mask & ~untrue, now.Ms) : 0;
            if (tooSoon != 0)
                Tell(now.Ms, $"{Name(contact, tooSoon)}: a change was published before its wire had shown it for its debounce");
        }
    }

    private void JudgeWait(Contact contact, long ms)
    {
        int limitMs = contact.DebounceMs + (2 * _house.ScanPeriodMs);
        for (int bit = 0; bit < ControllerSettings.MostZones; bit++)
        {
            if (contact.SinceMs[bit] is { } since && ms - since > limitMs)
                Tell(since + limitMs, $"{Name(contact, 1 << bit)}: published otherwise than its wire has shown for its debounce and two scans");
        }
    }

    private string Name(Contact contact, int bits) =>
        contact.OfZones ? $"{contact.What} of {_nameOf(BitOperations.TrailingZeroCount(bits))}" : contact.What;

    private void Tell(long ms, string why)
    {
        if (_first is not { } known || ms < known.Ms)
            _first = (ms, why);
    }

    /// <summary>One kind of contact, and since when each differs from what is published.</summary>
    private sealed record Contact(
        string What, bool OfZones, int Mask, int DebounceMs, Func<PlantSample, int> Raw, Func<Frame, int> Accepted)
    {
        public long?[] SinceMs { get; } = new long?[ControllerSettings.MostZones];

        public void Forget() => Array.Clear(SinceMs);

        /// <summary>Those of the contacts that have differed from what was published for less than their debounce.</summary>
        public int StoodLess(int bits, long nowMs)
        {
            int less = 0;
            for (int bit = 0; bit < SinceMs.Length; bit++)
            {
                if ((bits & (1 << bit)) != 0 && nowMs - (SinceMs[bit] ?? nowMs) < DebounceMs)
                    less |= 1 << bit;
            }

            return less;
        }

        public void Compare(Frame? shown, PlantSample sample)
        {
            int wrong = shown is { Unpowered: false } frame ? (Raw(sample) ^ Accepted(frame)) & Mask : 0;
            for (int bit = 0; bit < SinceMs.Length; bit++)
                SinceMs[bit] = (wrong & (1 << bit)) == 0 ? null : SinceMs[bit] ?? sample.Ms;
        }
    }
}
