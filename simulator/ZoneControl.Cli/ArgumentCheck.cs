using System.Reflection;
using Spectre.Console.Cli;

namespace ZoneControl.Cli;

/// <summary>
/// Looks at the words of the command line before they are taken apart, because the parser's own messages don't name the word
/// that may have been meant when there is a command to fall back on.
/// </summary>
internal static class ArgumentCheck
{
    private static readonly string[] _everywhere = ["--help", "--version"];

    /// <summary>Checks command and option names.</summary>
    /// <param name="args">The arguments.</param>
    /// <param name="commands">Settings type of each command; "" is the program without one.</param>
    /// <exception cref="BadInputException">A word that is not known.</exception>
    public static void Check(IReadOnlyList<string> args, IReadOnlyDictionary<string, Type> commands)
    {
        string command = args.Count > 0 && !args[0].StartsWith('-') ? args[0] : "";
        if (command == "help" && !commands.ContainsKey(command))
            throw new BadInputException("There is no command 'help'. 'zonecontrol --help' shows what there is, 'zonecontrol run --help' what one command takes.");
        if (!commands.TryGetValue(command, out Type? settings))
            throw new BadInputException(Words.Unknown("command", command, [.. commands.Keys.Where(name => name.Length > 0)]));
        Dictionary<string, string?> options = Options(settings);
        string[] known = [.. options.Keys, .. _everywhere];
        for (int i = 0; i < args.Count && args[i] != "--"; i++)
        {
            string[] parts = args[i].Split(['=', ':'], 2);
            if (!parts[0].StartsWith("--", StringComparison.Ordinal))
                continue;
            if (!known.Contains(parts[0]))
                throw new BadInputException(Words.Unknown("option", parts[0], known));
            bool given = parts.Length > 1 || (i + 1 < args.Count && !args[i + 1].StartsWith('-'));
            if (options.GetValueOrDefault(parts[0]) is { } value && !given)
                throw new BadInputException($"Option '{parts[0]}' needs a value: {parts[0]} {value}.");
        }
    }

    /// <summary>The long options of a command, each with the name of its value; null for those that take none.</summary>
    private static Dictionary<string, string?> Options(Type settings) =>
        settings.GetProperties()
            .Select(property => property.GetCustomAttribute<CommandOptionAttribute>())
            .OfType<CommandOptionAttribute>()
            .SelectMany(option => option.LongNames.Select(name => ("--" + name, option.ValueName)))
            .ToDictionary(pair => pair.Item1, pair => pair.ValueName);
}
