using ZoneControl.Bench.Houses;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>What the world may do between two scans: nothing, or one thing.</summary>
public enum MoveKind
{
    /// <summary>Nothing; a scan period passes.</summary>
    Wait,

    /// <summary>A zone's thermostat asks or ceases to.</summary>
    Call,

    /// <summary>A zone's end switch makes or opens, whatever its valve does.</summary>
    EndSwitch,

    /// <summary>A panel energises a gated zone's valve or lets it go.</summary>
    Sense,

    /// <summary>A hand switch of a zone's valve.</summary>
    Hand,

    /// <summary>A contact of the house; the number is its place in <see cref="Logic.Contact"/>.</summary>
    Contact,

    /// <summary>Power is cut and comes back.</summary>
    Power,

    /// <summary>The pump has not run for the exercise interval.</summary>
    ExerciseDue,

    /// <summary>The controller's clock jumps back.</summary>
    ClockBack,

    /// <summary>The controller's clock stands still for a scan.</summary>
    ClockStill,

    /// <summary>A scan comes later than announced by more than the stall limit.</summary>
    ClockLate,
}

/// <summary>One move.</summary>
/// <param name="Kind">What moves.</param>
/// <param name="Number">Which one: a zone or a contact's place, from 0; 0 where there is but one.</param>
public readonly record struct Move(MoveKind Kind, int Number = 0)
{
    /// <summary>As a small number, for trails.</summary>
    public ushort Code => (ushort)(((int)Kind << 4) | Number);

    /// <summary>The move of a <see cref="Code"/>.</summary>
    public static Move Of(ushort code) => new((MoveKind)(code >> 4), code & 15);

    /// <summary>Everything that may happen in a house: only what is fitted, one thing a scan.</summary>
    public static IReadOnlyList<Move> All(ControllerSettings house)
    {
        var moves = new List<Move> { new(MoveKind.Wait) };
        AddZones(moves, MoveKind.Call, house.DrivenZones);
        AddZones(moves, MoveKind.Sense, house.GatedZones);
        AddZones(moves, MoveKind.EndSwitch, house.SwitchedZones);
        for (int place = 0; place < Logic.Contact.Count; place++)
        {
            if (house.Has(1 << place))
                moves.Add(new Move(MoveKind.Contact, place));
        }

        if (house.Has(Logic.Contact.ServicePump))
            AddZones(moves, MoveKind.Hand, house.DrivenZones);
        if (house.ExerciseIntervalS > 0)
            moves.Add(new Move(MoveKind.ExerciseDue));
        moves.Add(new Move(MoveKind.Power));
        moves.Add(new Move(MoveKind.ClockBack));
        return moves;
    }

    /// <summary>This move in words, with the names of the house; "" for waiting.</summary>
    public string InWords(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return Kind switch
        {
            MoveKind.Call => $"thermostat of {house.Zones[Number].Label}",
            MoveKind.EndSwitch => $"end switch of {house.Zones[Number].Label}",
            MoveKind.Sense => $"sensed valve of {house.Zones[Number].Label}",
            MoveKind.Hand => $"hand switch of {house.Zones[Number].Label}",
            _ => string.Join(", ", InWords([this], house)),
        };
    }

    /// <summary>The kinds in words, for people who ask what was tried.</summary>
    public static IReadOnlyList<string> InWords(IEnumerable<Move> moves, House house)
    {
        ArgumentNullException.ThrowIfNull(moves);
        var words = new List<string>();
        foreach (IGrouping<MoveKind, Move> group in moves.GroupBy(move => move.Kind))
        {
            int count = group.Count();
            switch (group.Key)
            {
                case MoveKind.Call: words.Add(Counted(count, "thermostat")); break;
                case MoveKind.Sense: words.Add(Counted(count, "sensed valve") + " of a panel"); break;
                case MoveKind.EndSwitch: words.Add(Counted(count, "end switch", "end switches") + ", healthy or lying"); break;
                case MoveKind.Hand: words.Add("hand switches"); break;
                case MoveKind.Contact: words.AddRange(group.Select(move => ContactWord(1 << move.Number))); break;
                case MoveKind.Power: words.Add("power cut"); break;
                case MoveKind.ExerciseDue: words.Add("exercise falling due"); break;
                case MoveKind.ClockBack: words.Add("clock that jumps back"); break;
                case MoveKind.ClockStill: words.Add("clock that stands still"); break;
                case MoveKind.ClockLate: words.Add("scan that comes too late"); break;
                default: break;
            }
        }

        return words;
    }

    private static string ContactWord(int contact) =>
        contact == Logic.Contact.ServicePump ? "pump by hand" : ContactKind.Of(contact).Label;

    private static string Counted(int count, string one, string? many = null) =>
        count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";

    private static void AddZones(List<Move> moves, MoveKind kind, int zones)
    {
        for (int zone = 0; zone < ControllerSettings.MostZones; zone++)
        {
            if ((zones & (1 << zone)) != 0)
                moves.Add(new Move(kind, zone));
        }
    }
}
