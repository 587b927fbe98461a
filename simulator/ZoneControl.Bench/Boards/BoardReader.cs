using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>Reads what a house file says of the board, and refuses pins that cannot do what they are to.</summary>
internal static class BoardReader
{
    private const string KindsExpected = "a list of \"calls\", \"senses\", \"end_switches\", \"contacts\" or \"hands\"";

    /// <summary>The shortest scan period with which AC contacts are seen one scan late, no sooner and no later.</summary>
    private const int ShortestAcScanMs = 80;

    private static readonly (string, int)[] _arrangements = [("direct", BoardPlan.Direct), ("chains", BoardPlan.Chains)];

    private static readonly (string, bool)[] _relays = [("active-high", false), ("active-low", true)];

    private static readonly (string, bool)[] _levels = [("low", false), ("high", true)];

    private static readonly (string Word, int Kind)[] _kinds =
    [
        ("calls", Role.Call), ("senses", Role.Sense), ("end_switches", Role.Switch), ("contacts", Role.Contact), ("hands", Role.Hand),
    ];

    /// <summary>The keys of a pin's table that hold one pin for each zone.</summary>
    private static readonly (string Key, int Kind)[] _perZone =
    [
        ("valve", Role.Valve), ("call", Role.Call), ("sense", Role.Sense), ("end_switch", Role.Switch), ("hand", Role.Hand),
    ];

    public static HouseBoard Read(TableReader? table, House house)
    {
        var board = new HouseBoard();
        if (table is null)
            return board;
        var places = new Dictionary<string, Place>();
        var pins = new Dictionary<string, int>();
        if (table.Choice("pins", _arrangements) is { } arrangement)
            board = board with { Arrangement = Setting.Given(arrangement, table.PlaceOf("pins").Line) };
        if (table.Choice("relays", _relays) is { } low)
            board = board with { RelaysActiveLow = Setting.Given(low, table.PlaceOf("relays").Line) };
        if (table.Choice("closed_contact", _levels) is { } high)
            board = board with { ClosedIsHigh = Setting.Given(high, table.PlaceOf("closed_contact").Line) };
        if (ReadKinds(table) is { } kinds)
            board = board with { AcKinds = Setting.Given(kinds, table.PlaceOf("ac_contacts").Line) };
        int used = board.Arrangement?.Value ?? PinPlanner.Fitting(house);
        ReadPins(table.Table("pin"), house, used, pins, places);
        table.End();
        board = board with { Pins = pins };
        Check(table, house with { Board = board }, places);
        return board;
    }

    private static int? ReadKinds(TableReader table)
    {
        TomlNode? node = table.Node("ac_contacts", KindsExpected);
        if (node is null)
            return null;
        if (node is not TomlList list)
        {
            table.Error("ac_contacts", node.Found, KindsExpected);
            return null;
        }

        int mask = 0;
        foreach (TomlNode item in list.Items)
        {
            string word = item is TomlScalar { Value: string text } ? text : "";
            int at = Array.FindIndex(_kinds, kind => kind.Word == word);
            if (at < 0)
            {
                table.Mistakes.Error(item.Place, table.PathOf("ac_contacts"), item.Found, KindsExpected,
                    Words.DidYouMean(word, _kinds.Select(known => known.Word)));
            }
            else
            {
                mask |= 1 << _kinds[at].Kind;
            }
        }

        return mask;
    }

    private static void ReadPins(
        TableReader? table, House house, int arrangement, Dictionary<string, int> pins, Dictionary<string, Place> places)
    {
        if (table is null)
            return;
        List<int> roles = [.. PinPlanner.OutputRoles(house), .. PinPlanner.InputRoles(house)];
        Take(table, "heartbeat", "heartbeat");
        if (arrangement == BoardPlan.Chains)
        {
            for (int place = 0; place < BoardPlan.ChainPinCount; place++)
                Take(table, PinNames.OfChainPin(place).Replace(' ', '_').Replace('-', '_'), PinNames.OfChainPin(place));
            table.End();
            return;
        }

        Take(table, "pump", PinNames.OfRole(Role.Of(Role.Pump, 0)));
        Take(table, "heat", PinNames.OfRole(Role.Of(Role.Heat, 0)));
        foreach ((string key, int kind) in _perZone)
        {
            TableReader? inner = roles.Exists(role => Role.Kind(role) == kind) ? table.Table(key) : null;
            foreach (int role in roles.Where(role => Role.Kind(role) == kind))
                Take(inner, house.Zones[Role.Index(role)].Name, PinNames.OfRole(role));
            inner?.End();
        }

        TableReader? contacts = roles.Exists(role => Role.Kind(role) == Role.Contact) ? table.Table("contact") : null;
        foreach (int role in roles.Where(role => Role.Kind(role) == Role.Contact))
            Take(contacts, ContactKey(Role.Index(role)), PinNames.OfRole(role));
        contacts?.End();
        table.End();

        void Take(TableReader? from, string key, string use)
        {
            if (from?.Whole(key, 0, PinGuide.Most - 1) is not { } pin)
                return;
            pins[use] = pin;
            places[use] = from.PlaceOf(key);
        }
    }

    /// <summary>A contact's key in [board.pin.contact]: that under [contacts], and "pump" for the hand switch of the pump.</summary>
    private static string ContactKey(int place) => LogWords.Contact(place).Replace('-', '_');

    private static void Check(TableReader table, House house, Dictionary<string, Place> places)
    {
        HouseBoard board = house.Board;
        if (board.AcKinds.Value != 0 && house.Controller.ScanPeriod.Value.TotalMilliseconds < ShortestAcScanMs)
        {
            table.Error("ac_contacts", $"contacts that switch AC with a scan period of {house.Controller.ScanPeriod.Value.TotalMilliseconds:0} ms",
                $"a scan period of at least {ShortestAcScanMs} ms", "a pulse may come 20 ms after the last, and silence counts after 50 ms");
        }

        if (board.Arrangement is { Value: BoardPlan.Direct } && PinPlanner.Fitting(house) != BoardPlan.Direct)
        {
            table.Error("pins", $"direct pins for {PinPlanner.DirectPins(house)} inputs and outputs",
                $"at most {PinPlanner.UsablePins} of them, at most 15 outputs", "pins = \"chains\" takes seven pins for up to 16 zones");
            return;
        }

        PlanCheck check = PlanCheck.Of(PinPlanner.Of(house));
        for (int i = 0; i < check.Count; i++)
        {
            string subject = check.Subject(i);
            Place place = places.TryGetValue(subject, out Place found) ? found : table.Start;
            table.Mistakes.Error(place, $"{table.Path}.pin", check.Mistake(i), "a pin that can");
        }
    }
}
