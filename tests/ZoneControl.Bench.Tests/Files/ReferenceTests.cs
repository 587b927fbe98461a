using System.Text.RegularExpressions;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Houses;

namespace ZoneControl.Bench.Tests.Files;

/// <summary>The reference beside the examples names every key that the readers know, as they list them for an unknown one.</summary>
public partial class ReferenceTests
{
    [Fact]
    public void The_reference_names_every_key_of_both_files()
    {
        string reference = File.ReadAllText(Path.Combine(ExampleTests.Folder(), "README.md"));
        string house = HouseText.Sound
            .Replace("[controller]", "[bypass]\nopens_at = \"0.2 bar\"\nkvs = 2\n[[standing_loop]]\nlength = \"9 m\"\n[controller]", StringComparison.Ordinal)
            .Replace("name = \"main\"", "name = \"main\"\nbranch = { length = \"1 m\", inside = \"9 mm\", xxxxxxxx = 1 }", StringComparison.Ordinal);
        house = house.Replace("season = true", "season = { xxxxxxxx = 1 }\n[transformer]\nrating = \"40 VA\""
            + "\n[heat_source]\n[tank]\nvolume = \"9 L\"\n[weather]\n[every_room]\n[every_floor]\n[every_thermostat]\n[fixed_bypass]\nkv = 1",
            StringComparison.Ordinal);
        house = house.Replace("power = \"60 W\"", "power = \"60 W\"\nregulation = { xxxxxxxx = 1 }", StringComparison.Ordinal);
        string spoiltHouse = Spoil(house.Replace("{ length = \"60 m\" }", "{ length = \"60 m\", xxxxxxxx = 1 }", StringComparison.Ordinal));
        string spoiltScript = Spoil(Scripts.ScriptText.Sound);
        string[] hints =
        [
            .. HouseFile.Parse(spoiltHouse, "h").Mistakes.Select(mistake => mistake.Hint),
            .. ScriptFile.Parse(spoiltScript, "s", HouseText.House(HouseText.Sound)).Mistakes.Select(mistake => mistake.Hint),
        ];
        string[] keys = [.. hints.Where(hint => hint.StartsWith("known here: ", StringComparison.Ordinal))
            .SelectMany(hint => hint["known here: ".Length..].Split(", ")).Distinct()];
        Assert.InRange(keys.Length, 170, 250);
        Assert.All(keys, key => Assert.True(
            Regex.IsMatch(reference, $@"[`\[]{key}\b"), $"the reference does not name {key}"));
        Assert.All(AlarmWords.All, word => Assert.Contains($"`\"{word.Word}\"`", reference, StringComparison.Ordinal));
        Assert.All(ContactKind.All, kind => Assert.All([kind.Key, kind.Asserted, kind.Resting], word => Assert.Contains(word, reference, StringComparison.Ordinal)));
        Assert.All(HoldWords.All, word => Assert.Contains($"`\"{word.Word}\"`", reference, StringComparison.Ordinal));
    }

    /// <summary>Puts an unknown key at the top and into every table.</summary>
    private static string Spoil(string text) => "xxxxxxxx = 1\n" + Header().Replace(text, "$0\nxxxxxxxx = 1");

    [GeneratedRegex(@"^\[+[a-z_]+\]+", RegexOptions.Multiline)]
    private static partial Regex Header();
}
