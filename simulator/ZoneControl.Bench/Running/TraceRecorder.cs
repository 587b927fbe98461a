using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>Collects frames and samples as a run goes along: a frame whenever what is shown changes, samples as offered.</summary>
internal sealed class TraceRecorder(PlantModel plant, BenchWiring wiring, int zones)
{
    private readonly List<Frame> _frames = [];
    private readonly List<PlantSample> _samples = [];
    private Frame _last;

    public void Take(in Frame frame)
    {
        // Whether a scan comes late by a clock that jumps ahead is told by what the scan before it announced.
        if (_frames.Count > 0 && frame.ClockAheadMs != _last.ClockAheadMs && _frames[^1].Ms < _last.Ms)
            _frames.Add(_last);
        if (_frames.Count == 0 || !frame.ShowsTheSameAs(_frames[^1]))
            _frames.Add(frame);
        _last = frame;
    }

    public void Sample()
    {
        // Two samples at one moment are the two sides of a step: what was, and what it became.
        var wires = new WireMasks(wiring.Calls, plant.EndSwitches, wiring.Senses, wiring.Contacts);
        _samples.Add(PlantReadings.Sample(plant, plant.NowMs, wires, zones));
    }

    public Trace Finish(long endMs) => new(_frames, _samples, endMs);
}
