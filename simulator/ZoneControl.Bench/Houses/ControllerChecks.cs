using ZoneControl.Bench.Files;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Houses;

/// <summary>Whether what the controller is told fits together, and whether the house can do it.</summary>
internal static class ControllerChecks
{
    private static readonly (string Key, int Contact)[] _onlyWith =
    [
        ("flow_proof_time", Contact.Flow), ("flow_loss_time", Contact.Flow), ("flow_retries", Contact.Flow),
        ("freeze_heat_max", Contact.Freeze), ("priority_max", Contact.Priority), ("service_limit", Contact.ServicePump),
    ];

    public static void Times(TableReader table, HouseController controller, HouseActuator? quickest, HouseContacts contacts)
    {
        if (quickest is not null && controller.PumpStartDelay.Value < quickest.OpeningTime)
        {
            table.Warning("pump_start_delay", Durations.InWords(controller.PumpStartDelay.Value),
                $"at least {Durations.InWords(quickest.OpeningTime)}, the opening time of \"{quickest.Name}\", "
                    + "the quickest actuator");
        }

        if (controller.PumpOverrun.Value < controller.HeatLead.Value)
        {
            table.Error(table.Has("pump_overrun") ? "pump_overrun" : "heat_lead",
                $"an overrun of {Durations.InWords(controller.PumpOverrun.Value)}",
                $"at least the heat lead of {Durations.InWords(controller.HeatLead.Value)}",
                "heat goes off first and the pump carries the rest away");
        }

        AtLeastOneScan(table, controller, "heat_lead", "a heat lead", controller.HeatLead.Value);
        AtLeastOneScan(table, controller, "pump_rundown", "a rundown", controller.PumpRundown.Value);
        AtLeastOneScan(table, controller, "stall_limit", "a stall limit", controller.StallLimit.Value);
        Exercise(table, controller);
        Flow(table, controller, contacts);
        Limit(table, controller, contacts);
        foreach ((string key, int contact) in _onlyWith)
        {
            if (table.Has(key) && !contacts.Has(contact))
            {
                string contactKey = contact == Contact.ServicePump ? "service" : ContactKind.Of(contact).Key;
                table.Warning(key, "a setting that nothing uses", $"a house with {contactKey} = true under [contacts]");
            }
        }
    }

    /// <summary>A panel that asks for heat past ZoneControl would heat water that stands.</summary>
    public static void Gate(TableReader table, List<ZoneDraft> zones, bool heatDemandThrough)
    {
        if (heatDemandThrough || table.Mistakes.LostText || zones.Find(zone => zone.Gated) is not { } gated)
            return;
        table.Error("heat_demand_through", table.Has("heat_demand_through") ? "false" : "nothing",
            $"true, since zone \"{gated.Name}\" is gated: wire the panel's heat demand through ZoneControl as well",
            "else heat is asked for while the pump is held");
    }

    /// <summary>Whether the house, and each zone that calls alone, can reach minimum open with its companions.</summary>
    public static void Reach(TableReader table, int least, IReadOnlyList<int> companions, List<ZoneDraft> zones, int standing)
    {
        if (zones.Count is 0 or > ControllerSettings.MostZones || zones.Exists(zone => zone.Capacity is null))
            return;
        int all = standing + zones.Sum(zone => zone.Capacity!.Value);
        if (all < least)
        {
            table.Error("minimum_open", $"{least}", $"at most {all}, what all zones{Standing(standing)} can pass together");
            return;
        }

        int helpers = standing + companions.Sum(zone => zones[zone].Capacity!.Value);
        for (int zone = 0; zone < zones.Count; zone++)
        {
            int reach = helpers + (companions.Contains(zone) ? 0 : zones[zone].Capacity!.Value);
            if (reach < least)
            {
                table.Error("minimum_open", $"{least}",
                    $"at most {reach}, what zone \"{zones[zone].Name}\" reaches when it calls alone: "
                        + $"itself, its companions{Standing(standing)}");
            }
        }
    }

    private static void Exercise(TableReader table, HouseController controller)
    {
        TimeSpan interval = controller.ExerciseInterval.Value;
        if (interval > TimeSpan.Zero && (interval < TimeSpan.FromMinutes(1) || interval < controller.ExerciseRetry.Value))
        {
            table.Error(table.Has("exercise_retry") ? "exercise_retry" : "exercise_interval",
                $"an exercise every {Durations.InWords(interval)} that is put off by {Durations.InWords(controller.ExerciseRetry.Value)}",
                "an interval of 1 min at least, and no longer a retry than that", "\"0 s\" is for no exercise at all");
        }
    }

    private static void Flow(TableReader table, HouseController controller, HouseContacts contacts)
    {
        if (contacts.Find(Contact.Flow) is not { } flow)
            return;
        TimeSpan least = flow.Debounce.Value + (2 * controller.ScanPeriod.Value);
        if (controller.FlowProofTime.Value < least)
        {
            table.Error("flow_proof_time", Durations.InWords(controller.FlowProofTime.Value),
                $"at least {Durations.InWords(least)}, the flow switch's debounce and two scans", "sooner, no start would succeed");
        }

        // A high limit asks for more.
        if (controller.PumpMinOff.Value < controller.ScanPeriod.Value && !contacts.Has(Contact.Limit))
        {
            table.Error("pump_min_off", Durations.InWords(controller.PumpMinOff.Value),
                $"at least {Durations.InWords(controller.ScanPeriod.Value)}, one scan",
                "a pump that stops for want of flow rests, or nothing would say why it is off");
        }
    }

    private static void Limit(TableReader table, HouseController controller, HouseContacts contacts)
    {
        if (contacts.Find(Contact.Limit) is not { } limit)
            return;
        TimeSpan least = limit.Debounce.Value + controller.ScanPeriod.Value;
        if (controller.PumpMinOff.Value < least)
        {
            table.Error("pump_min_off", Durations.InWords(controller.PumpMinOff.Value),
                $"at least {Durations.InWords(least)}, the high limit's debounce and a scan",
                "a limit that is open at power-up must have been seen before the pump can start");
        }
    }

    private static void AtLeastOneScan(TableReader table, HouseController controller, string key, string what, TimeSpan time)
    {
        if (time < controller.ScanPeriod.Value)
        {
            table.Error(table.Has(key) ? key : "scan_period", $"{what} of {Durations.InWords(time)}",
                $"at least the scan period of {Durations.InWords(controller.ScanPeriod.Value)}");
        }
    }

    private static string Standing(int standing) => standing > 0 ? $" and the standing {standing}" : "";
}
