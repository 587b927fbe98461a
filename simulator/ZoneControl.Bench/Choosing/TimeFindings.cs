using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Bench.Choosing;

/// <summary>Start delay and proof times from the actuators.</summary>
internal static class TimeFindings
{
    public static IEnumerable<Finding> Of(House house)
    {
        foreach (IGrouping<string, HouseZone> kind in house.Zones.GroupBy(zone => zone.Actuator.Name))
            yield return Proof([.. kind]);
        foreach (HouseZone zone in house.Zones.Where(zone => zone.Actuator.HasSwitch && zone.SwitchMinTime.Value < zone.Actuator.DeadTime.Value))
            yield return Sooner(zone);
        yield return Delay(house);
    }

    private static Finding Proof(IReadOnlyList<HouseZone> zones)
    {
        HouseActuator actuator = zones[0].Actuator;
        TimeSpan proof = zones.Min(zone => zone.ProofTime.Value);
        string where = string.Join(", ", zones.Select(zone => zone.Label));
        double margin = proof / actuator.OpeningTime;
        string how = actuator.HasSwitch
            ? $"proven by its end switch, or after {Durations.InWords(proof)} where that is not believed"
            : $"says nothing when it is open: proven by time alone, after {Durations.InWords(proof)}";
        bool thin = margin < 1.1;
        return new Finding("proof time", thin ? FindingKind.Advice : FindingKind.Fine,
            $"actuator \"{actuator.Name}\" ({where}) opens in {Durations.InWords(actuator.OpeningTime)} at worst; {how}",
            "a quarter more than the worst opening time, for cold, age and low voltage (common practice)",
            thin ? $"leave proof_time out, or make it {Durations.InWords(Derivations.ProofTime(actuator).Value)}" : "")
        {
            Value = proof.TotalSeconds,
            Unit = "s",
        };
    }

    private static Finding Sooner(HouseZone zone) => new("end switch", FindingKind.Advice,
        $"{zone.Label}: its end switch is believed from {Durations.InWords(zone.SwitchMinTime.Value)} on, and its stem stands still for "
            + $"{Durations.InWords(zone.Actuator.DeadTime.Value)} at first: with a short in its wires the pump could start against a shut valve",
        "switch_min_time, held against the dead time of the actuator; no sound switch makes before its stem moves",
        $"leave switch_min_time out, or make it at least {Durations.InWords(zone.Actuator.DeadTime.Value)}")
    {
        Value = zone.SwitchMinTime.Value.TotalSeconds,
        Unit = "s",
    };

    private static Finding Delay(House house)
    {
        HouseController c = house.Controller;
        HouseActuator quickest = house.Zones.Select(zone => zone.Actuator).MinBy(actuator => actuator.OpeningTime)!;
        TimeSpan delay = c.PumpStartDelay.Value;
        bool shorter = delay < quickest.OpeningTime;
        TimeSpan slowest = house.Zones.Max(zone => zone.ProofTime.Value);
        TimeSpan rest = TimeSpan.FromTicks(Math.Max(c.PumpMinOff.Value.Ticks, c.PumpStartInterval.Ticks));
        return new Finding("start delay", shorter ? FindingKind.Advice : FindingKind.Fine,
            $"the pump waits {Durations.InWords(delay)} at least and, with the slowest zone, {Durations.InWords(slowest)} for proof"
                + $"; after a start the next one comes no sooner than {Durations.InWords(rest)} later",
            $"no path can surely be open before the quickest actuator (\"{quickest.Name}\") is",
            shorter ? $"make pump_start_delay at least {Durations.InWords(quickest.OpeningTime)}" : "")
        {
            Value = delay.TotalSeconds,
            Unit = "s",
        };
    }
}
