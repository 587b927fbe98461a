using System.Numerics;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using LogicContact = ZoneControl.Logic.Contact;

namespace ZoneControl.Bench.Running;

/// <summary>Contacts before debounce: a bit a zone, and bits of <see cref="LogicContact"/>, 1 for asserted.</summary>
internal readonly record struct WireMasks(int Calls, int EndSwitches, int Senses, int Contacts)
{
    /// <summary>Every contact there could be.</summary>
    public static WireMasks All { get; } = new(-1, -1, -1, -1);
}

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
    /// <summary>What is judged, in words.</summary>
    public const string Sentence = "contacts published as wired";

    private readonly ControllerSettings _house;
    private readonly Func<int, string> _nameOf;
    private readonly Func<long, bool> _suppliedAt;
    private readonly Contact[] _contacts;
    private bool _debounced;
    private (long Ms, string Why)? _first;
    private Frame? _before;

    /// <summary>Has seen nothing yet.</summary>
    /// <param name="house">The house's settings.</param>
    /// <param name="nameOf">A zone's name by its number.</param>
    /// <param name="suppliedAt">Whether supply may have come back at a moment, ms, that no frame without supply came before.</param>
    public WiredContacts(ControllerSettings house, Func<int, string> nameOf, Func<long, bool> suppliedAt)
    {
        _house = house;
        _nameOf = nameOf;
        _suppliedAt = suppliedAt;
        _contacts =
        [
            new("thermostat", true, house.DrivenZones, house.CallDebounceMs, wires => wires.Calls, frame => frame.Calls),
            new("end switch", true, house.SwitchedZones, house.SwitchDebounceMs, wires => wires.EndSwitches, frame => frame.EndSwitches),
            new("sensed valve", true, house.GatedZones, house.SwitchDebounceMs, wires => wires.Senses, frame => frame.Senses),
            .. Enumerable.Range(0, LogicContact.Count).Select(place => Single(house, place)),
        ];
    }

    /// <summary>The first breach: when, ms, and what was seen; null while there is none.</summary>
    public (long Ms, string Why)? First => _first;

    /// <summary>Contacts that are looked at; others may say what they want. All of them until told otherwise.</summary>
    public WireMasks Looked { get; set; } = WireMasks.All;

    /// <summary>A verdict that is not met where the controller published what the wires did not say; else none.</summary>
    public static IEnumerable<ExpectationVerdict> Owes(
        ControllerSettings house, Script script, Trace trace, Func<int, string> nameOf, bool debounced)
    {
        // Debounce counts by the controller's clock: where that is tampered with, the wires cannot tell what to expect when.
        if (script.Events.Any(e => e.Action is ClockJump or ClockStop))
            yield break;
        int period = house.ScanPeriodMs;
        HashSet<long> supplied =
        [
            .. script.Events.Where(e => e.Action is PowerChange { On: true }).Select(e => (e.AtMs + period - 1) / period * period),
        ];
        var check = new WiredContacts(house, nameOf, supplied.Contains) { _debounced = debounced };
        check.Read(trace);
        if (check._first is { } first)
            yield return new ExpectationVerdict(Sentence, 0, false, first.Ms, first.Why);
    }

    /// <summary>The wires at a moment, before what the controller shows at it.</summary>
    public void Begin(long ms)
    {
        foreach (Contact contact in _contacts)
            JudgeWait(contact, ms);
    }

    /// <summary>A frame that came at the moment of <see cref="Begin"/> or since the one before.</summary>
    public void Show(in Frame now, in WireMasks wires)
    {
        JudgeFrame(now, wires);
        _before = now;
    }

    /// <summary>The end of a moment: what the wires and the last frame shown say is compared.</summary>
    public void End(long ms, in WireMasks wires)
    {
        foreach (Contact contact in _contacts)
            contact.Compare(_before, ms, wires, Looked);
    }

    /// <summary>Forgets everything but a breach: what came in between is not known.</summary>
    public void Forget()
    {
        _before = null;
        foreach (Contact contact in _contacts)
            contact.Forget();
    }

    private static Contact Single(ControllerSettings house, int place) => new(
        $"{(1 << place == LogicContact.ServicePump ? "service pump" : ContactKind.Of(1 << place).Key)} contact",
        false,
        house.FittedContacts & (1 << place),
        house.ContactDebounceMs[place],
        wires => wires.Contacts,
        frame => frame.Contacts);

    private void Read(Trace trace)
    {
        int next = 0;
        for (int i = 0; i < trace.Samples.Count && _first is null; i++)
        {
            PlantSample sample = trace.Samples[i];
            if (i + 1 < trace.Samples.Count && trace.Samples[i + 1].Ms == sample.Ms)
                continue; // the other side of a step; contacts are the same on both
            var wires = new WireMasks(sample.RawCalls, sample.RawSwitches, sample.RawSenses, sample.RawContacts);
            Begin(sample.Ms);
            for (; next < trace.Frames.Count && trace.Frames[next].Ms <= sample.Ms; next++)
                Show(trace.Frames[next], wires);
            End(sample.Ms, wires);
        }

        Begin(trace.EndMs);
    }

    private void JudgeFrame(in Frame now, in WireMasks wires)
    {
        if (now.Unpowered || now.PowerUp)
        {
            if (now.PowerUp && _before is { Unpowered: false } && !_suppliedAt(now.Ms))
                Tell(now.Ms, "the controller restarted though its supply was there");
            foreach (Contact contact in _contacts)
                contact.Forget();
            return;
        }

        if (_before is not { } last || last.Unpowered)
            return;
        foreach (Contact contact in _contacts)
        {
            int changed = contact.Accepted(now) ^ contact.Accepted(last);
            int untrue = changed & (contact.Accepted(now) ^ contact.Raw(wires)) & contact.Mask & contact.Raw(Looked);
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
        string What, bool OfZones, int Mask, int DebounceMs, Func<WireMasks, int> Raw, Func<Frame, int> Accepted)
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

        public void Compare(Frame? shown, long ms, in WireMasks wires, in WireMasks looked)
        {
            int wrong = shown is { Unpowered: false } frame ? (Raw(wires) ^ Accepted(frame)) & Mask & Raw(looked) : 0;
            for (int bit = 0; bit < SinceMs.Length; bit++)
                SinceMs[bit] = (wrong & (1 << bit)) == 0 ? null : SinceMs[bit] ?? ms;
        }
    }
}
