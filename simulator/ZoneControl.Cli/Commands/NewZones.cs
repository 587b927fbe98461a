using ZoneControl.Bench.Choosing.NewHouses;

namespace ZoneControl.Cli.Commands;

/// <summary>Asks for the zones, one after the other. Back within a zone asks it anew; back at a name asks the zone before anew.</summary>
internal sealed class NewZones(NewPrompt prompt, string units)
{
    /// <summary>The zones; null when the person wants to go back to what was asked before them.</summary>
    public async Task<IReadOnlyList<ZoneAnswers>?> AskAsync()
    {
        var zones = new List<ZoneAnswers>();
        while (zones.Count < Logic.ControllerSettings.MostZones)
        {
            string? name = await prompt.LineAsync($"Zone {zones.Count + 1}: name", "",
                text => text.Length == 0 && zones.Count > 0 ? null : AnswerCheck.ZoneName(text, zones));
            if (name is { Length: 0 })
                break;
            if (name is not null)
            {
                if (await ZoneAsync(name, zones.LastOrDefault()) is { } zone)
                    zones.Add(zone);
            }
            else if (zones.Count == 0)
            {
                return null;
            }
            else
            {
                zones.RemoveAt(zones.Count - 1);
            }
        }

        return zones;
    }

    private async Task<ZoneAnswers?> ZoneAsync(string name, ZoneAnswers? last)
    {
        string? kind = await prompt.ChoiceAsync(
            $"  Actuator, one of {string.Join(", ", ZoneAnswers.Kinds)}", ZoneAnswers.Kinds, last?.Kind ?? "two-wire");
        if (kind is null)
            return null;
        string usual = last?.Kind == kind ? last.Opening! : CommonValues.Opening(kind);
        string? opening = await prompt.LineAsync(
            "  Opens in, at worst (cold, old, on a low supply)", usual, text => AnswerRange.Opening.Refusal(text, units));
        if (opening is null)
            return null;
        return await prompt.LengthsAsync("  Lengths of its loops, with commas", units, mayBeNone: false) is { } loops
            ? new ZoneAnswers(name, kind, opening, loops)
            : null;
    }
}
