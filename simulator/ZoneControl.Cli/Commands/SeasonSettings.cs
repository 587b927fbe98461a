using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>season</c> takes.</summary>
internal sealed class SeasonSettings : SheetSettings
{
    [CommandArgument(1, "<WHAT>")]
    [Description("'start' or 'stop': the sheet to work by. 'commission': a rehearsal of the commissioning run on virtual pins. 'record': file what a person measured. 'history': what is on file. Records lie beside the house file: house.toml or my.house.toml has the folder house.history or my.history, a JSON file for each. Exit code: 0 no fault (incomplete or slow included), 1 a fault, 2 bad input.")]
    public string What { get; init; } = "";

    [CommandOption("--date <DAY>")]
    [Description("record, commission: day of the record, such as 2026-10-03; else today.")]
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

    [CommandOption("--ask")]
    [Description("commission: ask you, at the terminal, what moved, got warm and was heard; else a model of a person says what it sees.")]
    public bool Ask { get; init; }

    [CommandOption("--season <SEASON>")]
    [Description("record: 'start' or 'stop'; else start.")]
    public string? Season { get; init; }

    [CommandOption("--opened <ZONE=TIME>")]
    [Description("record: from switched on until the stem stands still, by a watch, such as bath=\"3 min 5 s\". For any zone; the only time that a two-wire valve has.")]
    public string[] Opened { get; init; } = [];

    [CommandOption("--made <ZONE=TIME>")]
    [Description("record: from switched on until the end switch says open. Only for a zone with an end switch, which makes before the end of the stroke.")]
    public string[] Made { get; init; } = [];

    [CommandOption("--closed <ZONE=TIME>")]
    [Description("record: from switched off until the stem stands still.")]
    public string[] Closed { get; init; } = [];

    [CommandOption("--pressure <PRESSURE>")]
    [Description("record: pressure of the cold circuit, such as \"1.4 bar\" or \"20 psi\"; up to 10 bar (145 psi).")]
    public string? Pressure { get; init; }

    [CommandOption("--note <WORDS>")]
    [Description("record: anything else.")]
    public string? Note { get; init; }

    /// <summary>Options that do nothing with the chosen work are refused, for they were meant to do something.</summary>
    /// <exception cref="BadInputException">There are some.</exception>
    public void RefuseIdle()
    {
        const string Commission = "commission";
        const string Record = "record";
        (string Option, bool Given, string[] For)[] options =
        [
            ("--date", Date is not null, [Record, Commission]),
            ("--keep", Keep, [Commission]),
            ("--fault", Faults.Length > 0, [Commission]),
            ("--controller", Controller is not null, [Commission]),
            ("--nobody", Nobody, [Commission]),
            ("--ask", Ask, [Commission]),
            ("--season", Season is not null, [Record]),
            ("--opened", Opened.Length > 0, [Record]),
            ("--made", Made.Length > 0, [Record]),
            ("--closed", Closed.Length > 0, [Record]),
            ("--pressure", Pressure is not null, [Record]),
            ("--note", Note is not null, [Record]),
        ];
        string[] idle =
        [
            .. options.Where(option => option.Given && !option.For.Contains(What))
                .Select(option => $"{option.Option}: does nothing with season {What}; it is for season {string.Join(" and ", option.For)}."),
        ];
        if (idle.Length > 0)
            throw new BadInputException(string.Join('\n', idle));
    }
}
