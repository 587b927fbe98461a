using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>Something to buy for a protection.</summary>
/// <param name="Part">Its name, as prices call it: "bypass".</param>
/// <param name="Count">How many.</param>
public sealed record PartCount(string Part, int Count);

/// <summary>One way to keep a pump from deadheading, or none.</summary>
/// <param name="Name">Name for tables, short.</param>
/// <param name="Explains">What it is, in a sentence.</param>
/// <param name="House">The house with what it needs built in, or taken out.</param>
/// <param name="Build">Builds what drives valves, pump and heat.</param>
/// <param name="Parts">What has to be bought for it.</param>
public sealed record Protection(
    string Name, string Explains, House House, Func<ControllerSettings, IController> Build, IReadOnlyList<PartCount> Parts)
{
    /// <summary>Zones whose valves stand open day and night, one bit each.</summary>
    public int HeldOpen { get; init; }
}
