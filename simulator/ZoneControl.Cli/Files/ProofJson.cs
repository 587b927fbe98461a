using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Proving;
using ZoneControl.Bench.Scripts;

namespace ZoneControl.Cli.Files;

/// <summary>The result of <c>prove</c> for programs. Fields may be added under one schema number; none changes its meaning.</summary>
/// <param name="Schema">Name and number of this layout.</param>
/// <param name="House">The house's name.</param>
/// <param name="Verdict">"proven", "broken" or "explored".</param>
/// <param name="Stopped">"none", "states", "time", "memory" or "cancelled".</param>
/// <param name="Depth">Scans up to which every run was judged; with a breach, the scans that it takes.</param>
/// <param name="States">States visited, all searches together.</param>
/// <param name="Transitions">Moves made.</param>
/// <param name="ElapsedS">Time taken, s.</param>
/// <param name="PeakBytes">The most memory that states took.</param>
/// <param name="Workers">Threads.</param>
/// <param name="HashError">The chance that hashing hid a state, at most.</param>
/// <param name="Times">Which numbers of scans stood for which times.</param>
/// <param name="SumsKept">Sums of two times that compare with a third as they do in the house.</param>
/// <param name="SumsLost">Those that do not.</param>
/// <param name="May">What may happen.</param>
/// <param name="Searches">The searches that it is made of.</param>
/// <param name="Occasions">How often each rule had something to judge.</param>
/// <param name="Broken">The breach; null without one.</param>
public sealed record ProofJson(
    string Schema, string House, string Verdict, string Stopped, int Depth, long States, long Transitions, double ElapsedS,
    long PeakBytes, int Workers, double HashError, IReadOnlyList<ScaledTime> Times, int SumsKept, IReadOnlyList<string> SumsLost,
    IReadOnlyList<string> May, IReadOnlyList<ProofJson.OneSearch> Searches, IReadOnlyList<RuleOccasions> Occasions,
    ProofJson.OneBreach? Broken)
{
    private static readonly ProofJsonContext _json = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>One search.</summary>
    public sealed record OneSearch(
        IReadOnlyList<string> Rules, string Stopped, int Depth, long States, long Transitions, double ElapsedS, long PeakBytes);

    /// <summary>The broken rule, why in scaled time, and the script with real times, null when none was found.</summary>
    public sealed record OneBreach(string Rule, string Why, string? Script);

    /// <summary>The result as text that ends with a line feed.</summary>
    public static string From(House house, ProofResult result)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(result);
        var json = new ProofJson(
            "zonecontrol.prove.1", house.Name, Word(result.Verdict), Word(result.Stopped), result.Depth, result.States,
            result.Transitions, Seconds(result.Elapsed), result.PeakBytes, result.Workers, result.HashError, result.Scaling.Times,
            result.Scaling.SumsKept, result.Scaling.SumsLost, Move.InWords(result.Moves, house),
            [.. result.Passes.Select(pass => new OneSearch(
                pass.Rules, Word(pass.Stopped), pass.Depth, pass.States, pass.Transitions, Seconds(pass.Elapsed), pass.PeakBytes))],
            result.Occasions,
            result.Rule is null
                ? null
                : new OneBreach(result.Rule, result.Why, result.Replay is { } run ? ScriptWriter.Write(run.Script, house) : null));
        return JsonSerializer.Serialize(json, _json.ProofJson) + "\n";
    }

    private static double Seconds(TimeSpan time) => Math.Round(time.TotalSeconds, 3);

    private static string Word<T>(T value) where T : struct, Enum => JsonNamingPolicy.CamelCase.ConvertName(value.ToString());
}

/// <summary>How the result is taken apart; made at build time.</summary>
[JsonSerializable(typeof(ProofJson))]
internal sealed partial class ProofJsonContext : JsonSerializerContext;
