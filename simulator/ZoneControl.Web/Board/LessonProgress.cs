using System.Text.Json;
using Microsoft.JSInterop;

namespace ZoneControl.Web.Board;

/// <summary>How far one learner has come in one lesson.</summary>
/// <param name="Guess">Which answer was chosen, from 0; -1 for none yet.</param>
/// <param name="Right">Whether it was the right one.</param>
/// <param name="Done">Whether the lesson was finished.</param>
public sealed record LessonMark(int Guess, bool Right, bool Done);

/// <summary>Progress through the lessons, kept in the learner's own browser and nowhere else.</summary>
public sealed class LessonProgress(IJSRuntime js)
{
    private const string Key = "zonecontrol.lessons";

    private Dictionary<string, LessonMark> _marks = [];

    /// <summary>Reads what the browser kept; what cannot be read counts as nothing.</summary>
    public async Task LoadAsync()
    {
        string? kept = await js.InvokeAsync<string?>("zonecontrol.kept", Key);
        try
        {
            _marks = kept is { Length: < 100_000 } ? JsonSerializer.Deserialize<Dictionary<string, LessonMark>>(kept) ?? [] : [];
        }
        catch (JsonException)
        {
            _marks = [];
        }
    }

    /// <summary>A lesson's mark; null before it was begun.</summary>
    public LessonMark? Of(string lesson) => _marks.GetValueOrDefault(lesson);

    /// <summary>Keeps a mark.</summary>
    public async Task KeepAsync(string lesson, LessonMark mark)
    {
        _marks[lesson] = mark;
        await js.InvokeVoidAsync("zonecontrol.keep", Key, JsonSerializer.Serialize(_marks));
    }

    /// <summary>Forgets all.</summary>
    public async Task ForgetAsync()
    {
        _marks = [];
        await js.InvokeVoidAsync("zonecontrol.keep", Key, "{}");
    }
}
