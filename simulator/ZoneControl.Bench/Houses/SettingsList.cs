using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Houses;

/// <summary>Every setting of a house that has a default: what is in force, and where it came from.</summary>
public static class SettingsList
{
    /// <summary>The settings in the order of the file format's reference, keys as in the file.</summary>
    public static IReadOnlyList<SettingLine> Of(House house) =>
        [
            .. Pump(house), .. Bypass(house), .. Actuators(house), .. Zones(house), .. Transformer(house), .. Controller(house),
            .. Contacts(house), .. HeatSettings.Of(house),
        ];

    private static IEnumerable<SettingLine> Pump(House house)
    {
        HousePump pump = house.Pump;
        yield return Line("pump.speed", pump.Speed, value => $"{value * 100:0.#} %");
        yield return Line("pump.heat_to_water", pump.HeatToWater, value => $"{value * 100:0.#} %");
        yield return Line("pump.minimum_flow", pump.MinimumFlowM3s, value => Show.Flow(value, house.Units));
        if (house.Contacts.Has(Contact.Flow))
            yield return Line("pump.flow_switch_at", pump.FlowSwitchAtM3s, value => Show.Flow(value, house.Units));
        yield return Line("pump.casing_water", pump.CasingWaterM3, value => Show.Volume(value, house.Units));
        yield return Line("pump.casing_iron", pump.CasingIronKg, value => Show.Mass(value, house.Units));
        yield return Line("pump.casing_loss", pump.CasingLossWPerK, value => $"{value:0.##} W/K");
    }

    private static IEnumerable<SettingLine> Bypass(House house) => house.Bypass is { } bypass
        ? [Line("bypass.band", bypass.BandPa, value => Show.Pressure(value, house.Units))]
        : [];

    private static IEnumerable<SettingLine> Actuators(House house)
    {
        foreach (HouseActuator actuator in house.Zones.Select(zone => zone.Actuator).DistinctBy(actuator => actuator.Name))
        {
            string key = "actuator." + actuator.Name;
            yield return Time(key + ".dead_time", actuator.DeadTime);
            yield return Time(key + ".closing_time", actuator.ClosingTime);
            yield return Time(key + ".closing_dead_time", actuator.ClosingDeadTime);
            if (actuator.SwitchAt is { } share)
                yield return Line(key + ".switch_at", share, value => $"{value * 100:0.#} %");
            if (house.Transformer is null)
                continue;
            yield return Line(key + ".hold", actuator.HoldVa, value => $"{value:0.#} VA");
            yield return Line(key + ".inrush", actuator.InrushVa, value => $"{value:0.#} VA");
            yield return Time(key + ".inrush_time", actuator.InrushTime);
            yield return Line(key + ".supply", actuator.SupplyV, value => $"{value:0.#} V");
        }
    }

    private static IEnumerable<SettingLine> Zones(House house)
    {
        foreach (HouseZone zone in house.Zones)
        {
            string key = "zone." + zone.Name;
            yield return Line(key + ".capacity", zone.Capacity, value => $"{value}");
            yield return Time(key + ".proof_time", zone.ProofTime);
            if (house.Transformer is not null)
                yield return Line(key + ".actuators", zone.Actuators, value => $"{value}");
            for (int i = 0; i < zone.Loops.Count; i++)
                yield return Line($"{key}.loops[{i + 1}].valve_kvs", zone.Loops[i].ValveKvs, value => $"{value:0.##} m³/h");
            if (!zone.Actuator.HasSwitch)
                continue;
            yield return Time(key + ".switch_min_time", zone.SwitchMinTime);
            yield return Time(key + ".switch_limit", zone.SwitchLimit);
        }
    }

    private static IEnumerable<SettingLine> Controller(House house)
    {
        HouseController controller = house.Controller;
        yield return Line("controller.minimum_open", Setting.Given(controller.MinimumOpen), value => $"{value}");
        yield return Line("controller.companions", controller.Companions,
            value => string.Join(", ", value.Select(zone => house.Zones[zone].Name)));
        yield return Time("controller.pump_start_delay", controller.PumpStartDelay);
        yield return Time("controller.pump_overrun", controller.PumpOverrun);
        yield return Time("controller.pump_rundown", controller.PumpRundown);
        yield return Time("controller.heat_lead", controller.HeatLead);
        yield return Time("controller.call_debounce", controller.CallDebounce);
        yield return Time("controller.switch_debounce", controller.SwitchDebounce);
        yield return Time("controller.scan_period", controller.ScanPeriod);
        yield return Line("controller.valve_retries", controller.ValveRetries, value => $"{value}");
        yield return Time("controller.pump_min_off", controller.PumpMinOff);
        yield return Line("controller.pump_max_starts", controller.PumpMaxStarts, value => $"{value}");
        if (house.Contacts.Has(Contact.Flow))
        {
            yield return Time("controller.flow_proof_time", controller.FlowProofTime);
            yield return Time("controller.flow_loss_time", controller.FlowLossTime);
            yield return Line("controller.flow_retries", controller.FlowRetries, value => $"{value}");
        }

        yield return Time("controller.exercise_interval", controller.ExerciseInterval);
        yield return Time("controller.exercise_run", controller.ExerciseRun);
        yield return Time("controller.exercise_retry", controller.ExerciseRetry);
        if (house.Contacts.Has(Contact.Freeze))
            yield return Time("controller.freeze_heat_max", controller.FreezeHeatMax);
        if (house.Contacts.Has(Contact.Priority))
            yield return Time("controller.priority_max", controller.PriorityMax);
        if (house.Contacts.Service)
            yield return Time("controller.service_limit", controller.ServiceLimit);
        yield return Line("controller.stall_scans", controller.StallScans, value => $"{value}");
        yield return Time("controller.stall_limit", controller.StallLimit);
    }

    private static IEnumerable<SettingLine> Transformer(House house) => house.Transformer is { } transformer
        ?
        [
            Line("transformer.share", transformer.Share, value => $"{value * 100:0.#} %"),
            Line("transformer.supply", transformer.SupplyV, value => $"{value:0.#} V"),
        ]
        : [];

    private static IEnumerable<SettingLine> Contacts(House house)
    {
        foreach (HouseContact contact in house.Contacts.Fitted)
        {
            string key = "contacts." + contact.Kind.Key;
            yield return Line(key + ".closed_means", contact.ClosedAsserts,
                closed => closed ? contact.Kind.Asserted : contact.Kind.Resting);
            yield return Time(key + ".debounce", contact.Debounce);
        }
    }

    private static SettingLine Time(string key, Setting<TimeSpan> setting) => Line(key, setting, Durations.InWords);

    private static SettingLine Line<T>(string key, Setting<T> setting, Func<T, string> text) =>
        new(key, text(setting.Value), setting.DerivedFrom, setting.Line);
}
