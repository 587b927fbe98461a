using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What every command takes that has a result for people and for programs.</summary>
internal class ResultSettings : CommandSettings
{
    [CommandOption("--json")]
    [Description("Print the result as JSON, and nothing else, on standard output.")]
    public bool Json { get; init; }
}

/// <summary>What every command takes whose result is about a house.</summary>
internal class HouseSettings : ResultSettings
{
    [CommandArgument(0, "<HOUSE>")]
    [Description("House file (TOML).")]
    public string House { get; init; } = "";
}
