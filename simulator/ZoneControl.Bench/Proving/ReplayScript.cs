using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Proving;

/// <summary>Makes a script of moves with real moments: what a bench run can be made to do by the actions that scripts have.</summary>
internal static class ReplayScript
{
    private const long TailMs = 5000;

    /// <summary>The script.</summary>
    /// <param name="house">The house.</param>
    /// <param name="settings">Its settings.</param>
    /// <param name="moves">The moves.</param>
    /// <param name="brokenMs">When the rule is broken.</param>
    /// <param name="title">Title, at most 60 characters.</param>
    /// <param name="text">A few sentences.</param>
    /// <param name="healthy">End switches and flow switch follow the plant, whatever the moves say of them.</param>
    public static Script Of(
        House house, ControllerSettings settings, IReadOnlyList<TimedMove> moves, long brokenMs, string title, string text, bool healthy)
    {
        var events = new List<ScriptEvent>();
        if (!healthy)
            events.AddRange(AtRest(house, settings));
        World world = World.AtRest(settings);
        foreach (TimedMove timed in moves.OrderBy(timed => RealRun.EdgeMs(settings, timed)))
        {
            world.Make(timed.Move);
            long at = RealRun.EdgeMs(settings, timed);
            if (Action(timed.Move, world, healthy) is { } action)
                events.Add(new ScriptEvent(at, action));
            if (timed.Move.Kind == MoveKind.Power)
                events.Add(new ScriptEvent(at + RealRun.OutageMs, new PowerChange(true)));
        }

        return new Script
        {
            Title = title,
            Text = text,
            DurationMs = Math.Max(1000, RealRun.OnGrid(settings, brokenMs + TailMs)),
            Conditions = new ScriptConditions(30, 20),
            Events = [.. events.OrderBy(e => e.AtMs)],
        };
    }

    /// <summary>Switches that the moves speak for must not follow the plant.</summary>
    private static IEnumerable<ScriptEvent> AtRest(House house, ControllerSettings settings)
    {
        for (int zone = 0; zone < house.Zones.Count; zone++)
        {
            if ((settings.SwitchedZones & (1 << zone)) != 0)
                yield return new ScriptEvent(0, Switch(zone, false));
        }

        if (settings.Has(Contact.Flow))
            yield return new ScriptEvent(0, new FlowSwitchFaultChange(FlowSwitchFault.StuckOff));
    }

    private static ScriptAction? Action(Move move, in World world, bool healthy)
    {
        int bit = 1 << move.Number;
        switch (move.Kind)
        {
            case MoveKind.Call:
                return new CallChange(bit, (world.Calls & bit) != 0);
            case MoveKind.Sense:
                return new CallChange(bit, (world.Senses & bit) != 0);
            case MoveKind.EndSwitch:
                return healthy ? null : Switch(move.Number, (world.EndSwitches & bit) != 0);
            case MoveKind.Hand:
                return Hands(world);
            case MoveKind.Contact:
                return OfContact(bit, (world.Contacts & bit) != 0, world, healthy);
            case MoveKind.Power:
                return new PowerChange(false);
            case MoveKind.ClockBack:
                return new ClockJump(-RealRun.JumpMs);
            default:
                return null;
        }
    }

    private static ScriptAction? OfContact(int contact, bool asserted, in World world, bool healthy) => contact switch
    {
        Contact.Lockout => new SeasonChange(asserted),
        Contact.Flow => healthy
            ? null
            : new FlowSwitchFaultChange(asserted ? FlowSwitchFault.StuckOn : FlowSwitchFault.StuckOff),
        Contact.ServicePump => Hands(world),
        _ => new ContactChange(ContactKind.Of(contact), asserted),
    };

    private static ServiceChange Hands(in World world) => new(world.Hands, (world.Contacts & Contact.ServicePump) != 0);

    private static FaultChange Switch(int zone, bool made) => new(
        zone,
        new ActuatorFault { Switch = made ? SwitchFault.AlwaysMade : SwitchFault.NeverMakes },
        made ? "end switch is made" : "end switch is not made");
}
