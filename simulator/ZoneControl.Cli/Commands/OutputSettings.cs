using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>Options of everything that runs a script. Without files to read it is what the demo takes.</summary>
internal class OutputSettings : ResultSettings
{
    [CommandOption("--report <FILE>")]
    [Description("Write the report as one HTML file that opens without a network.")]
    public string? Report { get; init; }

    [CommandOption("--trace <FILE>")]
    [Description("Write everything the judged run recorded as CSV.")]
    public string? Trace { get; init; }

    [CommandOption("--vcd <FILE>")]
    [Description("Write what the judged run recorded as a value change dump (IEEE 1364), for waveform viewers and 'audit'.")]
    public string? Vcd { get; init; }

    [CommandOption("--controller <NAME>")]
    [Description("Who drives the pump: 'library' (ZoneControl's logic), 'firmware' (the board's compiled program on virtual pins) or 'straight' (the pump wired straight to the calls). Give it twice to compare two; the default is library and straight. The verdict is that of the first in this order.")]
    public string[] Controllers { get; init; } = [];

    [CommandOption("--pins <WHICH>")]
    [Description("How the firmware's pins are arranged: 'house' (as the house file has it, the default), 'direct' or 'chains'.")]
    public string? Pins { get; init; }

    [CommandOption("--board-log <FILE>")]
    [Description("Write what the firmware logged on its console.")]
    public string? BoardLog { get; init; }
}

/// <summary>What <c>run</c> takes.</summary>
internal sealed class RunSettings : OutputSettings
{
    [CommandArgument(0, "<HOUSE>")]
    [Description("House file (TOML).")]
    public string House { get; init; } = "";

    [CommandArgument(1, "<SCRIPT>")]
    [Description("Script file (TOML).")]
    public string Script { get; init; } = "";

    [CommandOption("--without <PROTECTION>")]
    [Description("What if: the library's controller without 'proof', 'companion', 'handover' or 'delay'. See 'prove'.")]
    public string? Without { get; init; }
}
