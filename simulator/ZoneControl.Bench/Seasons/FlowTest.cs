using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Seasons;

/// <summary>Lets the pump run by hand with a set of zones open and notes what shows that water moves.</summary>
internal sealed class FlowTest(House house, HandDesk desk)
{
    private const long RunMs = 60_000;

    // At power-up the controller takes the pump as just stopped and just started.
    private long _startedMs;

    public FlowTrial Of(int zones)
    {
        FlowTrial NotRun(string why) => new() { Zones = zones, NotRun = why };
        if (desk.PumpRunsByItself)
            return NotRun(HandDesk.WaterMoves);
        WaitOutRest();
        desk.Hands(zones, pump: true);
        bool runs = desk.Until(() => desk.Shown.Pump || desk.PumpRunsByItself, Patience(zones)) && desk.Shown.Pump;
        if (!runs)
        {
            string why = desk.PumpRunsByItself ? HandDesk.WaterMoves : Held(zones);
            LetGo();
            return NotRun(why);
        }

        _startedMs = desk.NowMs;
        long? flowAfter = null;
        FlowSighting seen = FlowSighting.None;
        desk.Until(
            () =>
            {
                if (!desk.Shown.Pump)
                    return true;
                if (desk.SeesFlow)
                    flowAfter ??= desk.NowMs - _startedMs;
                seen = desk.Witness.Flow(zones);
                return false;
            },
            RunMs);
        LetGo();
        return new FlowTrial
        {
            Zones = zones,
            FlowSwitch = desk.Settings.Has(Contact.Flow) ? flowAfter is not null : null,
            FlowAfterMs = flowAfter,
            Seen = seen,
        };
    }

    /// <summary>Which valves never showed themselves open, or what else the controller waited for.</summary>
    private string Held(int zones)
    {
        int closed = zones & ~desk.Shown.ProvenValves;
        return desk.Shown.Hold == HoldReason.Proof && closed != 0
            ? $"{house.ZoneLabels(closed)} did not show open within {Durations.InWords(TimeSpan.FromSeconds(Math.Round(Patience(zones) / 1000.0)))}, "
                + "so the controller did not start it against a shut valve"
            : $"the controller did not start it: {desk.Why}";
    }

    /// <summary>Hands end by themselves after their limit, so the pump's rest is waited out before they are used.</summary>
    private void WaitOutRest()
    {
        ControllerSettings s = desk.Settings;
        long rested = _startedMs + Math.Max(RunMs + s.PumpMinOffMs, s.PumpStartIntervalMs);
        if (rested > desk.NowMs)
            desk.Wait(rested - desk.NowMs);
    }

    private long Patience(int zones)
    {
        long sum = desk.Settings.CallDebounceMs + (2L * desk.Settings.ScanPeriodMs);
        for (int zone = 0; zone < desk.Settings.ZoneCount; zone++)
            sum += ((zones >> zone) & 1) * desk.Patience(zone);
        return Math.Min(sum, desk.Settings.ServiceLimitMs - 1L);
    }

    private void LetGo()
    {
        desk.Hands(0, pump: false);
        desk.Wait(desk.SlowestClosingMs + desk.Settings.PumpRundownMs + desk.Settings.HeatLeadMs + 1000L);
    }
}
