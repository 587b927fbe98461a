using ZoneControl.Bench.Houses;
using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>The terminal table of a plan: what is screwed in where.</summary>
internal static class TerminalTable
{
    // 74HC165: H is at the output before the first clock, then G and so on. 74HC595: A is the stage nearest its data input.
    private const string InputLetters = "HGFEDCBA";
    private const string OutputLetters = "ABCDEFGH";

    public static IReadOnlyList<TerminalLine> Of(House house, BoardPlan plan)
    {
        bool chains = plan.Arrangement == BoardPlan.Chains;
        List<TerminalLine> lines = [];
        for (int i = 0; i < plan.OutputRoles.Length; i++)
        {
            int place = plan.OutputPlaces[i];
            string at = chains ? $"595 no. {(place / 8) + 1}, Q{OutputLetters[place % 8]}" : $"GPIO {place}";
            lines.Add(Line($"O{i + 1}", plan.OutputRoles[i], at));
        }

        for (int i = 0; i < plan.InputRoles.Length; i++)
            lines.Add(Line($"I{i + 1}", plan.InputRoles[i], chains ? Input(plan.InputPlaces[i]) : $"GPIO {plan.InputPlaces[i]}"));
        if (chains)
        {
            lines.Add(new TerminalLine("-", "wired to 3.3 V", Input(0), "shows the chain is alive"));
            lines.Add(new TerminalLine("-", "wired to ground", Input(plan.InputBits - 1), "shows the chain is alive"));
        }

        return lines;

        TerminalLine Line(string terminal, int role, string at) =>
            new(terminal, RoleWords.Name(house, role), at, RoleWords.Meaning(house, role));
    }

    private static string Input(int place) => $"165 no. {(place / 8) + 1}, {InputLetters[place % 8]}";
}
