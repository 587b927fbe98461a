using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>Collects frames and samples as a run goes along: a frame whenever what is shown changes, samples as offered.</summary>
internal sealed class TraceRecorder(PlantModel plant, BenchWiring wiring, int zones)
{
    private readonly List<Frame> _frames = [];
    private readonly List<PlantSample> _samples = [];

    public void Take(in Frame frame, bool keep)
    {
        if (keep || _frames.Count == 0 || !frame.ShowsTheSameAs(_frames[^1]))
            _frames.Add(frame);
    }

    public void Sample()
    {
        var travel = new double[zones];
        var flow = new double[zones];
        for (int zone = 0; zone < zones; zone++)
        {
            travel[zone] = plant.Travel(zone);
            flow[zone] = plant.ZoneFlowM3s(zone);
        }

        var sample = new PlantSample
        {
            Ms = plant.NowMs,
            RawCalls = wiring.Calls,
            RawSwitches = plant.EndSwitches,
            RawSenses = wiring.Senses,
            RawContacts = wiring.Contacts,
            Travel = travel,
            ZoneFlowM3s = flow,
            PumpFlowM3s = plant.PumpFlowM3s,
            BypassFlowM3s = plant.BypassFlowM3s,
            PumpHeadM = plant.PumpHeadM,
            TrappedWaterC = plant.TrappedWaterC,
            DeadheadS = plant.DeadheadS,
        };

        // Two samples at one moment are the two sides of a step: what was, and what it became.
        _samples.Add(sample);
    }

    public Trace Finish(long endMs) => new(_frames, _samples, endMs);
}
