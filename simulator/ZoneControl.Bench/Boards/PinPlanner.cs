using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>
/// Makes the pin plan of a house: what the file gives, and for the rest the pins that are quiet at reset before those that are
/// not (order of preference: common practice).
/// </summary>
public static class PinPlanner
{
    private static readonly int[] _outputs = [18, 19, 21, 22, 23, 25, 26, 27, 32, 33, 4, 13, 16, 17, 14];

    // Input-only pins can do nothing else; after them what outputs want least.
    private static readonly int[] _inputs = [34, 35, 36, 39, .. _outputs.Reverse()];

    private static readonly int[] _chainPins = [18, 19, 23, 34, 35, 21];

    private const int ChainHeartbeat = 22;

    /// <summary>How many pins of the module may be used at all.</summary>
    public static int UsablePins => _inputs.Length;

    /// <summary>The plan of a house for the module that it names.</summary>
    public static BoardPlan Of(House house) => Of(house, house.Board.Arrangement?.Value ?? Fitting(house));

    /// <summary>
    /// The plan of a house in an arrangement of the caller's choice, which may not be the file's. Direct pins that a real
    /// module lacks are put on the bench's virtual one.
    /// </summary>
    public static BoardPlan For(House house, int arrangement)
    {
        int own = house.Board.Arrangement?.Value ?? Fitting(house);
        if (arrangement == own)
            return Of(house);
        House bare = house with { Board = house.Board with { Arrangement = null, Pins = new Dictionary<string, int>() } };
        return arrangement == BoardPlan.Direct && Fitting(house) != BoardPlan.Direct
            ? Roomy(Of(bare, arrangement))
            : Of(bare, arrangement);
    }

    /// <summary>Direct pins where the module has enough of them, else chains.</summary>
    public static int Fitting(House house)
    {
        int outputs = OutputRoles(house).Count + 1;
        return outputs <= _outputs.Length && outputs + InputRoles(house).Count <= UsablePins ? BoardPlan.Direct : BoardPlan.Chains;
    }

    /// <summary>How many pins direct pins would take, the heartbeat included.</summary>
    public static int DirectPins(House house) => OutputRoles(house).Count + 1 + InputRoles(house).Count;

    private static BoardPlan Of(House house, int arrangement)
    {
        List<int> inputs = InputRoles(house);
        List<int> outputs = OutputRoles(house);
        var plan = new BoardPlan
        {
            Arrangement = arrangement,
            RelaysActiveLow = house.Board.RelaysActiveLow.Value,
            ClosedIsHigh = house.Board.ClosedIsHigh.Value,
            AcKinds = house.Board.AcKinds.Value,
            InputRoles = [.. inputs],
            OutputRoles = [.. outputs],
        };
        IReadOnlyDictionary<string, int> given = house.Board.Pins;
        HashSet<int> taken = [.. given.Values];
        if (arrangement == BoardPlan.Chains)
        {
            plan.HeartbeatPin = Pick("heartbeat", given, taken, [ChainHeartbeat, .. _outputs]);
            plan.ChainPins =
            [
                .. Enumerable.Range(0, BoardPlan.ChainPinCount).Select(place => Pick(
                    PinNames.OfChainPin(place), given, taken,
                    [_chainPins[place], .. PinNames.ChainPinIsOutput(place) ? _outputs : _inputs])),
            ];
            plan.InputPlaces = [.. Enumerable.Range(1, inputs.Count)];
            plan.OutputPlaces = [.. Enumerable.Range(0, outputs.Count)];
            plan.InputBits = WholeChips(inputs.Count + 2);
            plan.OutputBits = WholeChips(outputs.Count);
            return plan;
        }

        plan.HeartbeatPin = Pick("heartbeat", given, taken, _outputs);
        plan.OutputPlaces = [.. outputs.Select(role => Pick(PinNames.OfRole(role), given, taken, _outputs))];
        plan.InputPlaces = [.. inputs.Select(role => Pick(PinNames.OfRole(role), given, taken, _inputs))];
        return plan;
    }

    private static BoardPlan Roomy(BoardPlan plan)
    {
        plan.Module = BoardPlan.Virtual;
        plan.HeartbeatPin = 0;
        plan.OutputPlaces = [.. Enumerable.Range(1, plan.OutputRoles.Length)];
        plan.InputPlaces = [.. Enumerable.Range(1 + plan.OutputRoles.Length, plan.InputRoles.Length)];
        return plan;
    }

    /// <summary>The pin that the file gives, else the first free one; -1, which no module has, when none is left.</summary>
    private static int Pick(string use, IReadOnlyDictionary<string, int> given, HashSet<int> taken, IEnumerable<int> preferred)
    {
        if (given.TryGetValue(use, out int pin))
            return pin;
        foreach (int candidate in preferred)
        {
            if (taken.Add(candidate))
                return candidate;
        }

        return -1;
    }

    private static int WholeChips(int bits) => (bits + 7) / 8 * 8;

    /// <summary>Outputs in the order of the terminals.</summary>
    internal static List<int> OutputRoles(House house) =>
    [
        Role.Of(Role.Pump, 0),
        Role.Of(Role.Heat, 0),
        .. Zones(house, zone => !zone.Gated).Select(zone => Role.Of(Role.Valve, zone)),
    ];

    /// <summary>Inputs in the order of the terminals.</summary>
    internal static List<int> InputRoles(House house) =>
    [
        .. Zones(house, zone => !zone.Gated).Select(zone => Role.Of(Role.Call, zone)),
        .. Zones(house, zone => zone.Gated).Select(zone => Role.Of(Role.Sense, zone)),
        .. Zones(house, zone => zone.Actuator.HasSwitch).Select(zone => Role.Of(Role.Switch, zone)),
        .. house.Contacts.Fitted.Select(contact => Role.Of(Role.Contact, Contact.Place(contact.Kind.Contact))),
        .. house.Contacts.Service ? Hands(house) : [],
    ];

    private static IEnumerable<int> Hands(House house) =>
        Zones(house, zone => !zone.Gated).Select(zone => Role.Of(Role.Hand, zone))
            .Append(Role.Of(Role.Contact, Contact.Place(Contact.ServicePump)));

    private static IEnumerable<int> Zones(House house, Func<HouseZone, bool> holds) =>
        Enumerable.Range(0, house.Zones.Count).Where(zone => holds(house.Zones[zone]));
}
