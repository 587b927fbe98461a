using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Seasons;

/// <summary>What the run says of the pump: its wire, its water.</summary>
internal sealed class PumpDiagnosis(House house, CommissioningRun run)
{
    private Stroke[] Tried => [.. run.Strokes.Where(stroke => stroke.NotTried.Length == 0)];

    private FlowTrial[] Told => [.. run.Trials.Where(trial => trial.NotRun.Length == 0)];

    public IEnumerable<Diagnosed> Faults()
    {
        if (run.FlowAtRest)
        {
            yield return AtRest();
            yield break;
        }

        if (Unasked() is { } unasked)
        {
            yield return unasked;
            yield break;
        }

        FlowTrial[] silent = [.. Told.Where(Silent)];
        if (silent.Length > 0 && silent.Length == Told.Length)
        {
            yield return Silence(silent);
        }
        else
        {
            foreach (FlowTrial trial in silent)
            {
                yield return new Diagnosed(Fault.PumpDoesNotRun, -1, -1,
                    $"with {house.ZoneLabels(trial.Zones)} open no flow was seen, with other zones it was",
                    "look for air, a shut isolating valve, or a valve that did not open in these zones");
            }
        }

        foreach (int zone in DryZones())
        {
            yield return new Diagnosed(Fault.NoWaterInZone, zone, -1,
                $"{house.Zones[zone].Label}: open, and its loops pass no water", "look for air, or a shut isolating or balancing valve");
        }
    }

    public IEnumerable<string> Unknown()
    {
        if (run.BrokenOff.Length > 0)
        {
            yield return $"The run was broken off: {run.BrokenOff}. Mend that first, then run it again; what was not tried is not known.";
            if (run.Trials.Count > 0)
            {
                yield return "Before that, all valves were opened once to hear whether the pump hangs on the wrong contact of its relay: it would then stop "
                    + "when it is told to run.";
            }

            yield break;
        }

        foreach (FlowTrial trial in run.Trials.Where(trial => trial.NotRun.Length > 0))
            yield return $"The pump was not tried with {house.ZoneLabels(trial.Zones)}: {trial.NotRun}.";
        int covered = run.Trials.Aggregate(0, (mask, trial) => mask | trial.Zones);
        foreach (Stroke stroke in Tried.Where(stroke => (covered & (1 << stroke.Zone)) == 0 && !stroke.BrokenOff))
            yield return $"No water was sent through {house.Zones[stroke.Zone].Label}: it did not show itself open.";
        if (!run.HasFlowSwitch && run.PumpHeardAtRest is null && Told.All(trial => trial.Seen.PumpHeard is null))
            yield return "No flow switch is fitted and nobody listened: whether the pump ran, or water moved, is not known.";
        else if (run.HasFlowSwitch && Told.Any(trial => trial.Seen.Passing is null))
            yield return "The flow switch tells that water moves, not through which loops.";
    }

    private Diagnosed? Unasked()
    {
        Stroke[] running = [.. Tried.Where(stroke => stroke.FlowWithPumpOff || stroke.Seen.PumpHeard == true)];
        bool atRest = run.PumpHeardAtRest == true;
        bool stoppedWhenTold = Told.Any(trial => trial.Seen.PumpHeard == false);
        if (atRest && stoppedWhenTold)
        {
            return new Diagnosed(Fault.PumpInverted, -1, -1, "the pump runs while told to be off, against shut valves, and stops while told to run",
                "switch its supply off at once; it hangs on the relay's normally closed contact: move its wire to the normally open one");
        }

        if (!atRest && running.Length == 0)
            return null;
        string seen = atRest
            ? "the pump was heard before anything was told to open or run, so it ran against shut valves"
            : $"water moved, or the pump was heard, while it was told to be off and {Names(running)} stood open";
        // Quiet with everything off, or while another zone stood open, and running with this one: it hangs on its output.
        bool quietElsewhere = run.PumpHeardAtRest == false || (running.Length > 0 && Tried.Any(stroke => WouldHaveShown(stroke, running[0])));
        if (!atRest && running.Length == 1 && quietElsewhere)
        {
            return new Diagnosed(Fault.PumpOnValveOutput, running[0].Zone, -1,
                $"{seen}, and not before: the pump hangs on the valve output of {house.Zones[running[0].Zone].Label}",
                "move the pump's wire to the pump output");
        }

        return new Diagnosed(Fault.PumpRunsUnasked, -1, -1,
            $"{seen}: a welded relay, the pump on the live wire, on the relay's normally closed contact or on another output"
                + (atRest ? "" : ", or a flow switch that is stuck; contacts cannot tell which"),
            "switch its supply off at once, then follow its wire from the relay");
    }

    /// <summary>An earlier zone that stood open and passes enough for the flow switch: a pump that ran would have been seen.</summary>
    private bool WouldHaveShown(Stroke stroke, Stroke before) => stroke.Zone < before.Zone && stroke.SwitchMadeMs is not null
        && new HouseFlows(house, 20).With(1 << stroke.Zone).PumpFlowM3s >= house.Pump.FlowSwitchAtM3s.Value;

    private Diagnosed AtRest() => new(Fault.FlowAtRest, -1, -1,
        "the flow switch saw flow before anything was told to open or run: the switch is stuck"
            + (run.PumpHeardAtRest == false ? ", for the pump stood still" : ", or the pump runs unasked and a valve stands open"),
        "listen to the pump; if it is still, look at the flow switch and its wire");

    private static Diagnosed Silence(FlowTrial[] silent)
    {
        string seen = silent[0].Seen.PumpHeard == false ? "the pump stood still while told to run" : "no flow was seen while the pump was told to run";
        return new Diagnosed(Fault.PumpDoesNotRun, -1, -1,
            $"{seen}: not connected, on another output (such as heat demand, which hand runs never ask for), or dead"
                + (silent[0].Seen.PumpHeard is null ? "; or shut isolating valves, or a dead flow switch" : ""),
            "look for voltage at the pump while it is told to run, then follow its wire from the relay");
    }

    private IEnumerable<int> DryZones() => Enumerable.Range(0, house.Zones.Count).Where(zone => Told.Any(trial =>
        (trial.Zones & (1 << zone)) != 0 && trial.Seen.PumpHeard == true && trial.Seen.Passing is { } passing && (passing & (1 << zone)) == 0));

    private static bool Silent(FlowTrial trial) => trial.FlowSwitch == false || trial.Seen.PumpHeard == false;

    private string Names(Stroke[] strokes) => house.ZoneLabels(strokes.Sum(stroke => 1 << stroke.Zone));
}
