using System.Numerics;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>
/// Judges a capture moment by moment: rules, contacts against their wires, and an estimate of what the water does. What is
/// kept does not grow with the capture. Times are ms from the capture's first moment.
/// </summary>
internal sealed class CaptureJudge : IMoments
{
    private const int MostGaps = 20;

    private readonly ControllerSettings _settings;
    private readonly ChannelState _state;
    private readonly ChannelNames _names;
    private readonly RuleNeeds _needs;
    private readonly Tally _tally = new();
    private readonly RunningJudge _judge;
    private readonly WiredContacts _wires;
    private readonly EstimatedPlant _plant;
    private readonly CapturePicture _picture = new();
    private readonly List<CaptureGap> _gaps = [];
    private readonly HashSet<string> _unjudgeable = [];
    private readonly Action<long> _sampleBetween;
    private WireMasks _lastWires;
    private long? _firstMs;
    private Frame _shown;
    private bool _judging;
    private bool _settled;
    private long _settlesMs;
    private bool _clockMoved;
    private int _turn;
    private long? _gapMs;
    private string _gapWhy = "";
    private int _gapCount;
    private bool _wiresKnown;

    public CaptureJudge(House house, ChannelMap map, ChannelState state)
    {
        _state = state;
        _settings = house.ToSettings();
        _names = new ChannelNames(house);
        _needs = new RuleNeeds(_settings);
        string NameOf(int zone) => house.Zones[zone].Label;
        _judge = new RunningJudge(_settings, NameOf, new Sieve(this));
        _wires = new WiredContacts(_settings, NameOf, _ => true);
        _plant = new EstimatedPlant(house, map.Conditions);
        _sampleBetween = SampleBetween;
    }

    /// <summary>The capture's own time of its first moment, ms.</summary>
    public long BeganMs => _firstMs ?? 0;

    /// <summary>Whether what came before the first frame is known, because it is a power-up.</summary>
    public bool BeginsWithPowerUp { get; private set; }

    /// <summary>What the zones' proven capacity is by the monitors' own reckoning; for pictures.</summary>
    private bool ProofIsCaptured => _state.Captured(ChannelKind.Proven) != 0;

    /// <summary>Which channels there are is known now.</summary>
    public void Begin()
    {
        foreach (Rule rule in RuleBook.Rules)
        {
            if (Missing(rule.Id).Count > 0)
                _unjudgeable.Add(rule.Id);
        }

        _wires.Looked = new WireMasks(
            _state.Captured(ChannelKind.Thermostat) & _state.Captured(ChannelKind.Call),
            _state.Captured(ChannelKind.EndSwitchWire) & _state.Captured(ChannelKind.EndSwitch),
            _state.Captured(ChannelKind.SenseWire) & _state.Captured(ChannelKind.Sense),
            _state.Captured(ChannelKind.ContactWire) & _state.Captured(ChannelKind.Contact));
        WireMasks looked = _wires.Looked;
        _wiresKnown = (looked.Calls & _settings.DrivenZones) != 0 || (looked.EndSwitches & _settings.SwitchedZones) != 0
            || (looked.Senses & _settings.GatedZones) != 0 || (looked.Contacts & _settings.FittedContacts) != 0;
    }

    /// <inheritdoc/>
    public void Moment(long ms)
    {
        _firstMs ??= ms;
        long now = ms - _firstMs.Value;
        if (_state.AnyUnknown)
        {
            BeginGap(now, $"{_names.NameOf(_state.FirstUnknown)} is not known");
            return;
        }

        Show(_state.ToFrame(now), null, ClockSign.Unknown);
    }

    /// <summary>A frame of which a log says how much time passed for the controller before it.</summary>
    /// <param name="frame">The frame, in the capture's own time.</param>
    /// <param name="passedMs">Time that passed, ms.</param>
    /// <param name="sign">What its time says of its clock.</param>
    public void Frame(in Frame frame, long passedMs, ClockSign sign)
    {
        _firstMs ??= frame.Ms;
        Show(frame with { Ms = frame.Ms - _firstMs.Value }, passedMs, sign);
    }

    /// <summary>From this moment of the capture's own time on nothing is known, until the next frame.</summary>
    public void Lose(long ms, string why) => BeginGap(Math.Max(0, ms - (_firstMs ?? ms)), why);

    /// <summary>The capture ends at this moment of its own time; everything found goes into the result.</summary>
    public AuditResult Finish(long ms, AuditResult soFar)
    {
        long end = Math.Max(0, ms - (_firstMs ?? ms));
        end = Math.Max(end, _judging ? Math.Max(_judge.NowMs, _shown.Ms) : 0);
        if (_gapMs is not null)
        {
            EndGap(end);
        }
        else if (_judging)
        {
            _judge.PassTo(end);
            _wires.Begin(end);
            PassPlant(end);
            SampleTwice(end);
        }

        Trace picture = _picture.Finish(end);
        return soFar with
        {
            BeganMs = BeganMs,
            EndMs = end,
            BeginsWithPowerUp = BeginsWithPowerUp,
            Gaps = _gaps,
            GapCount = _gapCount,
            Rules = [.. _tally.Verdicts().Select(Verdict)],
            Wires = WireVerdict(),
            Estimate = _plant.Totals,
            EstimateGaveUpMs = _plant.GaveUpMs,
            Picture = picture,
            Holds = HoldSpans.Of(picture),
        };
    }

    private void Show(in Frame frame, long? passedMs, ClockSign sign)
    {
        bool begins = !_judging || _gapMs is not null;
        bool changed = begins || frame with { Ms = 0 } != _shown with { Ms = 0 }
            || _state.Values(ChannelKind.Scan) != _turn;
        _turn = _state.Values(ChannelKind.Scan);
        if (_gapMs is not null)
            EndGap(frame.Ms);
        else
            PassPlant(frame.Ms);
        if (begins)
            BeginJudging(frame);
        else if (changed)
            Judge(frame, passedMs, sign);
        LookAtWires(frame, changed, begins);
        if (changed)
        {
            SampleTwice(frame.Ms, frame);
            _picture.Add(Pictured(frame));
        }

        _shown = frame;
        if (!_settled)
            Settle(frame);
    }

    private void BeginJudging(in Frame frame)
    {
        bool known = frame.PowerUp || frame.Unpowered;
        BeginsWithPowerUp |= known && !_judging && frame.Ms == 0;
        _judging = true;
        _wires.Forget();
        if (known)
            _judge.Take(frame);
        else
            _judge.Resume(frame);
        _settled = known;
        _settlesMs = frame.Ms + _needs.PastMs;
        _plant.Begin(frame.Ms, frame, !known);
    }

    private void Judge(in Frame frame, long? passedMs, ClockSign sign)
    {
        _clockMoved |= frame.ClockAheadMs != _shown.ClockAheadMs || sign != ClockSign.Unknown;
        if (passedMs is { } passed)
            _judge.Take(frame, passed, sign);
        else
            _judge.Take(frame);
    }

    private void LookAtWires(in Frame frame, bool changed, bool begins)
    {
        if (!_wiresKnown)
            return;
        WireMasks wires = _state.Wires;
        if (!begins)
            _wires.Begin(frame.Ms);
        if (changed)
            _wires.Show(frame, wires);
        _wires.End(frame.Ms, wires);
    }

    private void PassPlant(long ms) => _plant.PassTo(ms, _picture.HasRoom ? _sampleBetween : null);

    private void SampleBetween(long ms)
    {
        _picture.Add(_plant.Sample(ms, _lastWires));
        if (ProofIsCaptured || _gapMs is not null || !_judging)
            return;

        // Proof ripens between frames; the picture shows it all the same.
        _judge.PassTo(Math.Max(ms, _judge.NowMs));
        _picture.Add(Pictured(_shown with { Ms = ms }));
    }

    private Frame Pictured(in Frame frame) => ProofIsCaptured ? frame : frame with { ProvenValves = _judge.Proven };

    // The two sides of a step: what was, and what the outputs made of it.
    private void SampleTwice(long ms, Frame? drive = null)
    {
        if (_picture.HasRoom)
            _picture.Add(_plant.Sample(ms, _lastWires));
        if (drive is not { } frame)
            return;
        _plant.Drive(frame);
        _lastWires = _state.Wires;
        if (_picture.HasRoom)
            _picture.Add(_plant.Sample(ms, _state.Wires));
    }

    // What came before no longer matters: long enough ago, and nothing that may have begun before it is still asserted.
    private void Settle(in Frame frame)
    {
        const int Lasting = Contact.ServicePump | Contact.Priority | Contact.Freeze | Contact.Limit | Contact.Reset;
        bool quiet = (frame.Contacts & Lasting & _settings.FittedContacts) == 0 && frame.Hands == 0 && frame.Alarms == 0
            && (frame.LateValves | frame.LatchedValves | frame.EarlySwitches | frame.StuckSwitches) == 0;
        _settled = quiet && frame.Ms >= _settlesMs;
    }

    private void BeginGap(long ms, string why)
    {
        if (_gapMs is not null)
            return;
        if (_judging)
        {
            _judge.PassTo(Math.Max(ms, _judge.NowMs));
            PassPlant(ms);
            _plant.Pause();
        }

        _gapMs = ms;
        _gapWhy = why;
    }

    private void EndGap(long ms)
    {
        if (_gapMs is { } from && ms > from)
        {
            _gapCount++;
            if (_gaps.Count < MostGaps)
                _gaps.Add(new CaptureGap(from, ms, _gapWhy));
        }

        _gapMs = null;
    }

    private RuleVerdict Verdict(RuleVerdict seen)
    {
        string why = WhyNot(seen.Rule);
        if (why.Length > 0 && seen.Judgement != Judgement.Broken)
            return new RuleVerdict(seen.Rule, Judgement.NotJudged, 0, null, why);
        return seen;
    }

    private string WhyNot(string rule)
    {
        if (_unjudgeable.Contains(rule))
            return $"not captured: {string.Join(", ", Missing(rule))}";
        if (!_judging)
            return "no moment at which every captured channel is known";
        if (!_settled && RuleNeeds.WaitsForThePast(rule))
            return "the capture begins in the middle and is too short, or too busy, to know what came before";
        return "";
    }

    private List<string> Missing(string rule)
    {
        var missing = new List<string>();
        foreach ((ChannelKind kind, int mask) in _needs.Of(rule))
        {
            int lacking = mask & ~_state.Captured(kind);
            for (int rest = lacking; rest != 0; rest &= rest - 1)
            {
                string name = kind == ChannelKind.Hold ? "hold"
                    : _names.NameOf(new Channel(kind, BitOperations.TrailingZeroCount(rest)));
                if (!missing.Contains(name))
                    missing.Add(name);
            }
        }

        return missing;
    }

    private RuleVerdict WireVerdict()
    {
        RuleVerdict Say(Judgement judgement, long? ms, string why) => new(WiredContacts.Sentence, judgement, 0, ms, why);
        if (!_wiresKnown)
            return Say(Judgement.NotJudged, null, "not captured: contacts before debounce beside what was accepted of them");
        if (_clockMoved)
            return Say(Judgement.NotJudged, null, "the controller's clock moved, so debounce cannot be told from the capture's time");
        if (_wires.First is { } first)
            return Say(Judgement.Broken, first.Ms, first.Why);
        return _judging ? Say(Judgement.Kept, null, "") : Say(Judgement.NotJudged, null, "nothing was judged");
    }

    /// <summary>Lets through what may be judged.</summary>
    private sealed class Sieve(CaptureJudge judge) : IFindings
    {
        public void Occasion(string rule)
        {
            if (MayJudge(rule))
                judge._tally.Occasion(rule);
        }

        public void Broken(string rule, long ms, string why)
        {
            if (MayJudge(rule))
                judge._tally.Broken(rule, ms, why);
        }

        private bool MayJudge(string rule) =>
            !judge._unjudgeable.Contains(rule) && (judge._settled || !RuleNeeds.WaitsForThePast(rule));
    }
}
