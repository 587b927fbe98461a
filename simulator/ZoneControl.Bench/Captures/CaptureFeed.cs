namespace ZoneControl.Bench.Captures;

/// <summary>Told of each moment of a capture at which anything changed, in order of time.</summary>
internal interface IMoments
{
    /// <summary>All changes of this moment have been made in the state.</summary>
    void Moment(long ms);
}

/// <summary>One signal of a capture joined to a channel.</summary>
/// <param name="Signal">Number of the signal, from 0.</param>
/// <param name="SignalBit">Bit of the signal, from 0 for the least.</param>
/// <param name="Channel">The channel.</param>
/// <param name="ActiveLow">A 0 means on.</param>
/// <param name="GlitchMs">Changes that last less than this, ms, are left out; 0 for none.</param>
internal sealed record Binding(int Signal, int SignalBit, Channel Channel, bool ActiveLow = false, int GlitchMs = 0);

/// <summary>
/// Takes changes of signals as a reader finds them, leaves out glitches, and puts what remains into the state, moment by
/// moment. A change that stands is dated when it came. Waiting changes are kept no longer than the longest glitch filter.
/// </summary>
internal sealed class CaptureFeed(IReadOnlyList<Binding> bindings, ChannelState state, IMoments moments)
{
    private const int Unseen = -2;

    private readonly int _windowMs = bindings.Count == 0 ? 0 : bindings.Max(binding => binding.GlitchMs);
    private readonly Queue<Change> _waiting = new();
    private readonly Change?[] _pending = new Change?[bindings.Count];
    private readonly long[] _last = [.. Enumerable.Repeat((long)Unseen, bindings.Count)];
    private long _stateMs;
    private bool _dirty;

    /// <summary>Changes of joined signals so far, glitches included.</summary>
    public long Edges { get; private set; }

    /// <summary>Glitches left out so far.</summary>
    public long Glitches { get; private set; }

    /// <summary>The moment reached, ms.</summary>
    public long NowMs { get; private set; }

    /// <summary>Whether there was any moment at all.</summary>
    public bool Begun { get; private set; }

    /// <summary>Moves on to a moment, ms, which is never before the last.</summary>
    public void At(long ms)
    {
        if (Begun && ms == NowMs)
            return;
        if (!Begun)
            _stateMs = ms;
        Begun = true;
        NowMs = ms;
        if (_windowMs > 0)
            Release(ms - _windowMs);
        else
            Close(ms);
    }

    /// <summary>
    /// A joined signal says this from this moment on: 1 or 0, or -1 where nobody knows; a number; for words the mask of what is
    /// on in the channel's family.
    /// </summary>
    public void Set(int binding, long value)
    {
        long before = _last[binding];
        if (before == value)
            return;
        Edges++;
        _last[binding] = value;
        if (_windowMs == 0)
        {
            Apply(binding, value);
            return;
        }

        if (bindings[binding].GlitchMs > 0 && _pending[binding] is { } pending && NowMs - pending.Ms < bindings[binding].GlitchMs)
        {
            // Taken back, or overtaken, within the filter's time: that was a glitch.
            Glitches++;
            pending.IsGlitch = true;
            before = pending.Before;
            _pending[binding] = null;
            if (before == value)
                return;
        }

        var change = new Change(NowMs, binding, value, before);
        _pending[binding] = before == Unseen ? null : change;
        _waiting.Enqueue(change);
    }

    /// <summary>The capture is over, or was stopped: everything that waits counts.</summary>
    public void End()
    {
        if (!Begun)
            return;
        Release(long.MaxValue);
        Close(NowMs);
    }

    private void Release(long untilMs)
    {
        while (_waiting.TryPeek(out Change? change) && change.Ms <= untilMs)
        {
            _waiting.Dequeue();
            if (ReferenceEquals(_pending[change.Binding], change))
                _pending[change.Binding] = null;
            if (change.IsGlitch)
                continue;
            if (change.Ms != _stateMs)
                Close(change.Ms);
            Apply(change.Binding, change.Value);
        }
    }

    // The state of the moment so far is complete; the next one begins.
    private void Close(long nextMs)
    {
        if (_dirty)
            moments.Moment(_stateMs);
        _dirty = false;
        _stateMs = nextMs;
    }

    private void Apply(int binding, long value)
    {
        Binding joined = bindings[binding];
        Channel channel = joined.Channel;
        _dirty = true;
        if (channel.IsNumber)
            state.SetNumber(channel, value);
        else if (value < 0)
            state.Doubt(channel);
        else if (channel.IsText)
            state.SetAll(channel.Kind, (int)value);
        else
            state.Set(channel, (value != 0) != joined.ActiveLow);
    }

    private sealed class Change(long ms, int binding, long value, long before)
    {
        public long Ms => ms;

        public int Binding => binding;

        public long Value => value;

        public long Before => before;

        public bool IsGlitch { get; set; }
    }
}
