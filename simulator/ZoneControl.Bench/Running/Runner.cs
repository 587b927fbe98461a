using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Rules;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Running;

/// <summary>Runs a script on a house and judges what came of it.</summary>
public static class Runner
{
    /// <summary>The season contact is taken to say heating at the start, as the script format promises.</summary>
    private const bool LockoutAtStart = false;

    /// <summary>Runs from start to end in virtual time.</summary>
    /// <param name="house">The house.</param>
    /// <param name="script">The script; its zones are the house's.</param>
    /// <param name="build">Builds the controller that is to be tried.</param>
    /// <param name="everyScan">Make every scan, even those that cannot change anything.</param>
    /// <param name="progress">Told the share of the run that is done, 0 to 1.</param>
    /// <param name="cancel">Stops the run.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Run Run(
        House house,
        Script script,
        Func<ControllerSettings, IController> build,
        bool everyScan = false,
        IProgress<double>? progress = null,
        CancellationToken cancel = default)
    {
        ControllerSettings settings = house.ToSettings();
        var plant = new PlantModel(house.ToPlant(script.Conditions));
        IController controller = build(house.ToSettings()); // its own copy: whatever it does to it, it is judged by the house
        var session = new BenchSession(settings, plant, controller, house.Pump.FlowSwitchAtM3s.Value) { EveryScan = everyScan };
        session.SetLockout(LockoutAtStart);
        Play(script, session, progress, cancel);
        Trace trace = session.Finish(session.NowMs);
        string NameOf(int zone) => house.Zones[zone].Label;
        return new Run(
            house,
            script,
            controller.Name,
            trace,
            Judge.Verdicts(settings, trace, NameOf),
            [
                .. ExpectationJudge.Judge(script, house, trace),
                .. HealthyRun.Owes(script, trace, plant),
                .. WiredContacts.Owes(settings, script, trace, NameOf, controller.Debounces),
            ],
            HoldSpans.Of(trace),
            RunSums.Of(trace, plant));
    }

    private static void Play(Script script, BenchSession session, IProgress<double>? progress, CancellationToken cancel)
    {
        long end = session.OnGrid(script.DurationMs);
        int next = 0;
        while (session.NowMs < end)
        {
            cancel.ThrowIfCancellationRequested();
            long limit = Math.Min(NextEventMs(script.Events, next, session), end);
            session.AdvanceTo(session.NextScanMs(limit));
            for (; next < script.Events.Count && script.Events[next].AtMs <= session.PlantMs; next++)
                Do(script.Events[next].Action, session);
            session.Scan();
            progress?.Report((double)session.NowMs / end);
        }
    }

    /// <summary>The scan up to which a session may be moved on before the next event is due, ms; a far one after the last event.</summary>
    /// <remarks>
    /// The scan before a clock fails is always made, so that the controller and the trace tell the fault from time passing.
    /// </remarks>
    public static long NextEventMs(IReadOnlyList<ScriptEvent> events, int next, BenchSession session)
    {
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(session);
        if (next >= events.Count)
            return long.MaxValue;
        long at = session.OnGrid(events[next].AtMs);
        bool clockFails = events.Skip(next).TakeWhile(e => session.OnGrid(e.AtMs) == at)
            .Any(e => e.Action is ClockJump or ClockStop);
        long before = at - session.PeriodMs;
        return clockFails && before > session.NowMs ? before : at;
    }

    /// <summary>Does to a session what an event says, at the moment that its plant has reached.</summary>
    public static void Do(ScriptAction action, BenchSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        switch (action)
        {
            case CallChange call:
                for (int zone = 0; zone < ControllerSettings.MostZones; zone++)
                {
                    if ((call.Zones & (1 << zone)) != 0)
                        session.SetCall(zone, call.Asks);
                }

                break;
            case SeasonChange season:
                session.SetLockout(season.Lockout);
                break;
            case FaultChange fault:
                session.SetFault(fault.Zone, fault.Fault);
                break;
            case ContactChange contact:
                session.SetContacts(contact.Kind.Contact, contact.Asserted);
                break;
            case ServiceChange service:
                session.SetHands(service.Zones, service.Pump);
                break;
            case PumpFaultChange fault:
                session.SetPumpFault(fault.Fault);
                break;
            case FlowSwitchFaultChange fault:
                session.SetFlowSwitchFault(fault.Fault);
                break;
            case ClockJump jump:
                session.JumpClock(jump.Ms);
                break;
            case ClockStop stop:
                session.StopClock(stop.Ms);
                break;
            case PowerChange power:
                session.SetPower(power.On);
                break;
            default:
                throw new NotSupportedException($"The bench knows no script action {action.GetType().Name}.");
        }
    }
}
