using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Seasons;
using ZoneControl.Logic;

namespace ZoneControl.Web.View.Sheets;

/// <summary>The sheets for the start and the end of a heating season, made from this house, with room to write.</summary>
public static class SeasonSheet
{
    private const string NeedsHot = "Hot water scalds and is under pressure. Let the circuit cool, close what has to be closed, and open "
        + "nothing that you cannot close again.";

    private const string NeedsMains = "Pump, heat source and transformer are on the mains. Covers stay shut unless a licensed electrician "
        + "opens them; voltage is measured by somebody who does so for a living.";

    private const string NeedsGas = "Work on a gas or oil burner, its flue or its valves is for its licensed installer. Smell of gas: no switch, "
        + "no flame, windows open, out, and call from outside.";

    /// <summary>Autumn: from still and cold to the first warm floor.</summary>
    /// <param name="house">The house.</param>
    /// <param name="entries">Its history, oldest first, for the times of last year.</param>
    public static SheetView Start(House house, IReadOnlyList<HistoryEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(house);
        return new SheetView("season sheet", "Starting the season", CheckSheet.HouseLine(house),
            "Work from top to bottom, tick off, and write down what is asked for: next year it tells what changed.",
            [
                Who("Pump: what its plate says and how it is set.", "label", "serial number", "setting"),
                new SheetSection("Water", [new SheetCaution(NeedsHot), new SheetSteps([.. Water(house)])]),
                new SheetSection(
                    house.Contacts.Has(Contact.Lockout) ? "Power, with the season switch on lockout" : "Power, with every thermostat turned down",
                    [new SheetCaution(NeedsMains), new SheetSteps([.. Power(house)]), ContactTable(house)]),
                new SheetSection("Commissioning: each zone with the pump off", [.. Strokes(house, entries)]),
                new SheetSection("Commissioning: the pump with zones open", [.. Trials(house)]),
                new SheetSection("First heat", [new SheetCaution(NeedsGas), new SheetSteps([.. FirstHeat(house)])]),
                Keep(house, "start"),
            ])
        {
            FromModel = false,
        };
    }

    /// <summary>Spring: from the last warm floor to a house at rest.</summary>
    /// <param name="house">The house.</param>
    public static SheetView Stop(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return new SheetView("season sheet", "Ending the season", CheckSheet.HouseLine(house),
            "Work from top to bottom, tick off, and write down what is asked for.",
            [
                Who("Pump: how it is set.", "setting"),
                new SheetSection(house.Contacts.Has(Contact.Lockout) ? "Into lockout" : "To rest", [new SheetSteps([.. IntoLockout(house)])]),
                new SheetSection("Water", [new SheetCaution(NeedsHot), new SheetSteps([.. Rest(house)])]),
                new SheetSection("Heat source and power", [new SheetCaution(NeedsGas), new SheetCaution(NeedsMains), new SheetSteps([.. Leave(house)])]),
                Keep(house, "stop"),
            ])
        {
            FromModel = false,
        };
    }

    private static SheetSection Who(string pump, params string[] fields) =>
        new("Who and when", [new SheetSteps([new SheetStep("Date and name.", "date", "name"), new SheetStep(pump, fields)])]);

    private static IEnumerable<SheetStep> Water(House house)
    {
        yield return new SheetStep("Open both isolating valves at the pump and those of the heat source.");
        foreach (HouseManifold manifold in house.Manifolds)
            yield return new SheetStep($"Manifold {manifold.Label}: open its supply and return isolating valves; no drip anywhere.");
        yield return new SheetStep(
            $"Read the pressure, cold and still; top up to what the heat source's maker wants, commonly {Measured.Pressure(1e5, house.Units)} to "
                + $"{Measured.Pressure(1.5e5, house.Units)} (common practice).", "found", "left at");
        yield return new SheetStep(
            "Expansion vessel: its pre-charge is read by whoever services the heat source, with no water pressure on it.", "pre-charge", "vessel's label");
        yield return new SheetStep("Clean the filter or strainer between its two valves.", "found in it");
        yield return new SheetStep("Let air out at every manifold and high point. " + Flush(house));
        yield return new SheetStep("Draw a glass of water: clear, and no smell. Measure what the heat source's maker sets limits for.",
            "pH", "hardness or conductivity", "colour");
        if (house.StandingLoops.Count > 0)
            yield return new SheetStep($"{Quantity.Count(house.StandingLoops.Count, "standing loop")} without an actuator: its hand valve is fully open.");
        if (house.Bypass is { } bypass)
            yield return new SheetStep($"Bypass: set to open at {Measured.Pressure(bypass.OpensAtPa, house.Units)}.", "set to");
    }

    private static string Flush(House house)
    {
        IReadOnlyList<string> loops = AirBound.Loops(house);
        int all = house.Zones.Sum(zone => zone.Loops.Count) + house.StandingLoops.Count;
        return loops.Count == 0
            ? "By the model this pump carries air out of every loop when its zone alone is open."
            : "By the model this pump is too slow to carry air out of "
                + (loops.Count == all ? "any loop: flush each by itself, from the mains or with a purge pump."
                    : $"these loops; flush each by itself, from the mains or with a purge pump: {string.Join(", ", loops)}.");
    }

    private static IEnumerable<SheetStep> Power(House house)
    {
        yield return new SheetStep(house.Contacts.Has(Contact.Lockout)
            ? "Turn the season switch to lockout, then switch on."
            : "Turn every thermostat right down (this house has no season switch), then switch on.");
        yield return new SheetStep("Nothing may move: pump, heat demand and every valve stay off.");
        if (house.Transformer is { } transformer)
            yield return new SheetStep($"The actuators' transformer gives its {transformer.SupplyV.Value:0.#} V.", "measured, V");
        yield return new SheetStep("Move each contact below by hand where it can be, and see that the controller shows it"
            + (house.Zones.Any(zone => zone.Actuator.HasSwitch && !zone.Gated) ? "; an end switch is seen when its valve is stroked." : "."));
    }

    private static SheetTable ContactTable(House house) => new(
        "Contacts, in the words of the board's terminal list", [new("contact"), new("what it means"), new("seen", Blank: true)],
        [.. ContactWord.All(house).Select(contact => (IReadOnlyList<string>)[contact.Name, contact.Meaning, ""])]);

    private static IEnumerable<SheetBlock> Strokes(House house, IReadOnlyList<HistoryEntry> entries)
    {
        (HouseZone Zone, int Index)[] driven = [.. house.Zones.Select((zone, i) => (zone, i)).Where(one => !one.zone.Gated)];
        if (Gated(house) != 0)
        {
            yield return new SheetText($"{house.ZoneLabels(Gated(house))}: an existing panel drives these valves, so stroke them from the panel and see "
                + "that their sense contacts answer.");
        }

        if (driven.Length == 0)
            yield break;
        yield return new SheetText(
            $"Only one zone at a time, by {(house.Contacts.Service ? "its hand switch" : "a jumper at its hand terminal")}, the pump's "
            + $"{(house.Contacts.Service ? "hand switch off" : "left open")}. Stop a watch when "
            + "the stem (the pin under the actuator) stops. Write which stem moved and which actuator got warm or hummed, even where it is "
            + "the right one: exchanged actuator wires and exchanged end-switch wires look alike to the contacts.");
        if (!house.Contacts.Service)
        {
            yield return new SheetText("The house file has no hand switches, so the board has no hand terminals yet. For this day give it settings made with "
                + "service = true under [contacts].");
        }

        bool model = entries.Count > 0 && entries.All(entry => entry.Record.Source == SeasonRecord.Virtual);
        ILookup<int, ZoneDrift> drift = Drift.Of(house, entries).ToLookup(one => one.Zone);
        yield return new SheetTable("Strokes; \"in files\" is the zone's name for season HOUSE record",
            [
                new("zone"), new("in files"), new("worst", true), new(model ? "the model's" : "last time", true),
                new("switch", Blank: true), new("open", Blank: true), new("moved", Blank: true), new("warm", Blank: true),
            ],
            [
                .. driven.Select(one => (IReadOnlyList<string>)
                [
                    one.Zone.Label, one.Zone.Name, Durations.InWords(one.Zone.Actuator.OpeningTime),
                    drift[one.Index].First() is { Times: [.., var last] } ? Seconds(last.Seconds) : "-",
                    one.Zone.Actuator.HasSwitch ? "" : "has none", "", "", "",
                ]),
            ]);
    }

    private static int Gated(House house) => house.Zones.Select((zone, i) => zone.Gated ? 1 << i : 0).Sum();

    private static IEnumerable<SheetBlock> Trials(House house)
    {
        string stopped = house.Controller.PumpStartInterval > house.Controller.PumpMinOff.Value
            ? Durations.InWords(house.Controller.PumpStartInterval)
            : Durations.InWords(house.Controller.PumpMinOff.Value);
        IReadOnlyList<int> sets = CommissioningPlan.Sets(house);
        if (Gated(house) != 0)
        {
            yield return new SheetText($"{house.ZoneLabels(Gated(house))}: let the panel open one zone after the other, and see that the pump starts "
                + "only after the sense contact and the valve's opening time.");
        }

        if (sets.Count == 0)
            yield break;
        yield return new SheetText(
            $"For each line: the {(house.Contacts.Service ? "hand switches" : "jumpers")} of its zones, then the pump's. It starts when they are "
            + $"surely open; between two starts at least {stopped} pass. Stop it at once if it is loud or if nothing moves in "
            + "the flow glasses, the small sight tubes on the manifold.");
        yield return new SheetTable("The pump",
            [new("open zones"), new("flow switch", Blank: true), new("flow glasses", Blank: true), new("warm", Blank: true)],
            [.. sets.Select(set => (IReadOnlyList<string>)[house.ZoneLabels(set), house.Contacts.Has(Contact.Flow) ? "" : "has none", "", ""])]);
    }

    private static IEnumerable<SheetStep> FirstHeat(House house)
    {
        yield return new SheetStep("Set the heat source as its maker says, and the water to the floor low: a cold slab is warmed over days.", "supply set to");
        if (house.Contacts.Has(Contact.Limit))
            yield return new SheetStep("Try the high limit: turn it down until it opens, see pump and heat demand go off, turn it back, press reset.");
        yield return new SheetStep(house.Contacts.Has(Contact.Lockout) ? "Season switch to heating." : "Thermostats back to their setting.");
        TimeSpan wait = house.Zones.Max(zone => zone.ProofTime.Value);
        yield return new SheetStep(
            $"Turn up one thermostat. {Opens(house)}, and the pump starts within {Durations.InWords(wait)}" + Turns(house), "started after");
        yield return new SheetStep("The right floor gets warm. Do the same with every other thermostat.", "zones tried");
        yield return new SheetStep("After a day: pressure again, air again.", "pressure");
    }

    /// <summary>What opens when one thermostat calls, and who opens it.</summary>
    private static string Opens(House house)
    {
        int gated = Gated(house);
        int open = house.Controller.MinimumOpen;
        // A companion opens only where the zone by itself does not reach minimum open.
        bool few = house.Zones.Any(zone => !zone.Gated && zone.Capacity.Value + house.StandingCapacity < open);
        string own = few
            ? $"Its zone opens, and companions with it where the zone alone does not reach minimum_open = {open}"
            : "Its zone opens";
        return gated == 0 ? own
            : house.Zones.All(zone => zone.Gated) ? "The panel opens its zone"
            : $"{own} (those of {house.ZoneLabels(gated)} the panel opens)";
    }

    /// <summary>How long valves wait for their turn at the transformer.</summary>
    private static string Turns(House house)
    {
        HouseZone[] driven = [.. house.Zones.Where(zone => !zone.Gated)];
        TimeSpan wait = house.Transformer is { } transformer ? Stagger.LongestWait(driven, transformer.AllowedVa) : TimeSpan.Zero;
        return wait == TimeSpan.Zero ? "." : $", or up to {Durations.InWords(wait)} later where valves wait their turn at the transformer.";
    }

    private static IEnumerable<SheetStep> IntoLockout(House house)
    {
        HouseController c = house.Controller;
        yield return new SheetStep("Read the pressure, warm, and the water temperatures.", "pressure", "supply", "return");
        yield return new SheetStep(
            (house.Contacts.Has(Contact.Lockout) ? "Season switch to lockout. " : "Turn every thermostat right down. ")
                + $"If the pump ran, heat demand goes off, the pump runs on for {Durations.InWords(c.PumpOverrun.Value)}, stops, and "
                + $"{Durations.InWords(c.PumpRundown.Value)} later the valves are released.", "pump stopped after");
        if (house.Contacts.Has(Contact.Lockout))
            yield return new SheetStep("Turn one thermostat up: nothing may answer. Turn it down again.");
    }

    private static IEnumerable<SheetStep> Rest(House house)
    {
        bool exercises = house.Controller.ExerciseInterval.Value > TimeSpan.Zero;
        yield return new SheetStep(exercises
            ? $"Leave every isolating valve open and the power on: every {Durations.InWords(house.Controller.ExerciseInterval.Value)} valves and pump are exercised "
                + $"for {Durations.InWords(house.Controller.ExerciseRun.Value)}, and the controller cannot see an isolating valve."
            : "Nothing exercises pump and valves in this house: do it by hand once a month.");
        yield return new SheetStep("Leave the circuit full: drained tube and iron take air, and air rusts. Drain only for repairs, or where frost may reach it.");
        yield return new SheetStep("Look over manifolds, pump and valves for drips and white or brown crusts.", "found");
        yield return new SheetStep("Clean the filter or strainer.", "found in it");
        yield return new SheetStep("Read the pressure, cold.", "pressure");
        if (house.Contacts.Has(Contact.Freeze))
            yield return new SheetStep("The freeze contact stays awake in lockout: leave the heat source able to answer, or the water protected otherwise.");
    }

    private static IEnumerable<SheetStep> Leave(House house)
    {
        yield return new SheetStep("Put the heat source to rest as its maker says; if it makes hot water for taps, it stays on for that.");
        yield return new SheetStep("Heat demand stays wired: the controller asks for none "
            + (house.Contacts.Has(Contact.Lockout) ? "in lockout" : "while no thermostat calls")
            + (house.Contacts.Has(Contact.Freeze) ? ", but for frost." : "."));
        yield return new SheetStep("If the power must go off: once it is back, everything starts switched off, and the controller waits for the "
            + "valves anew; nothing needs to be done.");
    }

    private static SheetSection Keep(House house, string season) => new("Keep it",
        [
            new SheetSteps([new SheetStep("All of it done, or what was left is written down.", "left", "signature", "date")]),
            new SheetText("What was written down goes into the history beside the house file, a plain file for each start and stop"
                + (season == "start" ? "; one --opened for each zone, and one --made for each end switch. " : ". ")
                + "For each \"...\" put what was measured; the pressure is the cold one."),
            new SheetLines("For example",
                [
                    $"zonecontrol season {(house.FileName.Length > 0 ? house.FileName : "HOUSE")} record --season {season} \\",
                    .. Example(house, season),
                    "    --pressure \"...\" --note \"...\"",
                ]),
        ]);

    /// <summary>The options for one zone, without times: one that stood here could be filed as if it were measured.</summary>
    private static IEnumerable<string> Example(House house, string season)
    {
        if (season != "start" || house.Zones.FirstOrDefault(zone => !zone.Gated) is not { } zone)
            yield break;
        yield return $"    --opened {zone.Name}=\"...\" \\";
        if (zone.Actuator.HasSwitch)
            yield return $"    --made {zone.Name}=\"...\" \\";
    }

    private static string Seconds(double seconds) => Durations.InWords((long)Math.Round(seconds) * 1000);
}
