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
        if (!commands.TryGetValue(command, out Type? settings))
            throw new BadInputException(Words.Unknown("command", command, [.. commands.Keys.Where(name => name.Length > 0)]));
        string[] known = [.. Options(settings), .. _everywhere];
        foreach (string arg in args)
        {
            if (arg == "--")
                return;
            string name = arg.Split('=', ':')[0];
            if (name.StartsWith("--", StringComparison.Ordinal) && !known.Contains(name))
                throw new BadInputException(Words.Unknown("option", name, known));
        }
    }

    private static IEnumerable<string> Options(Type settings) =>
        settings.GetProperties()
            .Select(property => property.GetCustomAttribute<CommandOptionAttribute>())
            .OfType<CommandOptionAttribute>()
            .SelectMany(option => option.LongNames)
            .Select(name => "--" + name);
}
