using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Choosing.NewHouses;

/// <summary>One thing wrong with the answers.</summary>
/// <param name="Question">Which question.</param>
/// <param name="Says">What was found and what is expected.</param>
public sealed record AnswerMistake(Asked Question, string Says);

/// <summary>Judges answers before a file is made of them, so that people read of their answers and not of lines of a file.</summary>
public static class AnswerCheck
{
    /// <summary>Longest name of a zone, characters: what the house file takes.</summary>
    public const int LongestZoneName = 40;

    /// <summary>Longest name of a house, characters.</summary>
    public const int LongestHouseName = 60;

    /// <summary>Everything that is wrong with the answers, in the order of the questions.</summary>
    public static IReadOnlyList<AnswerMistake> Of(HouseAnswers a)
    {
        ArgumentNullException.ThrowIfNull(a);
        var mistakes = new List<AnswerMistake>();
        void Note(Asked question, string? refusal)
        {
            if (refusal is not null)
                mistakes.Add(new AnswerMistake(question, refusal));
        }

        void Measured(Asked question, string? text, AnswerRange range) => Note(question, text is null ? null : range.Refusal(text, a.Units));
        Note(Asked.Name, Name(a.Name, LongestHouseName));
        Measured(Asked.PumpHead, a.PumpHead, AnswerRange.PumpHead);
        Measured(Asked.PumpFlow, a.PumpFlow, AnswerRange.PumpFlow);
        Measured(Asked.PumpPower, a.PumpPower, AnswerRange.PumpPower);
        Note(Asked.MinimumFlow, a.MinimumFlow is { } least ? MinimumFlow(a, least) : null);
        Measured(Asked.MainsLength, a.MainsLength, AnswerRange.MainsLength);
        Measured(Asked.MainsInside, a.MainsInside, AnswerRange.MainsInside);
        Note(Asked.Tube, a.Tube is { } tube ? Tube(tube) : null);
        for (int i = 0; i < a.Zones.Count; i++)
        {
            string zone = a.Zones[i].Name.Length > 0 ? $"{a.Zones[i].Name}: " : "";
            foreach (string refusal in Zone(a.Zones[i], [.. a.Zones.Take(i)], a.Units))
                Note(Asked.Zones, zone + refusal);
        }

        foreach (string loop in a.StandingLoops)
            Measured(Asked.StandingLoops, loop, AnswerRange.Loop);
        Note(Asked.Bypass, a.Bypass is { } opens ? Bypass(a, opens) : null);
        Measured(Asked.Transformer, a.Transformer, AnswerRange.Transformer);
        return mistakes;
    }

    /// <summary>Why a name will not do; null where it will.</summary>
    public static string? Name(string name, int longest)
    {
        ArgumentNullException.ThrowIfNull(name);
        return name.Trim().Length == 0 ? $"found no name, expected one of 1 to {longest} characters"
            : name.Trim().Length > longest ? $"found {name.Trim().Length} characters, expected at most {longest}"
            : NodeReader.IsText(name, int.MaxValue, severalLines: false) ? null
            : $"found {Words.Quote(name)}, expected text without control characters";
    }

    /// <summary>Why a zone's name will not do beside others; null where it will.</summary>
    public static string? ZoneName(string name, IReadOnlyList<ZoneAnswers> others) =>
        Name(name, LongestZoneName)
        ?? (others.FirstOrDefault(other => other.Name.Equals(name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } same
            ? $"found \"{name.Trim()}\", which is a zone already ({same.Kind}, {string.Join(", ", same.Loops)}); expected another name, such as "
                + $"\"{name.Trim()} 2\""
            : null);

    /// <summary>Why a tube will not do; null where it will.</summary>
    public static string? Tube(string tube)
    {
        string[] known = [.. TubeSizes.All.Select(size => size.Word)];
        return known.Contains(tube) ? null : NotAmong(tube, known);
    }

    /// <summary>Why a minimum flow will not do; null where it will.</summary>
    public static string? MinimumFlow(HouseAnswers a, string least)
    {
        ArgumentNullException.ThrowIfNull(a);
        string most = a.PumpFlow ?? CommonValues.Of(a.Units).PumpFlow;
        return AnswerRange.MinimumFlow.Refusal(least, a.Units)
            ?? (AnswerRange.PumpFlow.Refusal(most, a.Units) is null && AnswerRange.MinimumFlow.Value(least) >= AnswerRange.PumpFlow.Value(most)
                ? $"found {Words.Quote(least)}, expected less than the pump's most flow, {most}"
                : null);
    }

    /// <summary>Why a bypass's opening pressure will not do; null where it will.</summary>
    public static string? Bypass(HouseAnswers a, string opens)
    {
        ArgumentNullException.ThrowIfNull(a);
        string head = a.PumpHead ?? CommonValues.Of(a.Units).PumpHead;
        if (AnswerRange.Bypass.Refusal(opens, a.Units) is { } refusal)
            return refusal;
        if (AnswerRange.PumpHead.Refusal(head, a.Units) is not null || AnswerRange.PumpHead.Value(head) is not { } metres
            || AnswerRange.Bypass.Value($"{metres:0.###} m") is not { } most)
            return null;
        DisplayUnits units = a.Units == "us" ? DisplayUnits.Us : DisplayUnits.Si;
        return AnswerRange.Bypass.Value(opens) >= most
            ? $"found {Words.Quote(opens)}, expected less than {Choosing.Measured.Pressure(most, units)}, the most that this pump gives; a safety "
                + "relief valve, which opens far above that, is not meant"
            : null;
    }

    /// <summary>Everything that is wrong with a zone beside others.</summary>
    public static IEnumerable<string> Zone(ZoneAnswers zone, IReadOnlyList<ZoneAnswers> others, string units)
    {
        ArgumentNullException.ThrowIfNull(zone);
        if (ZoneName(zone.Name, others) is { } name)
            yield return name;
        if (!ZoneAnswers.Kinds.Contains(zone.Kind))
            yield return NotAmong(zone.Kind, ZoneAnswers.Kinds, "the kind of actuator ");
        else if (zone.Opening is { } opening && AnswerRange.Opening.Refusal(opening, units) is { } slow)
            yield return slow;
        if (zone.Loops.Count == 0)
            yield return $"found no loop, expected at least one length such as \"{AnswerRange.Loop.ExampleIn(units)}\"";
        foreach (string loop in zone.Loops)
        {
            if (AnswerRange.Loop.Refusal(loop, units) is { } refusal)
                yield return refusal;
        }
    }

    /// <summary>A word that is none of those known.</summary>
    public static string NotAmong(string word, IReadOnlyList<string> known, string what = "")
    {
        string meant = Words.DidYouMean(word, known);
        return $"found {what}{Words.Quote(word)}, expected one of {string.Join(", ", known)}{(meant.Length > 0 ? $" ({meant})" : "")}";
    }
}
