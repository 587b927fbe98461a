using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>The protections that are compared, made for a house.</summary>
public static class ProtectionList
{
    /// <summary>Names of what may have to be bought, for prices.</summary>
    public static IReadOnlyList<string> Parts { get; } = [Relay, Switch, Bypass, RegulatedPump, FlowSwitch, Controller];

    /// <summary>Name of the plain wiring.</summary>
    internal const string Nothing = "no protection";

    /// <summary>Name of a spring bypass by itself.</summary>
    internal const string BypassAlone = "bypass";

    /// <summary>Name of the controller by itself.</summary>
    internal const string Ours = "ZoneControl";

    /// <summary>Name of the controller with a flow switch added.</summary>
    internal const string OursWithFlowSwitch = "ZC + flow switch";

    private const string Relay = "delay-relay";
    private const string Switch = "end-switch";
    private const string Bypass = "bypass";
    private const string RegulatedPump = "regulated-pump";
    private const string FlowSwitch = "flow-switch";
    private const string Controller = "controller";

    private const double CommonBypassKvs = 2.5; // m³/h at 1 bar, a 3/4 in relief (common practice)
    private const double CommonBandPa = 10_000;

    /// <summary>The list, from none to all together.</summary>
    public static IReadOnlyList<Protection> Of(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        House bare = Bare(house);
        House bypassed = WithBypass(house, bare);
        House regulated = WithRegulation(house, bare);
        House plain = Plain(house);
        int held = Held(house);
        int slowest = (int)house.Zones.Max(zone => zone.Actuator.OpeningTime).TotalMilliseconds;
        string delay = Durations.InWords(slowest);
        IController Straight(ControllerSettings s) => new StraightWiring(s);
        IController Library(ControllerSettings s) => new LibraryController(s);
        return
        [
            new(Nothing, "Pump and heat straight to the calls.", bare, Straight, []),
            new("valve held open", $"The same, with the valves of {house.ZoneLabels(held)} held open by hand day and night.", bare,
                s => new HeldOpen(s, held), [])
            {
                HeldOpen = held,
            },
            new("start delay", $"A time relay starts pump and heat {delay} after the first call.", bare,
                s => new DelayedStart(s, slowest), [new(Relay, 1)]),
            EndSwitches(bare),
            new(BypassAlone, $"A spring bypass that opens at {Measured.Pressure(bypassed.Bypass!.OpensAtPa, house.Units)}.", bypassed, Straight,
                [new(Bypass, 1)]),
            new("regulated pump", $"A pump that keeps {Show.Length(regulated.Pump.Regulation!.SetHeadM, house.Units)} at most{(regulated.Pump.Regulation.HeadAtNoFlowM < regulated.Pump.Regulation.SetHeadM ? ", less as flow falls" : "")}; "
                + "its minimum flow is taken to stay the same.", regulated, Straight, [new(RegulatedPump, 1)]),
            new("delay + bypass", "Time relay and spring bypass.", bypassed, s => new DelayedStart(s, slowest), [new(Relay, 1), new(Bypass, 1)]),
            Proving(new(Ours, $"Minimum open of {house.Controller.MinimumOpen} with companions, proven before the pump starts."
                + (plain.Bypass is null ? "" : " The bypass stays, since minimum open counts it."), plain, Library, [new(Controller, 1)]), Sets(plain)),
            .. WithFlowSwitch(plain, Library),
            // The plant takes no spring bypass beside a pump that regulates in proportion: they may balance at two flows.
            new("ZC + bypass", "ZoneControl and spring bypass.",
                plain with { Bypass = bypassed.Bypass! with { CountsAs = house.Bypass?.CountsAs ?? 0 } }, Library,
                [new(Controller, 1), new(Bypass, 1)]),
            .. plain.Bypass is null ? (Protection[])[Regulated(plain with { Pump = regulated.Pump }, Library)] : [],
        ];
    }

    private static Protection EndSwitches(House bare)
    {
        int switches = bare.Zones.Where(zone => zone.Actuator.HasSwitch).Sum(zone => zone.Actuators.Value);
        return new("end switches", "Pump and heat run while a calling zone's end switch is made; two-wire zones start them with their call.", bare,
            s => new EndSwitchInterlock(s), [new(Switch, switches)])
        {
            Remark = switches == 0 ? "No valve of this house has an end switch, so each call starts the pump." : "",
        };
    }

    /// <summary>With a switch that sees the water, where the house has none yet.</summary>
    private static IEnumerable<Protection> WithFlowSwitch(House house, Func<ControllerSettings, IController> library)
    {
        if (house.Contacts.Has(Contact.Flow))
            yield break;
        ContactKind flow = ContactKind.Of(Contact.Flow);
        var fitted = new HouseContact(flow, Setting.Given(flow.ClosedAsserts), Setting.Given(TimeSpan.FromSeconds(1)));
        yield return new(OursWithFlowSwitch, "ZoneControl with a flow switch that makes at the pump's minimum flow; after three starts without flow it waits for reset.",
            house with { Contacts = house.Contacts with { Fitted = [.. house.Contacts.Fitted.Append(fitted).OrderBy(c => c.Kind.Contact)] } }, library,
            [new(Controller, 1), new(FlowSwitch, 1)]);
    }

    /// <summary>A regulated pump passes less through the same valves, so minimum open is reckoned anew for it.</summary>
    private static Protection Regulated(House house, Func<ControllerSettings, IController> library)
    {
        int own = house.Controller.MinimumOpen;
        OpenSets sets = Sets(house);
        int? least = sets.LeastMinimumOpen(house.Pump.MinimumFlowM3s.Value);
        int open = least is { } needed && CompanionsReach(house, needed) ? Math.Max(needed, own) : own;
        return Proving(new Protection("ZC + regulated pump", $"ZoneControl and the regulated pump, with minimum open {open} for it.",
            house with { Controller = house.Controller with { MinimumOpen = open } }, library, [new(Controller, 1), new(RegulatedPump, 1)]), sets);
    }

    /// <summary>A protection that proves minimum open, with what there is to say where its sets of open zones pass too little for the pump.</summary>
    private static Protection Proving(Protection protection, OpenSets sets)
    {
        House house = protection.House;
        int open = house.Controller.MinimumOpen;
        double wants = house.Pump.MinimumFlowM3s.Value;
        if (sets.WorstReaching(open) is not { } worst || sets.Flow(worst) >= wants)
            return protection;
        string why = $"Its minimum open of {open} may be {house.ZoneLabels(worst)} alone, {Show.Flow(sets.Flow(worst), house.Units)} where the pump wants "
            + $"{Show.Flow(wants, house.Units)}; ";
        string mend = sets.LeastMinimumOpen(wants) switch
        {
            null => "not even all zones together pass that.",
            { } least when CompanionsReach(house, least) => $"minimum_open = {least} would do.",
            { } least => $"it would take minimum_open = {least}, which the companions cannot reach.",
        };
        return protection with { Remark = why + mend };
    }

    private static OpenSets Sets(House house) => new(house, new HouseFlows(house, house.SeasonWaterC()));

    /// <summary>Whether each zone that calls alone has companions enough for a minimum open.</summary>
    private static bool CompanionsReach(House house, int open)
    {
        int companions = house.Controller.Companions.Value.Aggregate(0, (zones, zone) => zones | (1 << zone));
        return Enumerable.Range(0, house.Zones.Count).All(zone => OpenSets.CapacityOf(house, (1 << zone) | companions) >= open);
    }

    /// <summary>The house with nothing that guards its pump beside the controller, but for a bypass that minimum open counts.</summary>
    private static House Plain(House house) => house with
    {
        Bypass = house.Bypass is { CountsAs: > 0 } ? house.Bypass : null,
        FixedBypass = house.FixedBypass is { CountsAs: > 0 } ? house.FixedBypass : null,
        Pump = house.Pump with { Regulation = null },
    };

    /// <summary>The house without what guards its pump.</summary>
    private static House Bare(House house) => house with
    {
        Bypass = null,
        FixedBypass = null,
        Pump = house.Pump with { Regulation = null },
        // Whatever counted as always open may be gone; a panel without protection asks nobody.
        Controller = house.Controller with { MinimumOpen = 1 },
    };

    /// <summary>
    /// With a spring bypass: the house's own, or one set as <see cref="BypassNeed.SettingM"/> has it.
    /// </summary>
    private static House WithBypass(House house, House bare)
    {
        if (house.Bypass is { } own)
            return bare with { Bypass = own with { CountsAs = 0 } };
        var flows = new HouseFlows(bare, BypassNeed.SettingWaterC);
        double opens = BypassNeed.Of(bare, flows).SettingM * flows.PascalPerM;
        return bare with { Bypass = new HouseBypass(Math.Max(100, opens), Setting.Derived(CommonBandPa, "common practice"), CommonBypassKvs, 0) };
    }

    /// <summary>
    /// With a pump that regulates itself: as the house's own does, or else in proportion, set to the head that it gives with all
    /// zones open, from half of it at no flow (common practice).
    /// </summary>
    private static House WithRegulation(House house, House bare)
    {
        if (house.Pump.Regulation is { } own)
            return bare with { Pump = bare.Pump with { Regulation = own } };
        var flows = new HouseFlows(bare, bare.SeasonWaterC());
        double all = flows.With(flows.AllZones).PumpHeadM;
        double set = Math.Min(all, 0.95 * bare.Pump.ShutoffHeadM);
        return bare with { Pump = bare.Pump with { Regulation = new RegulationDescription(set) { HeadAtNoFlowM = set / 2, LowestSpeed = 0.3 } } };
    }

    /// <summary>Zones that somebody would hold open: the first companions, as many as give minimum open.</summary>
    private static int Held(House house)
    {
        int held = 0;
        IEnumerable<int> order = house.Controller.Companions.Value.Concat(Enumerable.Range(0, house.Zones.Count));
        foreach (int zone in order.Where(zone => !house.Zones[zone].Gated))
        {
            if (OpenSets.CapacityOf(house, held) >= house.Controller.MinimumOpen)
                break;
            held |= 1 << zone;
        }

        return held;
    }
}
