using ZoneControl.Bench.Choosing.NewHouses;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Cli.Commands;

/// <summary>Reads the answers that options give.</summary>
internal static class NewAnswers
{
    private const string ZoneExample = "such as \"Bath: four-wire, 60 m\"";

    /// <summary>Contacts that a house may have.</summary>
    public static IReadOnlyList<string> Contacts { get; } = [.. ContactKind.All.Select(kind => kind.Key), "service"];

    /// <summary>The answers; what no option gives keeps its common value.</summary>
    /// <param name="s">The options.</param>
    /// <param name="mistakes">Every option that cannot be used is noted here, one line each.</param>
    public static HouseAnswers From(NewSettings s, List<string> mistakes)
    {
        var usual = new HouseAnswers();
        if (s.Units is not (null or "si" or "us"))
            mistakes.Add($"{Asked.Units.Option}: {AnswerCheck.NotAmong(s.Units, ["si", "us"])}");
        var answers = usual with
        {
            Name = s.Name ?? usual.Name,
            Units = s.Units is "us" ? "us" : "si",
            PumpHead = s.PumpHead,
            PumpFlow = s.PumpFlow,
            PumpPower = s.PumpPower,
            MinimumFlow = s.MinimumFlow,
            MainsLength = s.MainsLength,
            MainsInside = s.MainsInside,
            Tube = s.Tube,
            Zones = [.. s.Zones.Select(text => Zone(text, mistakes)).OfType<ZoneAnswers>()],
            StandingLoops = s.StandingLoops,
            Bypass = s.Bypass,
            Transformer = s.Transformer,
            Contacts = s.Contacts is { } list ? ContactList(list, mistakes) : [],
            Gated = s.Gated,
            MinimumOpen = s.MinimumOpen,
        };
        mistakes.AddRange(AnswerCheck.Of(answers).Select(mistake => $"{mistake.Question.Option}: {mistake.Says}"));
        return answers;
    }

    /// <summary>A mistake that only the file's reader finds, in the words of the question that it answers.</summary>
    public static string InWords(FileMistake mistake)
    {
        string where = Asked.OfKey(mistake.Key) is { } asked ? asked.ToString() : mistake.Key;
        string hint = mistake.Hint.Length > 0 ? $" ({mistake.Hint})" : "";
        return $"{where}: found {mistake.Found}, expected {mistake.Expected}{hint}";
    }

    /// <summary>A zone as the option writes it, "Bath: four-wire 3 min, 60 m, 55 m"; null where it is not even parted so.</summary>
    private static ZoneAnswers? Zone(string text, List<string> mistakes)
    {
        string[] named = text.Split(':', 2);
        if (named.Length < 2)
        {
            mistakes.Add($"{Asked.Zones.Option}: found \"{text}\", expected a colon after the zone's name, {ZoneExample}");
            return null;
        }

        string[] parts = [.. named[1].Split(',').Select(part => part.Trim())];
        // The longest kind first, so that "motorised with switch" is not taken for "motorised" and a time.
        string? kind = ZoneAnswers.Kinds.OrderByDescending(known => known.Length)
            .FirstOrDefault(known => parts[0].StartsWith(known, StringComparison.OrdinalIgnoreCase));
        string opening = kind is null ? "" : parts[0][kind.Length..].Trim();
        return new ZoneAnswers(named[0].Trim(), kind ?? parts[0], opening.Length > 0 ? opening : null, parts[1..]);
    }

    private static string[] ContactList(string list, List<string> mistakes)
    {
        string[] contacts = list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        mistakes.AddRange(contacts.Where(contact => !Contacts.Contains(contact))
            .Select(contact => $"{Asked.Contacts.Option}: {AnswerCheck.NotAmong(contact, Contacts)}"));
        return contacts;
    }
}
