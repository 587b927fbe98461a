using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Scripts;
using ZoneControl.Web.View;

namespace ZoneControl.Cli;

/// <summary>
/// Reads the files that a command is given: warnings go to the error stream, mistakes end the command, every one of a file in
/// one message.
/// </summary>
/// <param name="streams">Where warnings go.</param>
/// <param name="undone">What comes of a mistake, such as "nothing was run".</param>
/// <param name="cancel">Stops the wait for a file that keeps one waiting.</param>
internal sealed class Inputs(Streams streams, string undone, CancellationToken cancel)
{
    /// <summary>Reads a house file, and shows its quantities in other units where a word for them is given.</summary>
    /// <exception cref="BadInputException">The file or the word cannot be used.</exception>
    public async Task<House> HouseAsync(string path, string? units = null)
    {
        DisplayUnits? shown = Units(units);
        HouseReading reading = await OfAsync(path, () => HouseFile.Read(path));
        House house = Used(reading.House, reading.Mistakes, path);
        return shown is { } u ? house with { Units = u } : house;
    }

    /// <summary>Reads a script for a house.</summary>
    /// <exception cref="BadInputException">The file cannot be used.</exception>
    public async Task<Script> ScriptAsync(string path, House house)
    {
        ScriptReading reading = await OfAsync(path, () => ScriptFile.Read(path, house));
        return Used(reading.Script, reading.Mistakes, path);
    }

    /// <summary>Reads a channel map for a house.</summary>
    /// <exception cref="BadInputException">The file cannot be used.</exception>
    public async Task<ChannelMap> MapAsync(string path, House house)
    {
        ChannelMapReading reading = await OfAsync(path, () => ChannelMapFile.Read(path, house));
        return Used(reading.Map, reading.Mistakes, path);
    }

    /// <summary>Reads whatever may keep one waiting.</summary>
    public Task<T> OfAsync<T>(string path, Func<T> read) => Patience.Read(read, path, streams, cancel);

    /// <summary>What was found, after its warnings.</summary>
    /// <exception cref="BadInputException">Nothing could be made of the file; the message has every mistake.</exception>
    public T Used<T>(T? found, IReadOnlyList<FileMistake> mistakes, string path)
        where T : class
    {
        if (found is null)
            throw Refused(mistakes, path);
        foreach (FileMistake warning in mistakes)
            streams.Error.WriteLine(warning);
        return found;
    }

    /// <summary>Every mistake of a file, and that nothing was done.</summary>
    /// <param name="mistakes">The mistakes.</param>
    /// <param name="path">The file.</param>
    /// <param name="more">A last sentence.</param>
    public BadInputException Refused(IReadOnlyList<FileMistake> mistakes, string path, string more = "")
    {
        int errors = mistakes.Count(m => m.IsError);
        string rest = $"{undone}. {more}".TrimEnd();
        if (mistakes is [var one])
            return new BadInputException($"{one}; {rest}"); // nothing to count
        string summary = $"{path}: {Quantity.Count(errors, "mistake")}; {rest}";
        return new BadInputException(string.Join('\n', [.. mistakes.Select(m => m.ToString()), summary]));
    }

    /// <summary>The system of units that an option names; null for none.</summary>
    /// <exception cref="BadInputException">There is no such system.</exception>
    public static DisplayUnits? Units(string? word) => word switch
    {
        null => null,
        "si" => DisplayUnits.Si,
        "us" => DisplayUnits.Us,
        _ => throw new BadInputException(Words.Unknown("system of units", word, ["si", "us"])),
    };
}
