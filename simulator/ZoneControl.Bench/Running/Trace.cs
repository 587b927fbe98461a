namespace ZoneControl.Bench.Running;

/// <summary>Everything a run recorded, in order of time.</summary>
/// <param name="Frames">
/// What the controller showed, one frame for each change, and those of the two scans between which its clock is made to
/// fail; the first is the first scan.
/// </param>
/// <param name="Samples">What the plant did.</param>
/// <param name="EndMs">End of the run, ms; the last frame holds until then.</param>
public sealed record Trace(IReadOnlyList<Frame> Frames, IReadOnlyList<PlantSample> Samples, long EndMs)
{
    /// <summary>
    /// Every scan has its frame, those that show nothing new too, as they came. Only then can a scan that came too late be
    /// told from scans that were left out (TIME-FAULT).
    /// </summary>
    public bool EveryScan { get; init; }
}
