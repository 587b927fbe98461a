using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Seasons;

/// <summary>Hand switches and eyes of a commissioning run: moves virtual time on and looks at the controller's terminals.</summary>
internal sealed class HandDesk(
    ControllerSettings settings, BenchSession session, InstalledController controller, IWitness witness, CancellationToken cancel)
{
    /// <summary>What the run says of a pump that the controller did not ask for.</summary>
    public const string WaterMoves = "the pump ran, or water moved, although nothing had told the pump to run";

    /// <summary>The controller's settings.</summary>
    public ControllerSettings Settings => settings;

    /// <summary>The person at the manifold.</summary>
    public IWitness Witness => witness;

    /// <summary>Time reached, ms.</summary>
    public long NowMs => session.NowMs;

    /// <summary>What the controller shows.</summary>
    public Frame Shown => controller.Shown;

    /// <summary>The flow switch sees flow.</summary>
    public bool SeesFlow => (Shown.Contacts & Contact.Flow) != 0;

    /// <summary>The controller says that water moves with the pump off.</summary>
    public bool PumpRunsByItself => (Shown.Alarms & Alarm.PumpStuck) != 0;

    /// <summary>The same, or the person at the manifold hears it.</summary>
    public bool PumpRunsUnasked => PumpRunsByItself || witness.PumpHeard() == true;

    /// <summary>From released to shut, the slowest zone, ms.</summary>
    public long SlowestClosingMs => settings.ClosingMs.Max();

    /// <summary>Why the controller holds, in words.</summary>
    public string Why
    {
        get
        {
            HoldWord hold = HoldWords.Of(Shown.Hold);
            return $"it shows \"{hold.Word}\". {hold.Sentence.TrimEnd('.')}";
        }
    }

    /// <summary>Sets the hand switches.</summary>
    public void Hands(int zones, bool pump) => session.SetHands(zones, pump);

    /// <summary>
    /// How long a zone's stroke is watched, ms: until a healthy valve must have shown itself, and just not until the controller
    /// gives it up and tries again.
    /// </summary>
    public long Patience(int zone) => Math.Max(
        settings.OpeningMs[zone] + 1000L,
        ((settings.SwitchedZones >> zone) & 1) != 0 ? settings.SwitchLimitMs[zone] - settings.ScanPeriodMs : 0);

    /// <summary>Moves on until something is so, but no longer than that.</summary>
    /// <returns>Whether it became so.</returns>
    public bool Until(Func<bool> isSo, long atMostMs)
    {
        long end = session.OnGrid(Math.Max(0, session.NowMs) + Math.Max(atMostMs, session.PeriodMs));
        do
        {
            cancel.ThrowIfCancellationRequested();
            session.AdvanceTo(session.NextScanMs(end));
            session.Scan();
            witness.Watch(session.NowMs, controller.Shown);
            if (isSo())
                return true;
        }
        while (session.NowMs < end);
        return false;
    }

    /// <summary>Lets time pass.</summary>
    public void Wait(long ms) => Until(() => false, ms);
}
