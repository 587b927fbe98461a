using System.Reflection;
using System.Runtime.Loader;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using ZoneControl.Bench.Proving;
using ZoneControl.Logic;

namespace ZoneControl.Proving.Tests;

/// <summary>
/// The controller's own sources, compiled in memory with one or more places changed. Settings, images and words are the
/// desktop's, so that a planted controller is driven like the whole one.
/// </summary>
internal static class PlantedController
{
    private static readonly string[] _shared =
    [
        "Alarm.cs", "Contact.cs", "ControllerSettings.cs", "HoldReason.cs", "InputImage.cs", "OutputImage.cs",
    ];

    private const string Subject = """
        using ZoneControl.Logic;

        public sealed class PlantedSubject : ZoneControl.Bench.Proving.IProvable
        {
            private readonly int[] _fresh;
            private readonly ZoneController _controller;

            public PlantedSubject(ControllerSettings settings)
            {
                _controller = new ZoneController(settings);
                _fresh = new int[_controller.StateLength];
                _controller.Save(_fresh);
            }

            public string Name => "planted";
            public int StateLength => _controller.StateLength;
            public int IdlePlace => _controller.IdlePlace;
            public void PowerUp() => _controller.Load(_fresh, 0);
            public void Scan(long nowMs, InputImage inputs, OutputImage outputs) => _controller.Scan(nowMs, inputs, outputs);
            public void Save(int[] state) => _controller.Save(state);
            public void Load(int[] state, long nowMs) => _controller.Load(state, nowMs);
        }
        """;

    /// <summary>Compiles the controller with text replaced in one file.</summary>
    /// <param name="file">The file, without its ending.</param>
    /// <param name="whole">Text that stands in it at least once; every place is changed.</param>
    /// <param name="broken">What stands there instead.</param>
    public static Func<ControllerSettings, IProvable> With(string file, string whole, string broken) =>
        With(file, [(whole, broken)]);

    /// <summary>Compiles the controller with several texts replaced in one file.</summary>
    public static Func<ControllerSettings, IProvable> With(string file, IReadOnlyList<(string Whole, string Broken)> places)
    {
        string folder = Path.Combine(Repository.Root, "shared-logic", "ZoneControl.Logic");
        int found = 0;
        var trees = new List<SyntaxTree> { CSharpSyntaxTree.ParseText(Subject) };
        foreach (string path in Directory.EnumerateFiles(folder, "*.cs").Where(path => !_shared.Contains(Path.GetFileName(path))))
        {
            string text = File.ReadAllText(path).ReplaceLineEndings("\n");
            foreach ((string whole, string broken) in Path.GetFileNameWithoutExtension(path) == file ? places : [])
            {
                found += text.Contains(whole, StringComparison.Ordinal) ? 1 : 0;
                text = text.Replace(whole, broken, StringComparison.Ordinal);
            }

            trees.Add(CSharpSyntaxTree.ParseText(text));
        }

        Assert.True(found == places.Count, $"{file}.cs no longer says: {string.Join(" or ", places.Select(place => place.Whole))}");
        return Load(trees);
    }

    private static Func<ControllerSettings, IProvable> Load(IEnumerable<SyntaxTree> trees)
    {
        IEnumerable<string> platform = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator);
        string[] own = [typeof(ZoneController).Assembly.Location, typeof(IProvable).Assembly.Location];
        var options = new CSharpCompilationOptions(
            OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable);
        var compilation = CSharpCompilation.Create(
            $"Planted{Guid.NewGuid():N}", trees, platform.Concat(own).Distinct().Select(path => MetadataReference.CreateFromFile(path)), options);
        using var image = new MemoryStream();
        var emitted = compilation.Emit(image);
        Assert.True(emitted.Success, string.Join('\n', emitted.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)));
        image.Position = 0;
        Assembly assembly = AssemblyLoadContext.Default.LoadFromStream(image);
        Type type = assembly.GetType("PlantedSubject", throwOnError: true)!;
        return settings => (IProvable)Activator.CreateInstance(type, settings)!;
    }
}
