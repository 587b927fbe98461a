using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// PUMP-OVERRUN: from the end of demand until the rundown is over, the zones proven at that moment stay energised, latched
/// ones excepted; the pump stops no sooner than the overrun and no later than two scans after it. Loss of proof, a limit, want
/// of flow, new demand, service, priority, a time fault and a power-up end the obligation, and want of supply that to keep
/// valves. A valve that loses its own proof stays too: an overrun goes before the retry of a late
/// valve. No pump starts without demand, or a hand that asks. The overrun of an exercise is not to be told from its run, so
/// there only the rundown is judged.
/// </summary>
internal sealed class PumpOverrun(string rule, Evidence seen, IFindings findings) : RuleMonitor(rule, seen, findings)
{
    private DutyClock _running;
    private bool _runningDown;
    private int _zones;

    public override void End()
    {
        _running.Clear();
        _runningDown = false;
        _zones = 0;
    }

    public override void OnFrame()
    {
        bool hand = Seen.Service && Seen.Is(Contact.ServicePump);
        if (Seen.PumpWentOn && !Seen.Demand && !hand)
        {
            Occasion();
            Broken("the pump went on though nothing asks for it");
        }

        if (Seen.Demand || Seen.ForcedStop || Seen.Service || Seen.PriorityHolds)
        {
            End();
            return;
        }

        if (Seen.DemandEnded && Seen.Was.Pump)
        {
            Occasion();
            _zones = Seen.Held & Seen.House.DrivenZones;
            _running.Restart(!Seen.ExercisingBefore);
            _runningDown = Seen.ExercisingBefore;
        }

        JudgeZones();
        if (_running.Owed && !Seen.Now.Pump)
            JudgeStop();
        else if (_runningDown && !Seen.InRundown)
            End();
    }

    public override void OnTime()
    {
        if (_runningDown && !Seen.InRundown)
            End();
    }

    public override void Pass(int ms) => BrokenIn(
        _running.Pass(ms, Seen.House.PumpOverrunMs + TwoScansMs),
        () => $"the pump is still on two scans after its overrun of {Words.Seconds(Seen.House.PumpOverrunMs)}");

    public override void Walk(StateWalk walk)
    {
        _running.Walk(walk);
        walk.Bool(ref _runningDown);
        walk.Int(ref _zones);
    }

    private void JudgeZones()
    {
        _zones &= Seen.Supplied ? ~Seen.Now.LatchedValves : 0;
        int released = _zones & ~Seen.Now.Valves;
        bool bound = Seen.Now.Pump || Seen.InRundown;
        if (released != 0 && bound && (_running.Owed || _runningDown))
        {
            string when = Seen.Now.Pump ? "during the overrun" : "before the rundown was over";
            Broken($"{Words.Zones(released)} released {when}; zones proven when demand ended stay open until then");
        }

        _zones &= Seen.Now.Valves;
    }

    private void JudgeStop()
    {
        if (_running.Ms < Seen.House.PumpOverrunMs)
        {
            Broken($"the pump stopped {Words.Seconds(_running.Ms)} after demand ended; its overrun is "
                + $"{Words.Seconds(Seen.House.PumpOverrunMs)}");
        }

        _running.Clear();
        _runningDown = Seen.InRundown;
        if (!_runningDown)
            _zones = 0;
    }
}
