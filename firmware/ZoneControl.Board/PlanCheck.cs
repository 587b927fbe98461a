namespace ZoneControl.Board;

/// <summary>
/// Looks at a pin plan: no pin that cannot do it, none twice, no place twice in a chain. The bench refuses such a plan before
/// anything is generated, the board before it touches a pin.
/// </summary>
public sealed class PlanCheck
{
    private readonly BoardPlan _plan;
    private readonly int[] _users = new int[PinGuide.Most]; // 1 more than the place of each pin's user among the names; 0 for none
    private readonly string[] _names = new string[PinGuide.Most];
    private int _named;
    private readonly string[] _found = new string[64];
    private readonly string[] _subjects = new string[64];

    private PlanCheck(BoardPlan plan) => _plan = plan;

    /// <summary>How many mistakes there are; of more than 64 the others are left out.</summary>
    public int Count { get; private set; }

    /// <summary>A mistake in one sentence without a full stop, by its number from 0: the pin, what it is to do, why not.</summary>
    public string Mistake(int number) => _found[number];

    /// <summary>Whom the mistake is about, as <see cref="PinNames"/> calls it; "" for the plan as a whole.</summary>
    public string Subject(int number) => _subjects[number];

    /// <summary>Looks at a whole plan.</summary>
    public static PlanCheck Of(BoardPlan plan)
    {
        var check = new PlanCheck(plan);
        check.Look();
        return check;
    }

    private void Look()
    {
        BoardPlan p = _plan;
        if (p.InputRoles.Length != p.InputPlaces.Length || p.OutputRoles.Length != p.OutputPlaces.Length)
        {
            Note("", "the plan has not one place for each input and output");
            return;
        }

        Pin(p.HeartbeatPin, true, "heartbeat");
        if (p.Arrangement == BoardPlan.Direct)
        {
            for (int i = 0; i < p.OutputRoles.Length; i++)
                Pin(p.OutputPlaces[i], true, PinNames.OfRole(p.OutputRoles[i]));
            for (int i = 0; i < p.InputRoles.Length; i++)
                Pin(p.InputPlaces[i], false, PinNames.OfRole(p.InputRoles[i]));
            return;
        }

        if (p.ChainPins.Length != BoardPlan.ChainPinCount)
        {
            Note("", "the plan has not one pin for each line of the chains");
            return;
        }

        for (int i = 0; i < BoardPlan.ChainPinCount; i++)
            Pin(p.ChainPins[i], PinNames.ChainPinIsOutput(i), PinNames.OfChainPin(i));
        Places(p.OutputRoles, p.OutputPlaces, 0, p.OutputBits - 1, "output chain");
        // The two ends of the input chain are wired high and low.
        Places(p.InputRoles, p.InputPlaces, 1, p.InputBits - 2, "input chain");
    }

    private void Pin(int pin, bool output, string use)
    {
        int reason = PinGuide.Look(_plan.Module, pin, output);
        if (reason != PinGuide.Fine)
        {
            Note(use, "pin " + pin.ToString() + " cannot be " + use + ": " + PinGuide.Words(reason));
            return;
        }

        // No null is looked for in an array of strings: unoptimised IL found none there on the interpreter's host build.
        int user = _users[pin];
        if (user != 0)
        {
            Note(use, "pin " + pin.ToString() + " cannot be " + use + ": it is " + _names[user - 1] + " already");
            return;
        }

        _names[_named++] = use;
        _users[pin] = _named;
    }

    private void Places(int[] roles, int[] places, int first, int last, string chain)
    {
        for (int i = 0; i < places.Length; i++)
        {
            string use = PinNames.OfRole(roles[i]);
            string place = "place " + places[i].ToString() + " of the " + chain + " cannot be " + use + ": ";
            if (places[i] < first || places[i] > last)
                Note(use, place + "its places go from " + first.ToString() + " to " + last.ToString());
            for (int j = 0; j < i; j++)
            {
                if (places[j] == places[i])
                    Note(use, place + "it is " + PinNames.OfRole(roles[j]) + " already");
            }
        }
    }

    private void Note(string subject, string mistake)
    {
        if (Count == _found.Length)
            return;
        _subjects[Count] = subject;
        _found[Count++] = mistake;
    }
}
