using System.Text;
using CsCheck;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Tests.Houses;
using ZoneControl.Bench.Tests.Scripts;
using ZoneControl.Logic;
using ZoneControl.Plant;

namespace ZoneControl.Bench.Tests.Files;

/// <summary>Whatever is in a file, or in its way, becomes a mistake and never an exception.</summary>
public class HostileFileTests
{
    private static readonly House _house = HouseText.House(HouseText.Sound);

    /// <summary>Spoils a text: bytes flipped, pieces cut out, lines dropped, doubled or swapped.</summary>
    private static Gen<string> Spoilt(string text) =>
        Gen.Select(Gen.Int[0, 5], Gen.Int[0, text.Length - 1], Gen.Int[0, text.Length - 1], Gen.Char)
            .Array[1, 6]
            .Select(steps => steps.Aggregate(text, (spoilt, step) => Spoil(spoilt, step.Item1, step.Item2, step.Item3, step.Item4)));

    private static string Spoil(string text, int kind, int first, int second, char letter)
    {
        if (text.Length == 0)
            return letter.ToString();
        int at = first % text.Length;
        string[] lines = text.Split('\n');
        int line = first % lines.Length;
        int other = second % lines.Length;
        switch (kind)
        {
            case 0:
                return text[..at] + letter + text[(at + 1)..];
            case 1:
                return text.Remove(at, Math.Min(second % 9, text.Length - at));
            case 2:
                return string.Join('\n', lines.Where((_, i) => i != line));
            case 3:
                return string.Join('\n', lines.Take(line).Append(lines[other]).Concat(lines.Skip(line)));
            case 4:
                (lines[line], lines[other]) = (lines[other], lines[line]);
                return string.Join('\n', lines);
            default:
                return text[..at] + "[]{}\"'=#.-0\n"[second % 12] + text[at..];
        }
    }

    [Fact]
    public void A_spoilt_house_file_never_throws_and_what_is_accepted_can_be_built()
    {
        Spoilt(HouseText.Sound).Sample(text =>
        {
            HouseReading reading = HouseFile.Parse(text, "house.toml");
            Assert.Equal(reading.House is null, reading.Mistakes.Any(mistake => mistake.IsError));
            Assert.All(reading.Mistakes, mistake => Assert.DoesNotContain(mistake.ToString(), char.IsControl));
            if (reading.House is not { } house)
                return;
            Assert.Null(SettingsCheck.FirstMistake(house.ToSettings()));
            _ = new PlantModel(house.ToPlant(new ScriptConditions(30, 20)));
            Assert.NotEmpty(SettingsList.Of(house));
        }, iter: 3_000);
    }

    [Fact]
    public void A_spoilt_script_file_never_throws()
    {
        Spoilt(ScriptText.Sound).Sample(text =>
        {
            ScriptReading reading = ScriptFile.Parse(text, "script.toml", _house);
            Assert.Equal(reading.Script is null, reading.Mistakes.Any(mistake => mistake.IsError));
            Assert.All(reading.Mistakes, mistake => Assert.DoesNotContain(mistake.ToString(), char.IsControl));
            if (reading.Script is not { } script)
                return;
            Assert.All(script.Events, scriptEvent => Assert.NotEmpty(scriptEvent.Action.InWords(_house)));
            Assert.All(script.Expectations, expectation => Assert.NotEmpty(expectation.InWords(_house)));
        }, iter: 3_000);
    }

    /// <summary>Any text, or text of the letters that mean something in TOML, halves of surrogate pairs among them.</summary>
    private static readonly Gen<string> _text = Gen.OneOf(
        Gen.String,
        Gen.Char["abuUxz019.,:+-_=#\"'\\[]{} \t\r\n\0\u00E9\uD800\uDC00"].Array[0, 24].Select(letters => new string(letters)));

    [Fact]
    public void Random_text_never_throws() =>
        _text.Sample(text =>
        {
            Assert.Null(HouseFile.Parse(text, text).House);
            Assert.Null(ScriptFile.Parse(text, text, _house).Script);
        }, iter: 5_000);

    [Fact]
    public void Text_of_more_than_a_mebibyte_is_a_mistake() => Assert.Equal(
        "house.toml: found more than 1 MiB of text, expected a file of at most 1 MiB",
        HouseText.Refusal(HouseText.Read(new string('#', (1024 * 1024) + 1))));

    [Fact]
    public void A_file_that_is_not_there_is_a_mistake() => Assert.Equal(
        "nowhere/house.toml: no such file",
        HouseText.Refusal(HouseFile.Read("nowhere/house.toml")));

    [Theory]
    [InlineData("")]
    [InlineData("a\0b")]
    public void A_path_that_is_none_is_a_mistake(string path) =>
        Assert.Contains("found a file that cannot be read", HouseText.Refusal(HouseFile.Read(path)), StringComparison.Ordinal);

    [Fact]
    public void A_folder_is_a_mistake() => InTemporaryFolder(folder =>
        Assert.Equal(new FileMistake(folder, 0, 0, "", "a folder", "a text file in UTF-8"), HouseFile.Read(folder).Mistakes[0]));

    [Fact]
    public void A_file_of_more_than_a_mebibyte_is_a_mistake() => InTemporaryFolder(folder =>
    {
        string path = Path.Combine(folder, "big.toml");
        File.WriteAllBytes(path, new byte[(1024 * 1024) + 1]);
        Assert.Equal("a file of more than 1 MiB", Assert.Single(HouseFile.Read(path).Mistakes).Found);
    });

    [Fact]
    public void Bytes_that_are_not_UTF8_are_a_mistake_at_their_line() => InTemporaryFolder(folder =>
    {
        string path = Path.Combine(folder, "latin.toml");
        File.WriteAllBytes(path, Encoding.Latin1.GetBytes("# first\nname = \"Töpferei\"\n"));
        FileMistake mistake = Assert.Single(HouseFile.Read(path).Mistakes);
        Assert.Equal((2, "bytes that are not UTF-8"), (mistake.Line, mistake.Found));
        Assert.Null(ScriptFile.Read(path, _house).Script);
    });

    [Fact]
    public void A_file_with_a_byte_order_mark_and_foreign_line_ends_is_read() => InTemporaryFolder(folder =>
    {
        string path = Path.Combine(folder, "sound.toml");
        File.WriteAllText(path, HouseText.Sound.ReplaceLineEndings("\r\n"), new UTF8Encoding(true));
        HouseReading reading = HouseFile.Read(path);
        Assert.Empty(reading.Mistakes);
        Assert.Equal("sound.toml", reading.House!.FileName);
    });

    private static void InTemporaryFolder(Action<string> test)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory();
        try
        {
            test(folder.FullName);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
