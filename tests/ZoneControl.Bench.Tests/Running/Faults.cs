using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Running;

/// <summary>Runs the pump as soon as any valve is energised.</summary>
internal sealed class PumpsBeforeProof(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Pump = outputs.Valves != 0;
}

/// <summary>Has lost its start delay.</summary>
internal sealed class ForgetsTheDelay(ControllerSettings settings) : Tampered(With(settings, s => s.PumpStartDelayMs = 0))
{
    internal static ControllerSettings With(ControllerSettings settings, Action<ControllerSettings> change)
    {
        change(settings);
        return settings;
    }
}

/// <summary>Releases the first zone for a minute while the pump runs.</summary>
internal sealed class ReleasesUnderway(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs)
    {
        if (nowMs is >= 30 * 60_000 and < 31 * 60_000)
            outputs.Valves &= ~1;
    }
}

/// <summary>Never notices that an end switch has opened again.</summary>
internal sealed class MissesLostProof(ControllerSettings settings) : Tampered(settings)
{
    private int _made;
    private int _now;

    protected override void Read(long nowMs, InputImage inputs)
    {
        _now = inputs.EndSwitches;
        _made |= inputs.EndSwitches;
        inputs.EndSwitches = _made;
    }

    protected override void Decide(long nowMs, OutputImage outputs) => outputs.AcceptedSwitches &= _now;
}

/// <summary>Stops the pump together with heat demand.</summary>
internal sealed class CutsTheOverrun(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Pump &= outputs.Heat;
}

/// <summary>Leaves on what has once been on.</summary>
internal sealed class NeverStops(ControllerSettings settings) : Tampered(settings)
{
    private int _valves;
    private bool _pump;

    protected override void Decide(long nowMs, OutputImage outputs)
    {
        if (outputs.PowerUp)
            (_valves, _pump) = (0, false);
        outputs.Valves = _valves |= outputs.Valves;
        outputs.Pump = _pump |= outputs.Pump;
    }
}

/// <summary>Opens nothing but the zones that call.</summary>
internal sealed class OpensNoCompanion(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Valves &= outputs.AcceptedCalls;
}

/// <summary>Releases a zone the moment its call ends, companion or not.</summary>
internal sealed class HandsNothingOver(ControllerSettings settings) : Tampered(settings)
{
    private int _called;

    protected override void Decide(long nowMs, OutputImage outputs)
    {
        _called |= outputs.AcceptedCalls;
        outputs.Valves &= outputs.AcceptedCalls | ~_called;
    }
}

/// <summary>Keeps late valves to itself.</summary>
internal sealed class HidesLateValves(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.LateValves = 0;
}

/// <summary>Believes a switch that makes a second after its valve was energised.</summary>
internal sealed class BelievesAnySwitch(ControllerSettings settings) :
    Tampered(ForgetsTheDelay.With(settings, s => Array.Clear(s.SwitchMinMs)))
{
    private long _energisedMs = long.MaxValue;

    protected override void Read(long nowMs, InputImage inputs)
    {
        if (nowMs < _energisedMs + 1000 || _energisedMs == long.MaxValue)
            inputs.EndSwitches = 0;
    }

    protected override void Decide(long nowMs, OutputImage outputs)
    {
        if (outputs.Valves != 0 && _energisedMs == long.MaxValue)
            _energisedMs = nowMs;
    }
}

/// <summary>Asks for heat as soon as anybody calls.</summary>
internal sealed class HeatsWithoutPump(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Heat = outputs.AcceptedCalls != 0;
}

/// <summary>Asks for heat until the pump stops.</summary>
internal sealed class HeatsToTheEnd(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Heat = outputs.Pump;
}

/// <summary>Does not look at the season contact.</summary>
internal sealed class IgnoresLockout(ControllerSettings settings) : Tampered(settings)
{
    private bool _lockout;

    protected override void Read(long nowMs, InputImage inputs)
    {
        _lockout = inputs.Lockout;
        inputs.Lockout = false;
    }

    protected override void Decide(long nowMs, OutputImage outputs) => outputs.AcceptedLockout = _lockout;
}

/// <summary>Comes up with a valve energised.</summary>
internal sealed class WakesUpOpen(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Valves |= outputs.PowerUp ? 1 : 0;
}

/// <summary>Never starts the pump.</summary>
internal sealed class NeverStarts(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Pump = outputs.Heat = false;
}

/// <summary>Runs the pump and lets the rooms stay cold.</summary>
internal sealed class NeverAsksForHeat(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs) => outputs.Heat = false;
}

/// <summary>Says "start delay" whenever it holds the pump.</summary>
internal sealed class GivesOneReasonForAll(ControllerSettings settings) : Tampered(settings)
{
    protected override void Decide(long nowMs, OutputImage outputs)
    {
        if (outputs.Hold != HoldReason.None)
            outputs.Hold = HoldReason.StartDelay;
    }
}
