using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>
/// The contacts of a house as they stand, asserted or not, before polarity: what moves change and scans read. Only ints, so
/// that it can be part of a searched state.
/// </summary>
internal struct World
{
    /// <summary>How many ints <see cref="Save"/> writes.</summary>
    public const int Length = 7;

    public int Calls;
    public int EndSwitches;
    public int Senses;
    public int Hands;
    public int Contacts;

    /// <summary>Scans in a row at one time with the pump on, twice, and 1 more when the pump is on; 0 where clocks do not stand.</summary>
    public int Stood;

    /// <summary>1 from a run of the pump or a power-up until every rest of the pump has passed: no exercise falls due as soon.</summary>
    public int RanLately;

    /// <summary>As runs begin: no calls, everything at rest, the actuators' supply on.</summary>
    public static World AtRest(ControllerSettings house) => new() { Contacts = house.FittedContacts & Contact.Supply };

    /// <summary>Makes a move that is a contact's; others change nothing here.</summary>
    public void Make(Move move)
    {
        int bit = 1 << move.Number;
        switch (move.Kind)
        {
            case MoveKind.Call: Calls ^= bit; break;
            case MoveKind.EndSwitch: EndSwitches ^= bit; break;
            case MoveKind.Sense: Senses ^= bit; break;
            case MoveKind.Hand: Hands ^= bit; break;
            case MoveKind.Contact: Contacts ^= bit; break;
            default: break;
        }
    }

    /// <summary>The contacts as the controller's terminals see them.</summary>
    public readonly void Show(ControllerSettings house, InputImage image)
    {
        image.Calls = (Calls ^ house.InvertedCalls) & house.DrivenZones;
        image.EndSwitches = (EndSwitches ^ house.InvertedSwitches) & house.SwitchedZones;
        image.Senses = (Senses ^ house.InvertedSenses) & house.GatedZones;
        image.ServiceValves = Hands & house.DrivenZones;
        image.Contacts = (Contacts ^ (house.InvertedContacts | Contact.AssertedOpen)) & house.FittedContacts;
    }

    public readonly void Save(int[] to)
    {
        to[0] = Calls;
        to[1] = EndSwitches;
        to[2] = Senses;
        to[3] = Hands;
        to[4] = Contacts;
        to[5] = Stood;
        to[6] = RanLately;
    }

    public static World Load(int[] from) => new()
    {
        Calls = from[0],
        EndSwitches = from[1],
        Senses = from[2],
        Hands = from[3],
        Contacts = from[4],
        Stood = from[5],
        RanLately = from[6],
    };
}
