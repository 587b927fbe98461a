using Spectre.Console;
using ZoneControl.Bench.Boards;
using ZoneControl.Board;

namespace ZoneControl.Cli.Terminal;

/// <summary>Writes what a house's board needs, 80 columns wide, readable without colour.</summary>
internal static class BoardTerminal
{
    /// <summary>The whole sheet.</summary>
    public static void Write(IAnsiConsole console, BoardSheet sheet)
    {
        Header(console, sheet);
        Pins(console, sheet);
        Terminals(console, sheet);
        Parts(console, sheet);
        Loads(console, sheet);
        List(console, "Look out", sheet.Warnings);
        List(console, "Cautions", sheet.Cautions);
    }

    private static void Header(IAnsiConsole console, BoardSheet sheet)
    {
        BoardPlan plan = sheet.Plan;
        Screen.Say(console, $"The board of {sheet.House.Name}", new Style(decoration: Decoration.Bold));
        console.WriteLine();
        Screen.Say(console, $"Fingerprint  {sheet.Fingerprint}  (the board's log begins with it)");
        Screen.Say(console, $"Pins         {Arrangement(sheet)}");
        Screen.Say(console, $"Relays       {(plan.RelaysActiveLow ? "a low level energises" : "a high level energises")}");
        Screen.Say(console, $"Contacts     a closed one makes its input {(plan.ClosedIsHigh ? "high" : "low")}");
        if (plan.AcKinds != 0)
            Screen.Say(console, $"24 V AC      {AcKinds(plan)}: seen one scan later, closing or opening");
    }

    private static string Arrangement(BoardSheet sheet)
    {
        BoardPlan plan = sheet.Plan;
        return plan.Arrangement == BoardPlan.Direct
            ? $"direct: {PinPlanner.DirectPins(sheet.House)} of {PinPlanner.UsablePins} that an ESP32 module can use"
            : $"chains of shift registers: {plan.InputBits / 8} x 74HC165 in, {plan.OutputBits / 8} x 74HC595 out";
    }

    private static string AcKinds(BoardPlan plan)
    {
        (int Kind, string Word)[] kinds =
            [(Role.Call, "thermostats"), (Role.Switch, "end switches"), (Role.Sense, "senses"), (Role.Hand, "hand switches"), (Role.Contact, "contacts")];
        return string.Join(", ", kinds.Where(kind => (plan.AcKinds & (1 << kind.Kind)) != 0).Select(kind => kind.Word));
    }

    private static void Pins(IAnsiConsole console, BoardSheet sheet)
    {
        Screen.Heading(console, "Pins of the module");
        Table table = Screen.Plain("GPIO", "way", "what", "off or closed");
        foreach (PinLine pin in sheet.Pins)
            table.AddRow(Screen.Cell($"{pin.Gpio}"), Screen.Cell(pin.Drives ? "out" : "in"), Screen.Cell(pin.Use), Screen.Cell(pin.Level));
        console.Write(table);
        Screen.Say(console, "Last column: the level at which an output is off, or that a closed contact gives.");
    }

    private static void Terminals(IAnsiConsole console, BoardSheet sheet)
    {
        Screen.Heading(console, "Terminals");
        Table table = Screen.Plain("no.", "wire", "arrives at", "meaning");
        foreach (TerminalLine line in sheet.Terminals)
            table.AddRow(Screen.Cell(line.Terminal), Screen.Cell(line.Use), Screen.Cell(line.At), Screen.Cell(line.Meaning));
        console.Write(table);
    }

    private static void Parts(IAnsiConsole console, BoardSheet sheet)
    {
        Screen.Heading(console, "Parts, by generic type");
        Table table = Screen.Plain("", "part", "for");
        foreach (PartLine part in sheet.Parts)
            table.AddRow(Screen.Cell($"{part.Count}"), Screen.Cell(part.Part), Screen.Cell(part.For));
        console.Write(table);
    }

    private static void Loads(IAnsiConsole console, BoardSheet sheet)
    {
        Screen.Heading(console, "Loads");
        Table table = Screen.Plain("sum", "", "from");
        foreach (LoadLine load in sheet.Loads)
            table.AddRow(Screen.Cell(load.What), Screen.Cell(load.Value), Screen.Cell(load.From));
        console.Write(table);
    }

    private static void List(IAnsiConsole console, string heading, IReadOnlyList<string> lines)
    {
        Screen.Heading(console, heading);
        var grid = new Grid().AddColumn(new GridColumn().NoWrap().PadRight(1)).AddColumn(new GridColumn().PadRight(0));
        foreach (string line in lines)
            grid.AddRow(Screen.Cell("-"), Screen.Cell(line));
        console.Write(grid);
    }
}
