using ZoneControl.Bench.Rules;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>Builds the controller with a protection taken away. The house that it is judged by stays as it is.</summary>
public static class Protections
{
    /// <summary>The words of the command line, with what they take away.</summary>
    public static IReadOnlyList<(string Word, Protection Protection)> Words { get; } =
    [
        ("proof", Protection.Proof), ("companion", Protection.Companion), ("handover", Protection.Handover),
        ("delay", Protection.Delay),
    ];

    /// <summary>
    /// Rules whose breach harms: what a controller says of itself is wrong anyway when a protection is missing, and would be
    /// found first.
    /// </summary>
    public static IReadOnlySet<string> Harm { get; } = new HashSet<string>
    {
        "PUMP-PROOF", "PUMP-DELAY", "PUMP-ORDER", "PUMP-TRIP", "OPEN-HANDOVER", "HEAT-FLOW",
    };

    /// <summary>Builds it.</summary>
    /// <param name="settings">The house's settings; its own from now on.</param>
    /// <param name="without">What to take away.</param>
    public static IProvable Build(ControllerSettings settings, Protection without)
    {
        ArgumentNullException.ThrowIfNull(settings);
        switch (without)
        {
            case Protection.Proof:
                settings.SwitchedZones = settings.InvertedSwitches = 0;
                Array.Fill(settings.OpeningMs, 1);
                Array.Clear(settings.SwitchMinMs);
                Array.Clear(settings.InrushMs);
                settings.TransformerDeciVa = 0;
                break;
            case Protection.Companion:
                settings.CompanionOrder = [];
                settings.MinimumOpen = 1;
                break;
            case Protection.Delay:
                settings.PumpStartDelayMs = 0;
                break;
            case Protection.Handover:
                return new WithoutHandover(settings);
            default:
                break;
        }

        return new LibrarySubject(settings);
    }

    /// <summary>What is missing, in words; "" for nothing.</summary>
    public static string InWords(Protection without) => without switch
    {
        Protection.Proof => "without proof: valves count as open as soon as they are energised",
        Protection.Companion => "without companions: a calling zone opens alone, and any open zone is enough for the pump",
        Protection.Handover => "without handover: a zone is released the moment its call ends",
        Protection.Delay => "without the start delay",
        _ => "",
    };

    /// <summary>Releases what neither calls nor is a companion, however little is proven without it.</summary>
    private sealed class WithoutHandover(ControllerSettings settings) : IProvable
    {
        private readonly LibrarySubject _whole = new(settings);

        public string Name => "without handover";

        public int StateLength => _whole.StateLength;

        public int IdlePlace => _whole.IdlePlace;

        public void PowerUp() => _whole.PowerUp();

        public void Save(int[] state) => _whole.Save(state);

        public void Load(int[] state, long nowMs) => _whole.Load(state, nowMs);

        public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
        {
            _whole.Scan(nowMs, inputs, outputs);
            int asked = (outputs.AcceptedCalls | outputs.AcceptedSenses) & ~outputs.LatchedValves;
            const int Others = Contact.Lockout | Contact.Freeze | Contact.Priority | Contact.ServicePump;
            if (!outputs.Pump || asked == 0 || (outputs.AcceptedContacts & Others) != 0 || outputs.AcceptedHands != 0)
                return;
            int sick = outputs.LateValves | outputs.LatchedValves | outputs.StuckSwitches;
            CompanionPlan plan = CompanionPlan.For(settings, asked, sick, outputs.LatchedValves);
            outputs.Valves &= asked | plan.Companions | plan.LateCompanions;
        }
    }
}
