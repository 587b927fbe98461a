using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>season</c> takes.</summary>
internal sealed class SeasonSettings : SheetSettings
{
    [CommandArgument(1, "<WHAT>")]
    [Description("'start' or 'stop': the sheet to work by. 'commission': the run, on virtual pins. 'record': file what a person measured. 'history': what is on file.")]
    public string What { get; init; } = "";

    [CommandOption("--date <DAY>")]
    [Description("Day of a record, such as 2026-10-03; else today.")]
    public string? Date { get; init; }

    [CommandOption("--keep")]
    [Description("commission: file the record in the history beside the house file.")]
    public bool Keep { get; init; }

    [CommandOption("--fault <FAULT>")]
    [Description("commission: plant a fault: stuck=ZONE, dead=ZONE, no-switch=ZONE, lying-switch=ZONE, actuators=ZONE,ZONE or switches=ZONE,ZONE (wires exchanged), pump=unconnected, always, inverted, on-heat, or pump=ZONE (on its valve output).")]
    public string[] Faults { get; init; } = [];

    [CommandOption("--controller <NAME>")]
    [Description("commission: 'library' (ZoneControl's logic), which is the default, or 'firmware' (the compiled firmware on virtual pins).")]
    public string? Controller { get; init; }

    [CommandOption("--nobody")]
    [Description("commission: nobody looks at the manifold; only contacts speak.")]
    public bool Nobody { get; init; }

    [CommandOption("--season <SEASON>")]
    [Description("record: 'start' or 'stop'; else start.")]
    public string? Season { get; init; }

    [CommandOption("--opened <ZONE=TIME>")]
    [Description("record: from energised to fully open, by a watch, such as bath=\"3 min 5 s\".")]
    public string[] Opened { get; init; } = [];

    [CommandOption("--made <ZONE=TIME>")]
    [Description("record: from energised to the end switch.")]
    public string[] Made { get; init; } = [];

    [CommandOption("--closed <ZONE=TIME>")]
    [Description("record: from released to shut.")]
    public string[] Closed { get; init; } = [];

    [CommandOption("--pressure <PRESSURE>")]
    [Description("record: pressure of the cold circuit, such as \"1.4 bar\" or \"20 psi\".")]
    public string? Pressure { get; init; }

    [CommandOption("--note <WORDS>")]
    [Description("record: anything else.")]
    public string? Note { get; init; }
}
