using Spectre.Console;
using ZoneControl.Bench.Choosing.NewHouses;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Cli.Commands;

/// <summary>
/// Asks what a person in front of the manifold can answer: each question explained, with the common value to take by Enter.
/// At the end every answer can be corrected before anything is written.
/// </summary>
internal sealed class NewQuestions
{
    private readonly IAnsiConsole _console;
    private readonly NewPrompt _prompt;
    private readonly NewZones _zones;
    private readonly NewSettings _settings;
    private readonly Question[] _all;

    /// <param name="console">A terminal with a person at it.</param>
    /// <param name="settings">What options have answered already is not asked.</param>
    /// <param name="cancel">Stops the asking.</param>
    public NewQuestions(IAnsiConsole console, NewSettings settings, CancellationToken cancel)
    {
        _console = console;
        _settings = settings;
        _prompt = new NewPrompt(console, cancel);
        _zones = new NewZones(_prompt);
        _all = [.. Questions()];
    }

    /// <summary>Asks for what the options have not given yet, shows every answer, and lets the person correct them.</summary>
    public async Task<HouseAnswers> AskAsync(HouseAnswers given)
    {
        Say("A house file says what is there: pump, pipes, valves, rooms. Enter takes the value in brackets, < goes back to the question before; "
            + "all answers are shown before the file is written.");
        HouseAnswers a = given;
        int at = 0;
        while (true)
        {
            Question[] open = [.. _all.Where(question => !question.Answered && question.Applies(a))];
            if (at >= open.Length)
                break;
            // Numbered as the summary numbers them, where those that options answered have their lines too.
            Question[] shown = [.. _all.Where(question => question.Applies(a))];
            (a, bool back) = await PutAsync(open[at], a, $"Question {Array.IndexOf(shown, open[at]) + 1} of {shown.Length}. ");
            at = back ? Math.Max(0, at - 1) : at + 1;
        }

        return await CorrectAsync(a);
    }

    private async Task<HouseAnswers> CorrectAsync(HouseAnswers answers)
    {
        HouseAnswers a = answers;
        while (true)
        {
            Question[] shown = [.. _all.Where(question => question.Applies(a))];
            _console.WriteLine();
            Say("These are the answers:");
            for (int i = 0; i < shown.Length; i++)
                Say($"{i + 1,3}  {shown[i].About.Title}: {shown[i].Shows(a)}");
            string[] mistakes = Mistakes(a);
            foreach (string mistake in mistakes)
                Say($"  {mistake}");
            string ask = mistakes.Length > 0 ? "Number of the answer to correct" : "Enter writes the file; a number corrects that answer";
            string? text = await _prompt.LineAsync(ask, "", typed =>
                typed.Length == 0 && mistakes.Length == 0 ? null
                : int.TryParse(typed, out int line) && line >= 1 && line <= shown.Length ? null
                : $"found {(typed.Length > 0 ? $"\"{typed}\"" : "nothing")}, expected a number from 1 to {shown.Length}{(mistakes.Length > 0 ? "" : ", or Enter")}");
            if (text is null)
                continue;
            if (text.Length == 0)
                return a;
            Question chosen = shown[int.Parse(text, System.Globalization.CultureInfo.InvariantCulture) - 1];
            (a, _) = await PutAsync(chosen, a, "");
        }
    }

    /// <summary>What is wrong with the answers, by themselves or together as the house that they make.</summary>
    private static string[] Mistakes(HouseAnswers a)
    {
        string[] single = [.. AnswerCheck.Of(a).Select(mistake => $"{mistake.Question.Title}: {mistake.Says}")];
        if (single.Length > 0)
            return single;
        NewHouse made = HouseWriter.Write(a, "");
        return made.House is null ? [.. made.Mistakes.Where(mistake => mistake.IsError).Select(NewAnswers.InWords)] : [];
    }

    private async Task<(HouseAnswers Answers, bool Back)> PutAsync(Question question, HouseAnswers a, string number)
    {
        _console.WriteLine();
        Say(number + question.Explains);
        HouseAnswers? answered = await question.AskAsync(a);
        return (answered ?? question.Kept(a), answered is null);
    }

    private IEnumerable<Question> Questions()
    {
        NewSettings s = _settings;
        yield return Choice(Asked.Units, s.Units, "si: metres, litres a minute, °C. us: feet, gallons a minute, °F.", ["si", "us"],
            a => a.Units, (a, text) => a with { Units = text });
        yield return Text(Asked.Name, s.Name, "Shown on sheets and reports.",
            a => a.Name, text => AnswerCheck.Name(text, AnswerCheck.LongestHouseName), (a, text) => a with { Name = text });
        yield return Measure(Asked.PumpHead, s.PumpHead, "Its label or data sheet: the highest head, at no flow.",
            a => a.PumpHead, a => CommonValues.Of(a.Units).PumpHead, AnswerRange.PumpHead, (a, text) => a with { PumpHead = text });
        yield return Measure(Asked.PumpFlow, s.PumpFlow, "The same label: the most flow, at no head.",
            a => a.PumpFlow, a => CommonValues.Of(a.Units).PumpFlow, AnswerRange.PumpFlow, (a, text) => a with { PumpFlow = text });
        yield return Measure(Asked.PumpPower, s.PumpPower, "Electrical power on the label; all of it may heat water that does not move.",
            a => a.PumpPower, a => CommonValues.Of(a.Units).PumpPower, AnswerRange.PumpPower, (a, text) => a with { PumpPower = text });
        yield return Optional(Asked.MinimumFlow, s.MinimumFlow, "Flow below which the maker does not want the pump run. Enter: a tenth of the most flow.",
            a => a.MinimumFlow, "a tenth of the most flow", AnswerCheck.MinimumFlow, (a, text) => a with { MinimumFlow = text });
        yield return Measure(Asked.MainsLength, s.MainsLength, "From the pump to the manifold and back, both ways together.",
            a => a.MainsLength, a => CommonValues.Of(a.Units).MainsLength, AnswerRange.MainsLength, (a, text) => a with { MainsLength = text });
        yield return Measure(Asked.MainsInside, s.MainsInside, "Inside, not outside: a tape round the pipe says more than the truth.",
            a => a.MainsInside, a => CommonValues.Of(a.Units).MainsInside, AnswerRange.MainsInside, (a, text) => a with { MainsInside = text });
        yield return Choice(Asked.Tube, s.Tube, "Printed on the tube where it comes out of the floor.", [.. TubeSizes.All.Select(size => size.Word)],
            a => a.Tube ?? CommonValues.Of(a.Units).Tube, (a, text) => a with { Tube = text == CommonValues.Of(a.Units).Tube ? null : text });
        yield return new Question(Asked.Gated, s.Gated, "Then ZoneControl senses its valves and gates pump and heat demand.",
            a => a.Gated ? "yes" : "no",
            async a => await _prompt.YesAsync(Asked.Gated.Title, a.Gated) is { } yes ? a with { Gated = yes } : null);
        yield return new Question(Asked.Zones, s.Zones.Length > 0,
            "Zones: one thermostat and the loops that it opens, in the order of the terminals. An empty name ends the list.",
            a => string.Join("; ", a.Zones.Select(NewZones.InWords)),
            async a => await _zones.AskAsync(a.Zones, a.Units) is { } zones ? a with { Zones = zones } : null)
        {
            Kept = a => a with { Zones = _zones.Kept },
        };
        yield return new Question(Asked.StandingLoops, s.StandingLoops.Length > 0,
            "Always open, by a hand valve: their lengths with commas. Enter: none.",
            a => a.StandingLoops.Count > 0 ? string.Join(", ", a.StandingLoops) : "none",
            async a => await _prompt.LengthsAsync(Asked.StandingLoops.Title, [], a.Units, mayBeNone: true) is { } loops
                ? a with { StandingLoops = loops }
                : null);
        yield return Optional(Asked.Bypass, s.Bypass,
            "A spring-loaded bypass between supply and return, and the pressure on its scale; not the safety relief valve that drips to the drain. "
                + "Enter: there is none.",
            a => a.Bypass, "none", AnswerCheck.Bypass, (a, text) => a with { Bypass = text });
        yield return Optional(Asked.Transformer, s.Transformer,
            "The VA on the plate of what feeds the actuators. Enter: not known, loads are not watched.",
            a => a.Transformer, "not known", (a, text) => AnswerRange.Transformer.Refusal(text, a.Units),
            (a, text) => a with { Transformer = text }, a => !a.Gated);
        yield return new Question(Asked.Contacts, s.Contacts is not null,
            "Contacts beside thermostats and end switches. Common for a first build: the season switch and the reset button.",
            a => NewContacts.InWords(a.Contacts),
            async a => await new NewContacts(_prompt).AskAsync() is { } contacts ? a with { Contacts = contacts } : null);
    }

    private Question Text(
        Asked about, string? option, string explains, Func<HouseAnswers, string> now, Func<string, string?> judge, Func<HouseAnswers, string, HouseAnswers> set) =>
        new(about, option is not null, explains, now,
            async a => await _prompt.LineAsync(about.Title, now(a), judge) is { } text ? set(a, text) : null);

    private Question Choice(
        Asked about, string? option, string explains, string[] choices, Func<HouseAnswers, string> now, Func<HouseAnswers, string, HouseAnswers> set) =>
        new(about, option is not null, $"{explains} One of: {string.Join(", ", choices)}.", now,
            async a => await _prompt.ChoiceAsync(about.Title, choices, now(a)) is { } text ? set(a, text) : null);

    private Question Measure(
        Asked about, string? option, string explains, Func<HouseAnswers, string?> now, Func<HouseAnswers, string> common, AnswerRange range,
        Func<HouseAnswers, string?, HouseAnswers> set) =>
        new(about, option is not null, explains, a => now(a) ?? common(a),
            async a => await _prompt.LineAsync(about.Title, now(a) ?? common(a), text => range.Refusal(text, a.Units)) is { } text
                ? set(a, text == common(a) ? null : text) // a common value follows the units if they are corrected
                : null);

    private Question Optional(
        Asked about, string? option, string explains, Func<HouseAnswers, string?> now, string nothing, Func<HouseAnswers, string, string?> judge,
        Func<HouseAnswers, string?, HouseAnswers> set, Func<HouseAnswers, bool>? applies = null) =>
        new(about, option is not null, explains, a => now(a) ?? nothing,
            async a => await _prompt.LineAsync(about.Title, "", text => text.Length == 0 ? null : judge(a, text)) is { } text
                ? set(a, text.Length == 0 ? null : text)
                : null)
        {
            Applies = applies ?? (_ => true),
        };

    private void Say(string text) => _console.WriteLine(text);

    /// <summary>A question.</summary>
    /// <param name="About">Its words.</param>
    /// <param name="Answered">Whether an option has answered it.</param>
    /// <param name="Explains">A sentence before it.</param>
    /// <param name="Shows">Its answer in words.</param>
    /// <param name="AskAsync">Asks it; null when the person wants to go back.</param>
    private sealed record Question(
        Asked About, bool Answered, string Explains, Func<HouseAnswers, string> Shows, Func<HouseAnswers, Task<HouseAnswers?>> AskAsync)
    {
        /// <summary>Whether it makes sense with the answers so far.</summary>
        public Func<HouseAnswers, bool> Applies { get; init; } = _ => true;

        /// <summary>What stays of an answer when the person went back in the middle of it.</summary>
        public Func<HouseAnswers, HouseAnswers> Kept { get; init; } = a => a;
    }
}
