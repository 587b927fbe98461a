using Spectre.Console;
using ZoneControl.Bench.Choosing.NewHouses;
using ZoneControl.Bench.Files;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Cli.Commands;

/// <summary>Asks what a person in front of the manifold can answer: each question explained, with the common value to take by Enter.</summary>
internal sealed class NewQuestions(IAnsiConsole console)
{
    /// <summary>Asks for what the options have not given yet.</summary>
    public HouseAnswers Ask(HouseAnswers given, NewSettings settings)
    {
        Say("A house file says what is there: pump, pipes, valves, rooms. Enter takes the value in brackets; every answer can be changed in the file.");
        HouseAnswers a = given with
        {
            Name = settings.Name ?? Text("Name of the house", "Shown on sheets and reports.", given.Name),
            Units = settings.Units ?? Choice("Units for results", "si: metres, litres a minute, °C. us: feet, gallons a minute, °F.", ["si", "us"], "si"),
        };
        CommonValues common = CommonValues.Of(a.Units);
        a = a with
        {
            PumpHead = a.PumpHead ?? Measure("Pump: most head", "Its label or data sheet: the highest head, at no flow.", Dimension.Head, common.PumpHead),
            PumpFlow = a.PumpFlow ?? Measure("Pump: most flow", "The same label: the most flow, at no head.", Dimension.Flow, common.PumpFlow),
            PumpPower = a.PumpPower ?? Measure("Pump: power", "Electrical power on the label; all of it may heat water that does not move.", Dimension.Power, common.PumpPower),
            MinimumFlow = a.MinimumFlow ?? Optional("Pump: least flow", "Below it the maker does not want the pump run. Enter: a tenth of the most flow.", Dimension.Flow),
            MainsLength = a.MainsLength ?? Measure("Pipes to the manifold", "From the pump to the manifold and back, both ways together.", Dimension.Length, common.MainsLength),
            MainsInside = a.MainsInside ?? Measure("Their inside diameter", "Inside, not outside: a tape round the pipe says more than the truth.", Dimension.Length, common.MainsInside),
            Tube = a.Tube ?? Choice("Tube in the floor", "Printed on the tube where it comes out of the floor.", [.. TubeSizes.All.Select(size => size.Word)], common.Tube),
            Gated = a.Gated || Yes("Does an existing panel drive the valves", "Then ZoneControl senses its valves and gates pump and heat demand.", false),
            Zones = a.Zones.Count > 0 ? a.Zones : Zones(),
            StandingLoops = a.StandingLoops.Count > 0 ? a.StandingLoops
                : Lengths("Loops without an actuator", "Always open, by a hand valve: their lengths with commas. Enter: none.", mayBeNone: true),
            Bypass = a.Bypass ?? Optional("Spring bypass opens at", "A relief valve between supply and return, and the pressure on its scale. Enter: none.", Dimension.Pressure),
        };
        return a with
        {
            Transformer = a.Transformer ?? (a.Gated ? null
                : Optional("Transformer", "The VA on the plate of what feeds the actuators. Enter: not known, loads are not watched.", Dimension.Load)),
            Contacts = settings.Contacts is null ? Contacts() : a.Contacts,
        };
    }

    private List<ZoneAnswers> Zones()
    {
        Say("Zones: one thermostat and the loops that it opens, in the order of the terminals. An empty name ends the list.");
        var zones = new List<ZoneAnswers>();
        while (zones.Count < Logic.ControllerSettings.MostZones)
        {
            string name = console.Prompt(new TextPrompt<string>($"Zone {zones.Count + 1}: name").AllowEmpty()).Trim();
            if (name.Length == 0 && zones.Count > 0)
                break;
            if (name.Length is 0 or > 40)
            {
                Say("At least one zone is needed, with a name of at most 40 characters.");
                continue;
            }

            string kind = Choice("  Actuator", "Count its wires: two-wire says nothing when open; four-wire has an end switch; a motor hums and springs back.",
                [.. NewAnswers.Kinds], zones.Count > 0 ? zones[^1].Kind : "two-wire");
            string opening = Measure("  Opens in, at worst", "From switched on to fully open: cold, old, on a low supply.", Dimension.Time,
                zones.Count > 0 && zones[^1].Kind == kind ? zones[^1].Opening! : CommonValues.Opening(kind));
            zones.Add(new ZoneAnswers(name, kind, opening, Lengths("  Lengths of its loops", "With commas, from the sheet at the manifold or the marks on the tube.", mayBeNone: false)));
        }

        return zones;
    }

    private List<string> Contacts()
    {
        Say("Contacts beside thermostats and end switches. Common for a first build: the season switch and the reset button.");
        var fitted = new List<string>();
        foreach (ContactKind kind in ContactKind.All)
        {
            if (Yes($"  {kind.Label}", $"Its two states are \"{kind.Asserted}\" and \"{kind.Resting}\".", kind.Key is "season" or "reset"))
                fitted.Add(kind.Key);
        }

        if (Yes("  hand switches", "One for each zone's valves and one for the pump, for commissioning.", true))
            fitted.Add("service");
        return fitted;
    }

    private string Text(string ask, string explain, string common)
    {
        Say(explain);
        return console.Prompt(new TextPrompt<string>(ask).DefaultValue(common)
            .Validate(text => text.Trim().Length is >= 1 and <= 60 ? ValidationResult.Success() : ValidationResult.Error("1 to 60 characters")));
    }

    private string Measure(string ask, string explain, Dimension dimension, string common)
    {
        Say(explain);
        return console.Prompt(new TextPrompt<string>(ask).DefaultValue(common).Validate(text => Judge(text, dimension)));
    }

    private string? Optional(string ask, string explain, Dimension dimension)
    {
        Say(explain);
        string text = console.Prompt(new TextPrompt<string>(ask).AllowEmpty()
            .Validate(text => text.Trim().Length == 0 ? ValidationResult.Success() : Judge(text, dimension))).Trim();
        return text.Length == 0 ? null : text;
    }

    private string[] Lengths(string ask, string explain, bool mayBeNone)
    {
        Say(explain);
        string text = console.Prompt(new TextPrompt<string>(ask).AllowEmpty().Validate(text =>
        {
            string[] lengths = Split(text);
            if (lengths.Length == 0)
                return mayBeNone ? ValidationResult.Success() : ValidationResult.Error("at least one length, such as 80 m");
            return lengths.Select(length => Judge(length, Dimension.Length)).FirstOrDefault(judged => !judged.Successful) ?? ValidationResult.Success();
        }));
        return Split(text);
    }

    private string Choice(string ask, string explain, string[] choices, string common)
    {
        Say($"{explain} One of: {string.Join(", ", choices)}.");
        return console.Prompt(new TextPrompt<string>(ask).DefaultValue(common)
            .Validate(text => choices.Contains(text) ? ValidationResult.Success() : ValidationResult.Error(Markup.Escape(Words.Unknown("choice", text, choices)))));
    }

    private bool Yes(string ask, string explain, bool common)
    {
        Say(explain);
        return console.Prompt(new ConfirmationPrompt(ask + "?") { DefaultValue = common });
    }

    private void Say(string text) => console.WriteLine(text);

    private static string[] Split(string text) => text.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static ValidationResult Judge(string text, Dimension dimension)
    {
        QuantityReading reading = Quantities.Read(text, dimension);
        string hint = reading.Hint.Length > 0 ? $" ({reading.Hint})" : "";
        return reading.Value is not null
            ? ValidationResult.Success()
            : ValidationResult.Error(Markup.Escape($"found {reading.Found}, expected {dimension.Name} such as {dimension.Examples}{hint}"));
    }
}
