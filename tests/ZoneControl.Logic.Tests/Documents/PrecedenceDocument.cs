using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ZoneControl.Logic.Tests;

/// <summary>Who wins and what is looked at in which order, read off the controller: from contests, its compiled scan and its lists.</summary>
internal sealed partial class PrecedenceDocument
{
    private const string Logic = "ZoneControl.Logic.";

    private readonly XDocument _comments = XDocument.Load(Path.Combine(AppContext.BaseDirectory, Logic + "xml"));

    /// <summary>The winners above the losers, as few ranks as the contests allow; those of one rank never met.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Ranks(IEnumerable<(string Winner, string Loser)> fights)
    {
        var above = fights.ToLookup(fight => fight.Loser, fight => fight.Winner);
        string[] names = [.. fights.SelectMany(fight => (string[])[fight.Winner, fight.Loser]).Distinct()];
        var ranks = new List<IReadOnlyList<string>>();
        var placed = new HashSet<string>();
        while (placed.Count < names.Length)
        {
            string[] next = [.. names.Where(name => !placed.Contains(name) && above[name].All(placed.Contains))];
            Assert.NotEmpty(next); // else somebody would win over who wins over him
            ranks.Add(next);
            placed.UnionWith(next);
        }

        return ranks;
    }

    public string Write()
    {
        var text = new StringBuilder();
        text.Append("# Who wins, and what is looked at first\n\nMade by `PrecedenceTests` from the controller itself: ");
        text.Append("`WRITE_EVIDENCE=1` writes it anew. Do not edit.\n\n## Precedence\n\nVetoes hold always: ");
        text.Append(string.Join(", ", Contests.Vetoes.Select(contest => contest.Fight().Winner))).Append(". Then, who wins:\n\n");
        text.Append(string.Join(" > ", Ranks(Contests.Ranks.Select(contest => contest.Fight())).Select(rank => string.Join(", ", rank))));
        text.Append("\n\nEach sign is a scene that the controller was put into; those with a comma between them never want ");
        text.Append("different things.\n\n| when | wins | over |\n| --- | --- | --- |\n");
        foreach (Contest contest in Contests.Vetoes.Concat(Contests.Ranks))
        {
            (string winner, string loser) = contest.Fight();
            text.Append($"| {contest.Scene} | {winner} | {loser} |\n");
        }

        text.Append("\n## The order inside a scan\n\nThe calls in the compiled `ZoneController.Decide`, and the rules that each mechanism names.\n\n");
        foreach (string call in Calls())
            text.Append($"1. `{call}`{Named(RulesOf(call.Split('.')[0]))}\n");
        text.Append("\n## Who asks for the pump\n\nWho comes first is asked for.\n\n");
        Append(text, Enum.GetValues<AskedBy>().Where(by => by != AskedBy.Nobody).OrderDescending().Select(by => $"{nameof(AskedBy)}.{by}"));
        text.Append("\n## Why the pump is held\n\nThe published reason is the first that is true.\n\n");
        Append(text, Enum.GetValues<HoldReason>().Where(reason => reason != HoldReason.None).Select(reason => $"{nameof(HoldReason)}.{reason}"));
        text.Append("\n## From wanted to on\n\nThe conditions of the pump, then those of heat demand, as the controller lists them.\n\n");
        Append(text, Listed().Select(condition => $"{nameof(Condition)}.{condition}"));
        return text.ToString();
    }

    private void Append(StringBuilder text, IEnumerable<string> fields)
    {
        foreach (string field in fields)
            text.Append($"1. `{field[(field.IndexOf('.', StringComparison.Ordinal) + 1)..]}`: {Summary($"F:{Logic}{field}")}\n");
    }

    private static IEnumerable<Condition> Listed()
    {
        var controller = new ZoneController(House.OfZones(1).Settings());
        var list = new ConditionList();
        controller.ExplainPump(list);
        Condition[] pump = list.Which[..list.Count];
        controller.ExplainHeat(list);
        return pump.Concat(list.Which[..list.Count]);
    }

    private static IEnumerable<string> Calls()
    {
        using var logic = LogicAssembly.OfDesktop();
        MethodDefinitionHandle decide = logic.Methods.Single(method => logic.NameOf(method) == "ZoneController.Decide");
        return
        [
            .. logic.Body(decide).Where(i => i.Token is { } token && MetadataTokens.EntityHandle(token).Kind == HandleKind.MethodDefinition)
                .Select(i => logic.NameOf((MethodDefinitionHandle)MetadataTokens.EntityHandle(i.Token!.Value)))
                .Where(name => name.EndsWith(".Step", StringComparison.Ordinal) || Mechanism().IsMatch(name))
                .Distinct(),
        ];
    }

    private IEnumerable<string> RulesOf(string type) =>
        Rule().Matches(Summary($"T:{Logic}{type}")).Select(match => match.Value).Distinct();

    private static string Named(IEnumerable<string> rules) => rules.Any() ? ": " + string.Join(", ", rules) : "";

    private string Summary(string member)
    {
        XElement found = _comments.Descendants("member").Single(m => (string?)m.Attribute("name") == member);
        return string.Join(' ', found.Element("summary")!.Value.Split(' ', '\n').Where(word => word.Trim() != "").Select(word => word.Trim()));
    }

    [GeneratedRegex(@"^(Asking|HoldReasons)\.")]
    private static partial Regex Mechanism();

    [GeneratedRegex("(PUMP|OPEN|VALVE|HEAT|SEASON|ALARM|BOOT|TIME|ANSWER)-[A-Z-]+|FREEZE|PRIORITY|SERVICE|GATE")]
    private static partial Regex Rule();
}
