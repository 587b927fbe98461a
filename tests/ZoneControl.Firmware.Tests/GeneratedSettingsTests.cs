using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using ZoneControl.Bench.Boards;
using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware.Tests;

/// <summary>The settings that are generated build, for the board too, and give the fingerprint that stands beside them.</summary>
public class GeneratedSettingsTests
{
    public static TheoryData<string> Houses => [.. Examples.Houses];

    [Theory]
    [MemberData(nameof(Houses))]
    public void They_compile_for_the_board(string house)
    {
        string nano = FirmwareImage.Folder;
        MetadataReference[] references =
        [
            MetadataReference.CreateFromFile(Path.Combine(AppContext.BaseDirectory, "board", "mscorlib.dll")),
            MetadataReference.CreateFromFile(Path.Combine(nano, "ZoneControl.Logic.dll")),
            MetadataReference.CreateFromFile(Path.Combine(nano, "ZoneControl.Board.dll")),
        ];

        Assert.Equal([], Compile(BoardSheet.Of(Examples.House(house)).SettingsText, references).Diagnostics);
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public void Filled_in_they_give_the_fingerprint_that_they_state_and_the_bench_shows(string house)
    {
        BoardSheet sheet = BoardSheet.Of(Examples.House(house));

        (string stated, string found) = Fingerprints(sheet.SettingsText);

        Assert.Equal((sheet.Fingerprint, sheet.Fingerprint), (stated, found));
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public void The_firmwares_log_begins_with_the_same_fingerprint(string house)
    {
        var firmware = new FirmwareController(Examples.House(house));
        firmware.Scan(0, new InputImage(), new OutputImage());

        Assert.Contains($" fp={BoardSheet.Of(Examples.House(house)).Fingerprint} ", firmware.Log[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Every_number_that_a_hand_changes_is_noticed()
    {
        string text = BoardSheet.Of(Examples.House("toolworks")).SettingsText;
        string[] lines = text.Split('\n');
        int changed = 0;
        for (int i = 0; i < lines.Length; i++)
        {
            if (!lines[i].Contains(" = ", StringComparison.Ordinal) || !lines[i].TrimStart().StartsWith("s.", StringComparison.Ordinal))
                continue;
            if (lines[i].IndexOfAny([.. "0123456789"]) is var digit && digit < 0)
                continue;
            char other = lines[i][digit] == '1' ? '2' : '1';
            string[] edited = [.. lines];
            edited[i] = $"{lines[i][..digit]}{other}{lines[i][(digit + 1)..]}";
            if (edited[i].Contains("new int[1]", StringComparison.Ordinal) || edited[i].Contains("new int[2]", StringComparison.Ordinal))
                continue;
            (string stated, string found) = Fingerprints(string.Join('\n', edited));
            Assert.True(stated != found, $"{lines[i].Trim()} became {edited[i].Trim()} and nobody noticed");
            changed++;
        }

        Assert.InRange(changed, 40, 100);
    }

    [Fact]
    public void Names_of_zones_that_change_places_are_noticed()
    {
        string text = BoardSheet.Of(Examples.House("pottery")).SettingsText;
        string swapped = text.Replace("\"shop\"", "\"x\"", StringComparison.Ordinal).Replace("\"bath\"", "\"shop\"", StringComparison.Ordinal)
            .Replace("\"x\"", "\"bath\"", StringComparison.Ordinal);

        (string stated, string found) = Fingerprints(swapped);

        Assert.NotEqual(text, swapped);
        Assert.NotEqual(stated, found);
    }

    [Fact]
    public void Every_field_of_settings_and_plan_is_in_the_words()
    {
        foreach (object one in (object[])[new ControllerSettings(), new BoardPlan()])
        {
            foreach (FieldInfo field in one.GetType().GetFields(BindingFlags.Public | BindingFlags.Instance))
            {
                var settings = new ControllerSettings();
                var plan = new BoardPlan();
                int before = Board.Fingerprint.Of(SettingsWords.Of(settings, plan), []);
                object target = one is BoardPlan ? plan : settings;
                field.SetValue(target, field.GetValue(target) switch
                {
                    int number => number + 1,
                    bool flag => !flag,
                    int[] numbers => (int[])[.. numbers, 7],
                    object other => throw new NotSupportedException(other.GetType().Name),
                    null => throw new NotSupportedException(field.Name),
                });
                Assert.True(before != Board.Fingerprint.Of(SettingsWords.Of(settings, plan), []), field.Name);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Houses))]
    public void Words_fill_settings_and_plan_as_they_were(string house)
    {
        House read = Examples.House(house);
        int[] words = SettingsWords.Of(read.ToSettings(), PinPlanner.Of(read));
        var settings = new ControllerSettings();
        var plan = new BoardPlan();

        SettingsWords.Read(words, settings, plan);

        Assert.Equal(words, SettingsWords.Of(settings, plan));
    }

    /// <summary>Sums of "" and "a" as published with the algorithm (from memory): with no word and one name of one letter, by hand.</summary>
    [Fact]
    public void The_sum_is_fnv_1a()
    {
        Assert.Equal("811c9dc5", Board.Fingerprint.Text(Board.Fingerprint.Of([], [])));
        uint sum = 2166136261;
        foreach (byte b in (byte[])[1, 2, 0, 0xFF])
            sum = unchecked((sum ^ b) * 16777619);
        Assert.Equal($"{sum:x8}", Board.Fingerprint.Text(Board.Fingerprint.Of([unchecked((int)0xFF000201)], [])));
    }

    [Fact]
    public void The_firmware_is_built_with_the_potterys()
    {
        string file = File.ReadAllText(Path.Combine(Examples.Root, "firmware", "ZoneControl.Firmware", "GeneratedSettings.cs"));

        Assert.True(BoardSheet.Of(Examples.House("pottery")).SettingsText == file.ReplaceLineEndings("\n"),
            "write it anew: zonecontrol board simulator/examples/pottery.house.toml --settings firmware/ZoneControl.Firmware/GeneratedSettings.cs");
    }

    private static (string Stated, string Found) Fingerprints(string source)
    {
        MetadataReference[] references =
        [
            MetadataReference.CreateFromFile(typeof(object).Assembly.Location),
            MetadataReference.CreateFromFile(Assembly.Load("System.Runtime").Location),
            MetadataReference.CreateFromFile(typeof(ControllerSettings).Assembly.Location),
            MetadataReference.CreateFromFile(typeof(BoardPlan).Assembly.Location),
        ];
        (IReadOnlyList<string> mistakes, byte[] image) = Compile(source, references);
        Assert.Equal([], mistakes);
        Type type = Assembly.Load(image).GetType("ZoneControl.Firmware.GeneratedSettings", true)!;
        var settings = new ControllerSettings();
        var plan = new BoardPlan();
        type.GetMethod("Fill", [typeof(ControllerSettings), typeof(BoardPlan)])!.Invoke(null, [settings, plan]);
        var names = (string[])type.GetMethod("Names")!.Invoke(null, null)!;
        return ((string)type.GetField("Fingerprint")!.GetRawConstantValue()!, Board.Fingerprint.Text(Board.Fingerprint.Of(SettingsWords.Of(settings, plan), names)));
    }

    private static (IReadOnlyList<string> Diagnostics, byte[] Image) Compile(string source, MetadataReference[] references)
    {
        var compilation = CSharpCompilation.Create(
            "Settings" + Guid.NewGuid().ToString("N"), [CSharpSyntaxTree.ParseText(source, cancellationToken: TestContext.Current.CancellationToken)], references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary));
        using var image = new MemoryStream();
        var result = compilation.Emit(image, cancellationToken: TestContext.Current.CancellationToken);
        return ([.. result.Diagnostics.Where(d => d.Severity >= DiagnosticSeverity.Warning).Select(d => d.ToString())], image.ToArray());
    }
}
