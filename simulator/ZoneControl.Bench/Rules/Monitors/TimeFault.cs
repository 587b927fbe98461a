using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// TIME-FAULT: a scan whose clock cannot be trusted (<see cref="ScanClock"/>) raises the alarm and has pump and heat demand
/// off; so has the scan that newly claims a fault. The valves that were energised then stay for a fresh rundown, unless those
/// that stay prove minimum open, or there is no supply. A claim is false where all scans are there and none shows it.
/// </summary>
/// <remarks>
/// That proofs, delays and rests begin again is in what every monitor takes for proven; that latches stay is ALARM-LATCH's to
/// judge. Where scans were left out, a fault under an alarm that stands already shows only in a jump back.
/// </remarks>
internal sealed class TimeFault(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private int _kept;

    public override void End() => _kept = 0;

    public override void OnFrame()
    {
        if (Seen.TimeFault)
            JudgeFault();
        if (!Seen.InRundown)
            _kept = 0;
        int released = _kept & ~Seen.Now.Valves;
        if (released != 0 && Seen.Supplied && Seen.Capacity < Seen.MinimumOpen)
            Broken($"{Words.Zones(released)} released before the fresh rundown after a fault of the clock was over");
        _kept &= Seen.Now.Valves;
    }

    public override void OnTime()
    {
        if (!Seen.InRundown)
            _kept = 0;
    }

    public override void Walk(StateWalk walk) => walk.Int(ref _kept);

    private void JudgeFault()
    {
        Occasion();
        string what = Seen.Clock switch
        {
            ClockSign.RunsBack => "the clock runs back",
            ClockSign.StandsStill => "the clock stands still",
            ClockSign.ComesLate => "the scan comes too late",
            _ => "a time fault is alarmed",
        };
        if (Seen.Clock == ClockSign.Trusted)
            Broken("a time fault is alarmed, and the clock shows none");
        if (!Seen.Alarmed(Alarm.TimeFault))
            Broken($"{what}, and no alarm says so");
        if (Seen.Now.Pump || Seen.Now.Heat)
            Broken($"{what}, and {(Seen.Now.Pump ? "the pump" : "heat demand")} is on");
        _kept = Seen.Was.Valves & Seen.House.DrivenZones;
    }
}
