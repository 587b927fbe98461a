using System.Globalization;
using System.Reflection;
using Spectre.Console.Cli;

namespace ZoneControl.Cli;

/// <summary>
/// Looks at the words of the command line before they are taken apart, because the parser's own messages don't name the word
/// that may have been meant when there is a command to fall back on, and name types where a value is no number.
/// </summary>
internal static class ArgumentCheck
{
    private static readonly string[] _everywhere = ["--help", "--version"];

    /// <summary>Checks command and option names, and that numbers are numbers; every mistake in one message.</summary>
    /// <param name="args">The arguments.</param>
    /// <param name="commands">Settings type of each command; "" is the program without one.</param>
    /// <returns>The arguments as the parser reads them rightly: it parts a value such as "-3 ft" at its blank unless "=" joins it.</returns>
    /// <exception cref="BadInputException">A word that is not known, or a value that is no number where one is asked for.</exception>
    public static IReadOnlyList<string> Check(IReadOnlyList<string> args, IReadOnlyDictionary<string, Type> commands)
    {
        string command = args.Count > 0 && !args[0].StartsWith('-') ? args[0] : "";
        if (command == "help" && !commands.ContainsKey(command))
            throw new BadInputException("There is no command 'help'. 'zonecontrol --help' shows what there is, 'zonecontrol run --help' what one command takes.");
        if (!commands.TryGetValue(command, out Type? settings))
            throw new BadInputException(Words.Unknown("command", command, [.. commands.Keys.Where(name => name.Length > 0)]));
        Dictionary<string, Option> options = Options(settings);
        string[] known = [.. options.Keys, .. _everywhere];
        var mistakes = new List<string>();
        List<string> joined = [.. args];
        for (int i = 0; i < args.Count && args[i] != "--"; i++)
        {
            string[] parts = args[i].Split(['=', ':'], 2);
            if (!parts[0].StartsWith("--", StringComparison.Ordinal))
                continue;
            if (!known.Contains(parts[0]))
                mistakes.Add(Words.Unknown("option", parts[0], known));
            else if (options.GetValueOrDefault(parts[0]) is { ValueName: { } name } option)
            {
                string? value = parts.Length > 1 ? parts[1] : i + 1 < args.Count && !IsOption(args[i + 1]) ? args[++i] : null;
                if (value is null)
                    mistakes.Add($"Option '{parts[0]}' needs a value: {parts[0]} {name}.");
                else if (WrongNumber(option.Type, value) is { } expected)
                    mistakes.Add($"{parts[0]}: found \"{value}\", expected {expected}");
                else if (parts.Length == 1 && value.StartsWith('-'))
                    (joined[i - 1], joined[i]) = ($"{parts[0]}={value}", "");
            }
        }

        if (mistakes.Count > 0)
            throw new BadInputException(string.Join('\n', mistakes));
        return [.. joined.Where((word, i) => word.Length > 0 || args[i].Length == 0)];
    }

    /// <summary>A word that begins like an option; a negative number does not.</summary>
    private static bool IsOption(string word) => word.StartsWith('-') && !(word.Length > 1 && char.IsAsciiDigit(word[1]));

    /// <summary>What is expected where a value does not suit its option; null where it does.</summary>
    private static string? WrongNumber(Type type, string value)
    {
        bool whole = long.TryParse(value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long number);
        return type switch
        {
            _ when type == typeof(int) && whole && number is < int.MinValue or > int.MaxValue => "a smaller number",
            _ when type == typeof(int) || type == typeof(long) => whole ? null : "a whole number",
            _ when type == typeof(double) => double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? null : "a number",
            _ => null,
        };
    }

    /// <summary>The long options of a command.</summary>
    private static Dictionary<string, Option> Options(Type settings) =>
        settings.GetProperties()
            .Select(property => (property.PropertyType, Option: property.GetCustomAttribute<CommandOptionAttribute>()))
            .Where(pair => pair.Option is not null)
            .SelectMany(pair => pair.Option!.LongNames.Select(name => ("--" + name,
                new Option(pair.Option.ValueName, Nullable.GetUnderlyingType(pair.PropertyType) ?? pair.PropertyType))))
            .ToDictionary(pair => pair.Item1, pair => pair.Item2);

    /// <summary>An option: the name of its value, null for one that takes none, and its type.</summary>
    private sealed record Option(string? ValueName, Type Type);
}
