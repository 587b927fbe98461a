using ZoneControl.Bench.Choosing.NewHouses;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Cli.Commands;

/// <summary>Reads the answers that options give.</summary>
internal static class NewAnswers
{
    /// <summary>Kinds of actuator that a zone may name, longest first so that the whole name is taken.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["motorised with switch", "motorised", "two-wire", "four-wire"];

    /// <summary>Contacts that a house may have.</summary>
    public static IReadOnlyList<string> Contacts { get; } = [.. ContactKind.All.Select(kind => kind.Key), "service"];

    /// <summary>The answers; what no option gives keeps its common value.</summary>
    /// <exception cref="BadInputException">An option cannot be used.</exception>
    public static HouseAnswers From(NewSettings s)
    {
        if (s.Units is not (null or "si" or "us"))
            throw new BadInputException(Words.Unknown("system of units", s.Units, ["si", "us"]));
        var usual = new HouseAnswers();
        return usual with
        {
            Name = s.Name ?? usual.Name,
            Units = s.Units ?? usual.Units,
            PumpHead = s.PumpHead,
            PumpFlow = s.PumpFlow,
            PumpPower = s.PumpPower,
            MinimumFlow = s.MinimumFlow,
            MainsLength = s.MainsLength,
            MainsInside = s.MainsInside,
            Tube = s.Tube,
            Zones = [.. s.Zones.Select(Zone)],
            StandingLoops = s.StandingLoops,
            Bypass = s.Bypass,
            Transformer = s.Transformer,
            Contacts = s.Contacts is { } list ? ContactList(list) : [],
            Gated = s.Gated,
            MinimumOpen = s.MinimumOpen,
        };
    }

    /// <summary>A zone as the option writes it: "Bath: four-wire 3 min, 60 m, 55 m".</summary>
    /// <exception cref="BadInputException">It is written otherwise.</exception>
    public static ZoneAnswers Zone(string text)
    {
        string[] named = text.Split(':', 2);
        string[] parts = named.Length == 2 ? [.. named[1].Split(',').Select(part => part.Trim())] : [];
        string first = parts.Length > 0 ? parts[0] : "";
        string? kind = Kinds.FirstOrDefault(known => first.StartsWith(known, StringComparison.OrdinalIgnoreCase));
        if (kind is null || parts.Length < 2 || named[0].Trim().Length == 0)
        {
            throw new BadInputException(
                $"--zone: found \"{text}\", expected a name, a kind of actuator and the lengths of its loops, such as \"Bath: four-wire, 60 m\"; "
                    + $"kinds are {string.Join(", ", Kinds)}");
        }

        string opening = first[kind.Length..].Trim();
        return new ZoneAnswers(named[0].Trim(), kind, opening.Length > 0 ? opening : null, parts[1..]);
    }

    private static string[] ContactList(string list)
    {
        string[] contacts = list.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        foreach (string contact in contacts.Where(contact => !Contacts.Contains(contact)))
            throw new BadInputException(Words.Unknown("contact", contact, Contacts));
        return contacts;
    }
}
