using System.ComponentModel;
using Spectre.Console.Cli;

namespace ZoneControl.Cli.Commands;

/// <summary>What <c>new</c> takes: the answers to its questions, for those who rather write than answer.</summary>
internal sealed class NewSettings : CommandSettings
{
    [CommandArgument(0, "<HOUSE>")]
    [Description("House file to write, such as my.house.toml.")]
    public string House { get; init; } = "";

    [CommandOption("--no-questions")]
    [Description("Ask nothing: options and common values are all there is. So too where there is nobody to ask.")]
    public bool NoQuestions { get; init; }

    [CommandOption("--replace")]
    [Description("Replace the file if it is there already.")]
    public bool Replace { get; init; }

    [CommandOption("--name <NAME>")]
    [Description("Name of the house.")]
    public string? Name { get; init; }

    [CommandOption("--units <UNITS>")]
    [Description("Units for results, and for common values that nobody gave: 'si' or 'us'.")]
    public string? Units { get; init; }

    [CommandOption("--zone <ZONE>")]
    [Description("A zone, once for each: \"Bath: four-wire, 60 m\" or \"Bath: four-wire, 200 ft\". Kinds: two-wire, four-wire, motorised, motorised with switch. An opening time may follow the kind: \"Den: two-wire 4 min, 80 m, 75 m\".")]
    public string[] Zones { get; init; } = [];

    [CommandOption("--pump-head <HEAD>")]
    [Description("Pump's head at no flow, from its label: \"5 m\" or \"16 ft\".")]
    public string? PumpHead { get; init; }

    [CommandOption("--pump-flow <FLOW>")]
    [Description("Pump's flow at no head, from its label: \"40 L/min\" or \"11 gpm\".")]
    public string? PumpFlow { get; init; }

    [CommandOption("--pump-power <POWER>")]
    [Description("Pump's electrical power, from its label.")]
    public string? PumpPower { get; init; }

    [CommandOption("--minimum-flow <FLOW>")]
    [Description("Flow below which the pump's maker does not want it run; else a tenth of the most.")]
    public string? MinimumFlow { get; init; }

    [CommandOption("--mains-length <LENGTH>")]
    [Description("Pipes from the pump to the manifold and back: \"10 m\" or \"30 ft\".")]
    public string? MainsLength { get; init; }

    [CommandOption("--mains-inside <LENGTH>")]
    [Description("Inside diameter of those pipes: \"26 mm\" or \"1.05 in\".")]
    public string? MainsInside { get; init; }

    [CommandOption("--tube <SIZE>")]
    [Description("Tube in the floor, such as \"16x2 mm\" or \"1/2 in\".")]
    public string? Tube { get; init; }

    [CommandOption("--standing-loop <LENGTH>")]
    [Description("Length of a loop without an actuator, always open; once for each.")]
    public string[] StandingLoops { get; init; } = [];

    [CommandOption("--bypass <PRESSURE>")]
    [Description("A spring bypass between supply and return that opens at this pressure: \"0.2 bar\" or \"3 psi\". Not the safety relief valve.")]
    public string? Bypass { get; init; }

    [CommandOption("--transformer <VA>")]
    [Description("Rating of the actuators' transformer, such as \"40 VA\".")]
    public string? Transformer { get; init; }

    [CommandOption("--contacts <LIST>")]
    [Description("Contacts fitted, with commas: season, flow, limit, freeze, priority, reset, supply, service.")]
    public string? Contacts { get; init; }

    [CommandOption("--gated")]
    [Description("An existing panel drives the valves; ZoneControl senses them and gates pump and heat demand.")]
    public bool Gated { get; init; }

    [CommandOption("--minimum-open <COUNT>")]
    [Description("Loops that must be open before the pump may run; else reckoned from pump and pipes.")]
    public int? MinimumOpen { get; init; }
}
