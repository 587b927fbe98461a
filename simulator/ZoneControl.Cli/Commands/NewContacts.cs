using ZoneControl.Bench.Houses;
using ZoneControl.Logic;

namespace ZoneControl.Cli.Commands;

/// <summary>Asks which contacts are fitted, and says what each is for.</summary>
internal sealed class NewContacts(NewPrompt prompt)
{
    private const string Service = "service";
    private const string HandSwitches = "hand switches";

    /// <summary>Keys of the fitted ones; null when the person wants to go back to what was asked before them.</summary>
    public async Task<IReadOnlyList<string>?> AskAsync()
    {
        (string Key, string Ask, bool Common)[] all =
        [
            .. ContactKind.All.Select(kind => (kind.Key, $"{kind.Label} ({PurposeOf(kind)})", kind.Key is "season" or "reset")),
            (Service, $"{HandSwitches} (one for each zone's valves, one for the pump, to try them by hand)", true),
        ];
        var fitted = new bool[all.Length];
        for (int i = 0; i < all.Length;)
        {
            bool? yes = await prompt.YesAsync("  " + all[i].Ask, all[i].Common);
            if (yes is null && i == 0)
                return null;
            if (yes is { } so)
                fitted[i++] = so;
            else
                i--;
        }

        return [.. all.Where((_, i) => fitted[i]).Select(contact => contact.Key)];
    }

    /// <summary>The fitted ones in the words in which they were asked for.</summary>
    public static string InWords(IReadOnlyList<string> fitted) =>
        fitted.Count > 0 ? string.Join(", ", fitted.Select(key => key == Service ? HandSwitches : ContactKind.All.First(kind => kind.Key == key).Label)) : "none";

    /// <summary>What a contact is for, in a few words of the house.</summary>
    private static string PurposeOf(ContactKind kind) => kind.Contact switch
    {
        Contact.Lockout => "summer: calls for heat do nothing",
        Contact.Flow => "sees that water moves while the pump runs",
        Contact.Limit => "thermostat on the supply pipe, opens when the water is too hot for the floor",
        Contact.Freeze => "frost thermostat: opens all zones and allows heat even in summer lockout",
        Contact.Priority => "hot water is being made first, the floor waits",
        Contact.Reset => "a person has looked: what is latched may start again",
        Contact.Supply => "tells whether the actuators have their 24 V",
        _ => $"\"{kind.Asserted}\" or \"{kind.Resting}\"",
    };
}
