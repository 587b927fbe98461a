namespace ZoneControl.Bench.Seasons;

/// <summary>What a commissioning run can find to be wrong.</summary>
public enum Fault
{
    /// <summary>A valve's stem does not move though its actuator works.</summary>
    StuckValve,

    /// <summary>An actuator does nothing: dead, or its wire is broken.</summary>
    DeadActuator,

    /// <summary>A valve does not show itself open, and contacts alone cannot tell why.</summary>
    DoesNotShowOpen,

    /// <summary>A valve opens and its end switch says nothing.</summary>
    DeadSwitch,

    /// <summary>An end switch is made before anything is energised.</summary>
    SwitchMadeAtRest,

    /// <summary>The actuator wires of two zones are exchanged.</summary>
    SwappedActuators,

    /// <summary>The end-switch wires of two zones are exchanged.</summary>
    SwappedSwitches,

    /// <summary>Actuator wires or end-switch wires of two zones are exchanged; contacts alone cannot tell which.</summary>
    SwappedActuatorsOrSwitches,

    /// <summary>Actuator and switch of two zones are exchanged together: each works, in the other's room.</summary>
    SwappedZones,

    /// <summary>A valve opens later than its worst time.</summary>
    SlowValve,

    /// <summary>The pump does not run when told to, or moves no water.</summary>
    PumpDoesNotRun,

    /// <summary>The pump runs although it is told not to.</summary>
    PumpRunsUnasked,

    /// <summary>The pump runs when it should not and stops when it should run.</summary>
    PumpInverted,

    /// <summary>The pump runs with a zone's valve output.</summary>
    PumpOnValveOutput,

    /// <summary>The flow switch sees flow although nothing is open or told to run.</summary>
    FlowAtRest,

    /// <summary>A zone's valve is open and its loops pass nothing.</summary>
    NoWaterInZone,
}

/// <summary>Something that a commissioning run found to be wrong.</summary>
/// <param name="Fault">What.</param>
/// <param name="Zone">The zone; -1 for none.</param>
/// <param name="Other">The other zone of an exchange; -1 for none.</param>
/// <param name="Says">It in words, with what was seen.</param>
/// <param name="Change">What to do about it.</param>
public sealed record Diagnosed(Fault Fault, int Zone, int Other, string Says, string Change);

/// <summary>What a commissioning run comes to.</summary>
/// <param name="Faults">What is wrong.</param>
/// <param name="Unknown">What nothing has shown, one sentence each.</param>
public sealed record Diagnosis(IReadOnlyList<Diagnosed> Faults, IReadOnlyList<string> Unknown)
{
    /// <summary>Whether nothing wrong was found; what was not shown may still be.</summary>
    public bool IsClean => Faults.Count == 0;

    /// <summary>Reads a run.</summary>
    public static Diagnosis Of(Houses.House house, CommissioningRun run)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(run);
        var valves = new ValveDiagnosis(house, run);
        var pump = new PumpDiagnosis(house, run);
        Diagnosed[] ofValves = [.. valves.Faults()];
        // A zone whose wires lead elsewhere passes no water for that reason.
        IEnumerable<Diagnosed> ofPump = pump.Faults()
            .Where(found => found.Fault != Fault.NoWaterInZone || ofValves.All(valve => valve.Zone != found.Zone && valve.Other != found.Zone));
        return new Diagnosis([.. ofValves, .. ofPump], [.. valves.Unknown(), .. pump.Unknown()]);
    }
}
