using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Captures;

/// <summary>Keeps what pictures need of a capture, and no more than so much: a longer capture's picture ends sooner.</summary>
internal sealed class CapturePicture
{
    private const int MostFrames = 40_000;
    private const int MostSamples = 40_000;

    private readonly List<Frame> _frames = [];
    private readonly List<PlantSample> _samples = [];
    private long? _cutMs;

    /// <summary>There is room for more.</summary>
    public bool HasRoom => _cutMs is null;

    public void Add(in Frame frame)
    {
        if (!HasRoom || (_frames.Count > 0 && frame.ShowsTheSameAs(_frames[^1])))
            return;
        if (_frames.Count > 0 && _frames[^1].Ms == frame.Ms)
            _frames[^1] = frame;
        else
            _frames.Add(frame);
        if (_frames.Count >= MostFrames)
            _cutMs = frame.Ms;
    }

    public void Add(PlantSample sample)
    {
        if (!HasRoom)
            return;
        _samples.Add(sample);
        if (_samples.Count >= MostSamples)
            _cutMs = sample.Ms;
    }

    public Trace Finish(long endMs) => new(_frames, _samples, Math.Min(endMs, _cutMs ?? endMs));
}
