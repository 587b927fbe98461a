using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>prove</c> takes.</summary>
internal sealed class ProveSettings : HouseSettings
{
    [CommandOption("--max-time <SECONDS>")]
    [Description("Stop after so many seconds (600) and say how far it came.")]
    [DefaultValue(600)]
    public int MaxTime { get; init; } = 600;

    [CommandOption("--max-states <COUNT>")]
    [Description("Stop after so many states in one search.")]
    public long? MaxStates { get; init; }

    [CommandOption("--max-memory <MB>")]
    [Description("Stop when states take so many MB (2048).")]
    [DefaultValue(2048)]
    public int MaxMemory { get; init; } = 2048;

    [CommandOption("--scans <COUNT>")]
    [Description("Largest scaled time, in scans, to keep more sums of times (1: order alone).")]
    [DefaultValue(1)]
    public int Scans { get; init; } = 1;

    [CommandOption("--without <PROTECTION>")]
    [Description("What if: take away 'proof', 'companion', 'handover' or 'delay', and see the shortest way to harm.")]
    public string? Without { get; init; }

    [CommandOption("--script <FILE>")]
    [Description("Write the script that breaks a rule, for 'run'.")]
    public string? Script { get; init; }

    [CommandOption("--report <FILE>")]
    [Description("Write the report of that script's run as one HTML file.")]
    public string? Report { get; init; }
}
