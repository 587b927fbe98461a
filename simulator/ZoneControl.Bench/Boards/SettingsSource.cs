using System.Globalization;
using System.Reflection;
using System.Text;
using ZoneControl.Bench.Houses;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>Writes the settings of a house as the C# that the firmware compiles in.</summary>
internal static class SettingsSource
{
    public static string Of(House house, ControllerSettings settings, BoardPlan plan, IReadOnlyList<string> names, string fingerprint)
    {
        var text = new StringBuilder();
        void Line(string line = "") => text.Append(line).Append('\n');
        Line($"// Written by \"zonecontrol board\" from {Comment(house.FileName)} ({Comment(house.Name)}).");
        Line("// Change the house file and write this anew: the board refuses to run when what is below does not give the");
        Line("// fingerprint that stands beside it.");
        Line("using ZoneControl.Board;");
        Line("using ZoneControl.Logic;");
        Line();
        Line("namespace ZoneControl.Firmware;");
        Line();
        Line("/// <summary>Settings and pin plan of one house.</summary>");
        Line("public static class GeneratedSettings");
        Line("{");
        Line("    /// <summary>Fingerprint of settings, plan and names; the bench and the board's log show the same.</summary>");
        Line($"    public const string Fingerprint = \"{fingerprint}\";");
        Line();
        Line("    /// <summary>Names of the zones, z1 first.</summary>");
        Line("    public static string[] Names() => new string[]");
        Line("    {");
        foreach (string name in names)
            Line($"        \"{name}\",");
        Line("    };");
        Line();
        Line("    /// <summary>Fills settings and plan.</summary>");
        Line("    public static void Fill(ControllerSettings settings, BoardPlan plan)");
        Line("    {");
        Line("        Fill(settings);");
        Line("        Fill(plan);");
        Line("    }");
        Line();
        Fill(Line, "ControllerSettings s", "s", settings);
        Line();
        Fill(Line, "BoardPlan p", "p", plan);
        Line("}");
        return text.ToString();
    }

    private static void Fill(Action<string> line, string parameter, string name, object source)
    {
        line($"    private static void Fill({parameter})");
        line("    {");
        foreach (FieldInfo field in Fields(source.GetType()))
            line($"        {name}.{field.Name} = {Value(field.GetValue(source)!)};");
        line("    }");
    }

    /// <summary>The fields in the order in which they are declared.</summary>
    internal static IEnumerable<FieldInfo> Fields(Type type) =>
        type.GetFields(BindingFlags.Public | BindingFlags.Instance).OrderBy(field => field.MetadataToken);

    private static string Value(object value) => value switch
    {
        bool flag => flag ? "true" : "false",
        int number => Number(number),
        int[] numbers => numbers.Length == 0 ? "new int[0]" : $"new int[] {{ {string.Join(", ", numbers.Select(Number))} }}",
        _ => throw new NotSupportedException($"a setting of type {value.GetType().Name}"),
    };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Text that stays on its line of comment.</summary>
    private static string Comment(string text) => Files.Words.Clean(text).Replace('\u2028', ' ').Replace('\u2029', ' ').Replace('\u0085', ' ');
}
