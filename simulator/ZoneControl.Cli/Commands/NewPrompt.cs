using Spectre.Console;
using ZoneControl.Bench.Choosing.NewHouses;

namespace ZoneControl.Cli.Commands;

/// <summary>Reads one answer at a time; what will not do is told and asked again. Null is "back", which is typed as &lt;.</summary>
/// <param name="console">A terminal with a person at it.</param>
/// <param name="cancel">Ends the wait for an answer at once.</param>
internal sealed class NewPrompt(IAnsiConsole console, CancellationToken cancel)
{
    private const string Back = "<";

    /// <summary>A line.</summary>
    /// <param name="ask">What is asked.</param>
    /// <param name="common">What Enter stands for; "" where it is an empty answer, which may not do.</param>
    /// <param name="judge">Why an answer will not do; null where it will.</param>
    public async Task<string?> LineAsync(string ask, string common, Func<string, string?> judge)
    {
        while (true)
        {
            var prompt = new TextPrompt<string>(Markup.Escape(ask)) { AllowEmpty = true };
            if (common.Length > 0)
                prompt.DefaultValue(common);
            string text;
            try
            {
                text = (await prompt.ShowAsync(console, cancel)).Trim();
            }
            catch (OperationCanceledException)
            {
                console.WriteLine(); // the line of the question is still open
                throw;
            }

            if (text == Back)
                return null;
            if (judge(text) is not { } refusal)
                return text;
            Say($"  {char.ToUpperInvariant(refusal[0])}{refusal[1..]}.");
        }
    }

    /// <summary>Writes a line.</summary>
    public void Say(string text) => console.WriteLine(text);

    /// <summary>One of some words.</summary>
    public Task<string?> ChoiceAsync(string ask, IReadOnlyList<string> choices, string common) =>
        LineAsync(ask, common, text => choices.Contains(text) ? null : AnswerCheck.NotAmong(text, choices));

    /// <summary>Yes or no.</summary>
    public async Task<bool?> YesAsync(string ask, bool common)
    {
        string? text = await LineAsync($"{ask}? (y or n)", common ? "y" : "n",
            typed => IsYes(typed) || IsNo(typed) ? null : $"found \"{typed}\", expected y or n");
        return text is null ? null : IsYes(text);
    }

    /// <summary>Lengths of loops, with commas.</summary>
    public async Task<string[]?> LengthsAsync(string ask, IReadOnlyList<string> now, string units, bool mayBeNone)
    {
        AnswerRange range = AnswerRange.Loop;
        string? text = await LineAsync(ask, string.Join(", ", now), typed =>
            Split(typed).Select(length => range.Refusal(length, units)).FirstOrDefault(refusal => refusal is not null)
            ?? (mayBeNone || Split(typed).Length > 0 ? null : range.Refusal(typed, units)));
        return text is null ? null : Split(text);
    }

    private static bool IsYes(string text) => text.ToUpperInvariant() is "Y" or "YES";

    private static bool IsNo(string text) => text.ToUpperInvariant() is "N" or "NO";

    private static string[] Split(string text) => text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
}
