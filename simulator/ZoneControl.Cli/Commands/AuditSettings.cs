using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>audit</c> takes.</summary>
internal sealed class AuditSettings : HouseSettings
{
    [CommandArgument(1, "<CAPTURE>")]
    [Description("Capture: value change dump (VCD), table of time and channels (CSV), or the board's own log. A pipe or a serial port will do; Ctrl-C ends it with the verdict so far.")]
    public string Capture { get; init; } = "";

    [CommandOption("--map <FILE>")]
    [Description("Channel map (TOML): which signal of the capture is which channel. Signals named like channels need none.")]
    public string? Map { get; init; }

    [CommandOption("--report <FILE>")]
    [Description("Write the report as one HTML file that opens without a network.")]
    public string? Report { get; init; }
}
