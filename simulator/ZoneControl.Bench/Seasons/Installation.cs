using ZoneControl.Plant;

namespace ZoneControl.Bench.Seasons;

/// <summary>How the pump hangs on the controller's outputs.</summary>
public enum PumpWiring
{
    /// <summary>On the pump output.</summary>
    Right,

    /// <summary>On no output: a wire is missing, or the pump is dead.</summary>
    Unconnected,

    /// <summary>On the live wire, or its relay is welded: it always runs.</summary>
    Always,

    /// <summary>On the relay's other contact: it runs when it should not and stops when it should run.</summary>
    Inverted,

    /// <summary>On the heat demand output.</summary>
    OnHeat,

    /// <summary>On the output of a zone's valves.</summary>
    OnValve,
}

/// <summary>What an installer did between the controller's terminals and the house, mistakes included.</summary>
public sealed record Installation
{
    /// <summary>Everything is where it belongs and sound.</summary>
    public static Installation Sound { get; } = new();

    /// <summary>Two zones whose actuator wires are exchanged; null for none.</summary>
    public (int A, int B)? SwappedActuators { get; init; }

    /// <summary>Two zones whose end-switch wires are exchanged; null for none.</summary>
    public (int A, int B)? SwappedSwitches { get; init; }

    /// <summary>How the pump is wired.</summary>
    public PumpWiring Pump { get; init; }

    /// <summary>The zone of <see cref="PumpWiring.OnValve"/>.</summary>
    public int PumpZone { get; init; }

    /// <summary>Faults of zones' own actuators and switches.</summary>
    public IReadOnlyDictionary<int, ActuatorFault> Actuators { get; init; } = new Dictionary<int, ActuatorFault>();

    /// <summary>Which actuators are energised when these outputs are on, one bit a zone.</summary>
    public int ActuatorsOf(int outputs) => Exchange(outputs, SwappedActuators);

    /// <summary>Which end-switch terminals are closed when these switches are, one bit a zone.</summary>
    public int TerminalsOf(int switches) => Exchange(switches, SwappedSwitches);

    /// <summary>Whether the pump runs with these outputs.</summary>
    public bool PumpRuns(bool pump, bool heat, int outputs) => Pump switch
    {
        PumpWiring.Right => pump,
        PumpWiring.Unconnected => false,
        PumpWiring.Always => true,
        PumpWiring.Inverted => !pump,
        PumpWiring.OnHeat => heat,
        PumpWiring.OnValve => ((outputs >> PumpZone) & 1) != 0,
        _ => throw new NotSupportedException($"no pump wiring {Pump}"),
    };

    private static int Exchange(int mask, (int A, int B)? swapped)
    {
        if (swapped is not { } pair || ((mask >> pair.A) & 1) == ((mask >> pair.B) & 1))
            return mask;
        return mask ^ (1 << pair.A) ^ (1 << pair.B);
    }
}
