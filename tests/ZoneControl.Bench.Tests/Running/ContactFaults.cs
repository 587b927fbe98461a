using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Running;

/// <summary>Does not listen to one contact, though it publishes it.</summary>
internal abstract class Deaf(ControllerSettings settings, int contact, bool closedMeansNothing) : Tampered(settings)
{
    private bool _asserted;

    protected override void Read(long nowMs, InputImage inputs)
    {
        _asserted = (inputs.Contacts & contact) != 0 != closedMeansNothing;
        inputs.Set(contact, closedMeansNothing);
    }

    protected override void Decide(long nowMs, OutputImage outputs) =>
        outputs.AcceptedContacts = _asserted ? outputs.AcceptedContacts | contact : outputs.AcceptedContacts & ~contact;
}

/// <summary>Runs on though the water to the floor is too hot.</summary>
internal sealed class IgnoresTheLimit(ControllerSettings settings) : Deaf(settings, Contact.Limit, true);

/// <summary>Lets the house freeze.</summary>
internal sealed class IgnoresFrost(ControllerSettings settings) : Deaf(settings, Contact.Freeze, true);

/// <summary>Heats rooms while hot water has priority.</summary>
internal sealed class IgnoresPriority(ControllerSettings settings) : Deaf(settings, Contact.Priority, false);

/// <summary>Does not notice that the actuators have lost their supply.</summary>
internal sealed class IgnoresTheSupply(ControllerSettings settings) : Tampered(settings)
{
    private bool _there;

    protected override void Read(long nowMs, InputImage inputs)
    {
        _there = (inputs.Contacts & Contact.Supply) != 0;
        inputs.Set(Contact.Supply, true);
    }

    protected override void Decide(long nowMs, OutputImage outputs)
    {
        if (!_there)
            outputs.AcceptedContacts &= ~Contact.Supply;
    }
}

/// <summary>Starts the pump again at once.</summary>
internal sealed class NeverRests(ControllerSettings settings) :
    Tampered(ForgetsTheDelay.With(settings, s => (s.PumpMinOffMs, s.PumpStartIntervalMs) = (1000, 0)));

/// <summary>Does not care whether water flows.</summary>
internal sealed class NeedsNoFlow(ControllerSettings settings) :
    Tampered(ForgetsTheDelay.With(settings, s => s.FlowProofMs = s.FlowLossMs = ControllerSettings.LongestMs));

/// <summary>Keeps a pump that runs on to itself.</summary>
internal sealed class HidesStrayFlow(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Alarms &= ~Alarm.PumpStuck;
}

/// <summary>Opens everything at once, whatever the transformer can give.</summary>
internal sealed class OverloadsTheTransformer(ControllerSettings settings) :
    Tampered(ForgetsTheDelay.With(settings, s => s.TransformerDeciVa = 0));

/// <summary>Keeps stuck end switches to itself.</summary>
internal sealed class HidesStuckSwitches(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.StuckSwitches = 0;
}

/// <summary>Lets pump and valves seize over the summer.</summary>
internal sealed class NeverExercises(ControllerSettings settings) :
    Tampered(ForgetsTheDelay.With(settings, s => s.ExerciseIntervalS = 0));

/// <summary>Clears its latches by itself, again and again.</summary>
internal sealed class ResetsItself(ControllerSettings settings) : Tampered(settings)
{
    protected override void Read(long nowMs, InputImage inputs) => inputs.Set(Contact.Reset, nowMs / 5000 % 2 == 0);

    protected override void Decide(long nowMs, OutputImage outputs) => outputs.AcceptedContacts &= ~Contact.Reset;
}

/// <summary>Lets a hand govern for ever.</summary>
internal sealed class ServesForEver(ControllerSettings settings) :
    Tampered(ForgetsTheDelay.With(settings, s => s.ServiceLimitMs = ControllerSettings.LongestMs));

/// <summary>Takes a gated valve for open the moment it is energised.</summary>
internal sealed class TrustsTheGate(ControllerSettings settings) : Tampered(ForgetsTheDelay.With(settings, s =>
{
    for (int zone = 0; zone < s.ZoneCount; zone++)
    {
        if ((s.GatedZones & (1 << zone)) != 0)
            s.OpeningMs[zone] = s.SwitchMinMs[zone] = 1;
    }
}));

/// <summary>Never notices what its clock does: time goes on for it by a tenth of a second a scan at least, by one at most.</summary>
internal sealed class TrustsAnyClock(ControllerSettings settings) : IController
{
    private LibraryController _inner = new(settings);
    private long _last;
    private long _own;

    public string Name => nameof(TrustsAnyClock);

    public void PowerUp() => _inner = new LibraryController(settings);

    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        _own += Math.Clamp(nowMs - _last, 100, 1000);
        _last = nowMs;
        _inner.Scan(_own, inputs, outputs);
        outputs.ScanMs = nowMs;
        outputs.NextDeadlineMs = nowMs + 1;
    }
}
