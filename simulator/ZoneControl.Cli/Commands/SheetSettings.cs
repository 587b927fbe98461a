using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What every command takes that makes a document about a house.</summary>
internal class SheetSettings : HouseSettings
{
    [CommandOption("--units <UNITS>")]
    [Description("'si' or 'us', whatever the house file says.")]
    public string? Units { get; init; }

    [CommandOption("--report <FILE>")]
    [Description("Write it as one HTML file that opens without a network and prints.")]
    public string? Report { get; init; }
}
