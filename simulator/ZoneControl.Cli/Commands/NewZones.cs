using System.Globalization;
using ZoneControl.Bench.Choosing.NewHouses;
using ZoneControl.Logic;

namespace ZoneControl.Cli.Commands;

/// <summary>
/// Asks for the zones, one after the other; asked again, it shows the list, of which each can be changed, removed or added to.
/// Back goes one prompt back, and no zone is ever lost by it.
/// </summary>
internal sealed class NewZones(NewPrompt prompt)
{
    private const string Add = "+";
    private readonly List<ZoneAnswers> _zones = [];

    /// <summary>The zones as they stand, also when the person went back in the middle.</summary>
    public IReadOnlyList<ZoneAnswers> Kept => [.. _zones];

    /// <summary>The zones; null when the person wants to go back to what was asked before them.</summary>
    /// <param name="now">The zones so far.</param>
    /// <param name="units">"si" or "us".</param>
    public async Task<IReadOnlyList<ZoneAnswers>?> AskAsync(IReadOnlyList<ZoneAnswers> now, string units)
    {
        _zones.Clear();
        _zones.AddRange(now);
        bool done = _zones.Count > 0 ? await ListAsync(units) : await EnterAsync(0, units);
        return done ? Kept : null;
    }

    /// <summary>A zone as the list and the summary show it.</summary>
    public static string InWords(ZoneAnswers zone) =>
        $"{zone.Name} ({zone.Kind}, {zone.Opening ?? CommonValues.Opening(zone.Kind)}: {string.Join(", ", zone.Loops)})";

    /// <summary>Shows the list until the person keeps it; false for back.</summary>
    private async Task<bool> ListAsync(string units)
    {
        while (true)
        {
            for (int i = 0; i < _zones.Count; i++)
                prompt.Say($"  {i + 1,2}  {InWords(_zones[i])}");
            string? text = await prompt.LineAsync("Enter keeps these; 2 changes the second, -2 removes it, + adds one", "", Refusal);
            if (text is null or "")
                return text is not null;
            if (text == Add)
                await EnterAsync(_zones.Count, units);
            else if (Number(text) < 0)
                _zones.RemoveAt(-Number(text) - 1);
            else
                await ZoneAsync(Number(text) - 1, atLast: false, units);
        }
    }

    private string? Refusal(string typed)
    {
        int number = Number(typed);
        return typed.Length == 0 || (typed == Add && _zones.Count < ControllerSettings.MostZones) ? null
            : typed == Add ? $"found {_zones.Count} zones already, expected at most {ControllerSettings.MostZones}"
            : number == -1 && _zones.Count == 1 ? "found the only zone, expected one to stay; change it, or add another first"
            : number != 0 && Math.Abs(number) <= _zones.Count ? null
            : $"found \"{typed}\", expected Enter, a number from 1 to {_zones.Count}, one of these with a minus, or +";
    }

    /// <summary>What was typed as a number, with a minus for "remove"; 0 for anything else.</summary>
    private static int Number(string typed) =>
        int.TryParse(typed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number) && typed[0] != '+'
            && Math.Abs((long)number) <= ControllerSettings.MostZones ? number : 0;

    /// <summary>Asks zone after zone until an empty name; false when the person goes back beyond the first of them.</summary>
    private async Task<bool> EnterAsync(int first, string units)
    {
        bool back = false;
        for (int at = first; at < ControllerSettings.MostZones;)
        {
            bool? went = await ZoneAsync(at, atLast: back, units);
            if (went is null)
                return true;
            back = went is false;
            at += back ? -1 : 1;
            if (at < first)
                return false;
        }

        return true;
    }

    /// <summary>Asks one zone; true when it is in the list, false for back, null when there is to be none.</summary>
    private async Task<bool?> ZoneAsync(int at, bool atLast, string units)
    {
        bool isNew = at == _zones.Count;
        ZoneAnswers[] others = [.. _zones.Where((_, i) => i != at)];
        ZoneAnswers? like = isNew ? _zones.LastOrDefault() : _zones[at];
        var zone = isNew ? new ZoneAnswers("", like?.Kind ?? ZoneAnswers.Kinds[0], null, []) : _zones[at];
        for (int step = atLast ? 3 : 0; step < 4;)
        {
            ZoneAnswers? answered = step switch
            {
                0 => await NameAsync(at, zone, mayEnd: isNew && at > 0, others),
                1 => await KindAsync(zone),
                2 => await OpeningAsync(zone, like, units),
                _ => await LoopsAsync(zone, units),
            };
            if (answered is null && step == 0)
                return false;
            zone = answered ?? zone;
            if (zone.Name.Length == 0)
                return null;
            step += answered is null ? -1 : 1;
        }

        if (isNew)
            _zones.Add(zone);
        else
            _zones[at] = zone;
        return true;
    }

    private async Task<ZoneAnswers?> NameAsync(int at, ZoneAnswers zone, bool mayEnd, ZoneAnswers[] others) =>
        await prompt.LineAsync($"Zone {at + 1}: name", zone.Name, text => text.Length == 0 && mayEnd ? null : AnswerCheck.ZoneName(text, others))
            is { } name ? zone with { Name = name } : null;

    private async Task<ZoneAnswers?> KindAsync(ZoneAnswers zone) =>
        await prompt.ChoiceAsync($"  Actuator, one of {string.Join(", ", ZoneAnswers.Kinds)}", ZoneAnswers.Kinds, zone.Kind) is { } kind
            ? zone with { Kind = kind, Opening = kind == zone.Kind ? zone.Opening : null }
            : null;

    private async Task<ZoneAnswers?> OpeningAsync(ZoneAnswers zone, ZoneAnswers? like, string units)
    {
        string usual = zone.Opening ?? (like?.Kind == zone.Kind ? like.Opening : null) ?? CommonValues.Opening(zone.Kind);
        return await prompt.LineAsync("  Opens in, at worst (cold, old, on a low supply)", usual, text => AnswerRange.Opening.Refusal(text, units))
            is { } opening ? zone with { Opening = opening } : null;
    }

    private async Task<ZoneAnswers?> LoopsAsync(ZoneAnswers zone, string units) =>
        await prompt.LengthsAsync("  Lengths of its loops, with commas", zone.Loops, units, mayBeNone: false) is { } loops
            ? zone with { Loops = loops }
            : null;
}
