using Spectre.Console;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Seasons;

namespace ZoneControl.Cli.Commands;

/// <summary>
/// A person at the terminal who looks at the manifold during a commissioning run: exchanged wires and exchanged end switches look
/// alike to contacts, and two-wire valves report nothing, so what moved and what got warm is asked.
/// </summary>
/// <param name="house">The house, for the zones' names.</param>
/// <param name="console">The terminal.</param>
/// <param name="cancel">Ends the wait for an answer at once.</param>
internal sealed class AskedPerson(House house, IAnsiConsole console, CancellationToken cancel) : IWitness
{
    private const string None = "none";
    private const string Unsure = "unsure";

    private readonly Dictionary<int, FlowSighting> _flows = [];
    private bool _begun;

    /// <summary>What is said before the first question.</summary>
    public void Greet() => console.WriteLine(
        $"Answer with a zone's name or several with commas ({string.Join(", ", house.Zones.Select(zone => zone.Name))}), {None}, or {Unsure}. "
        + $"Enter is {Unsure}.");

    /// <inheritdoc/>
    public void Begin(int zone, long ms)
    {
    }

    /// <inheritdoc/>
    public void Watch(long ms, in Frame shown)
    {
    }

    /// <inheritdoc/>
    public StrokeSighting Stroke(int zone)
    {
        string label = house.Zones[zone].Label;
        int? moved = Zones($"{label} was told to open. Whose valve stem moved?");
        int? warmed = Zones($"{label}: whose actuator got warm or hummed?");
        return new StrokeSighting(moved, warmed, null, YesNo($"{label}: did the pump run?"));
    }

    /// <inheritdoc/>
    public FlowSighting Flow(int zones)
    {
        // The run looks at every scan; a person is asked once for each set.
        if (!_flows.TryGetValue(zones, out FlowSighting? seen))
        {
            string labels = house.ZoneLabels(zones);
            bool? heard = YesNo($"The pump was told to run with {labels} open. Does it run?");
            seen = new FlowSighting(heard, Zones($"{labels}: whose loops get warm or whose flow glasses move?"));
            _flows.Add(zones, seen);
        }

        return seen;
    }

    /// <summary>Asked once, at rest; later each stroke and each set asks for itself.</summary>
    public bool? PumpHeard()
    {
        if (_begun)
            return null;
        _begun = true;
        return YesNo("Nothing is told to run yet. Does the pump run?");
    }

    private int? Zones(string question)
    {
        string answer = Line(question, text => Read(text, out _));
        Read(answer, out int? mask);
        return mask;
    }

    private bool? YesNo(string question) => Line(
        $"{question} (yes, no, {Unsure})",
        text => text is "yes" or "y" or "no" or "n" or Unsure ? null : Words.Unknown("answer", text, ["yes", "no", Unsure])) switch
    {
        "yes" or "y" => true,
        "no" or "n" => false,
        _ => null,
    };

    private string Line(string question, Func<string, string?> refusal)
    {
        while (true)
        {
            string typed = new TextPrompt<string>(Markup.Escape(question)) { AllowEmpty = true }.ShowAsync(console, cancel).GetAwaiter().GetResult();
            string answer = typed.Trim().Length == 0 ? Unsure : typed.Trim().ToLowerInvariant();
            if (refusal(answer) is not { } why)
                return answer;
            console.WriteLine("  " + why);
        }
    }

    /// <summary>Why an answer will not do; null where it will, with one bit a zone, or null for unsure.</summary>
    private string? Read(string answer, out int? mask)
    {
        mask = answer == Unsure ? null : 0;
        if (answer is Unsure or None)
            return null;
        foreach (string name in answer.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            int zone = house.ZoneIndex(name);
            for (int i = 0; zone < 0 && i < house.Zones.Count; i++)
                zone = house.Zones[i].Label.Equals(name, StringComparison.OrdinalIgnoreCase) ? i : -1;
            if (zone < 0)
                return Words.Unknown("zone", name, [.. house.Zones.Select(z => z.Name), None, Unsure]);
            mask |= 1 << zone;
        }

        return null;
    }
}
