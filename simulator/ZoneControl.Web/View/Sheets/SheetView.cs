namespace ZoneControl.Web.View.Sheets;

/// <summary>A document for a person to read, print or write on: the same for the terminal and for one HTML file.</summary>
/// <param name="Kind">What it is, over the title: "House check".</param>
/// <param name="Title">Title.</param>
/// <param name="House">The house's name and what it consists of.</param>
/// <param name="Lead">A few sentences before the sections; possibly "".</param>
/// <param name="Sections">Its sections.</param>
public sealed record SheetView(string Kind, string Title, string House, string Lead, IReadOnlyList<SheetSection> Sections)
{
    /// <summary>The verdict on top; null for a document that judges nothing.</summary>
    public SheetVerdict? Verdict { get; init; }

    /// <summary>The house's name alone.</summary>
    public string HouseName => House.LastIndexOf(": ", StringComparison.Ordinal) is > 0 and var colon ? House[..colon] : House;

    /// <summary>Whether its numbers come from a model, which the cautions then say.</summary>
    public bool FromModel { get; init; } = true;

    /// <summary>The day for the foot of a printed page, yyyy-MM-dd; "" for none.</summary>
    public string Date { get; init; } = "";
}

/// <summary>A verdict.</summary>
/// <param name="Good">Whether it is a good one.</param>
/// <param name="Word">The word in large letters.</param>
/// <param name="Line">What it rests on.</param>
public sealed record SheetVerdict(bool Good, string Word, string Line);

/// <summary>A section under a heading.</summary>
/// <param name="Heading">The heading.</param>
/// <param name="Blocks">What is in it.</param>
public sealed record SheetSection(string Heading, IReadOnlyList<SheetBlock> Blocks);

/// <summary>Something in a section.</summary>
public abstract record SheetBlock;

/// <summary>A paragraph.</summary>
/// <param name="Words">Its text.</param>
public sealed record SheetText(string Words) : SheetBlock;

/// <summary>A paragraph that warns.</summary>
/// <param name="Words">Its text.</param>
public sealed record SheetCaution(string Words) : SheetBlock;

/// <summary>A table.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Columns">Headings; a cell of a number column stands to the right.</param>
/// <param name="Rows">Cells, as many as columns; "" for an empty one to write in.</param>
public sealed record SheetTable(string Caption, IReadOnlyList<SheetColumn> Columns, IReadOnlyList<IReadOnlyList<string>> Rows) : SheetBlock;

/// <summary>A column.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Number">Whether it holds numbers.</param>
/// <param name="Blank">Whether it is to be written in, so that it needs room on paper.</param>
public sealed record SheetColumn(string Heading, bool Number = false, bool Blank = false);

/// <summary>Steps to tick off one after the other.</summary>
/// <param name="Steps">The steps.</param>
public sealed record SheetSteps(IReadOnlyList<SheetStep> Steps) : SheetBlock;

/// <summary>One step.</summary>
/// <param name="Words">What to do.</param>
/// <param name="Fields">What to write down, such as "pressure, bar"; possibly none.</param>
public sealed record SheetStep(string Words, params string[] Fields);

/// <summary>Findings, each with what to change.</summary>
/// <param name="Findings">The findings.</param>
public sealed record SheetFindings(IReadOnlyList<SheetFinding> Findings) : SheetBlock;

/// <summary>How a finding stands out.</summary>
public enum SheetMark
{
    /// <summary>As it should be.</summary>
    Fine,

    /// <summary>Worth a look.</summary>
    Advice,

    /// <summary>Wrong.</summary>
    Fault,
}

/// <summary>One finding.</summary>
/// <param name="Mark">How it stands out.</param>
/// <param name="Topic">What it is about.</param>
/// <param name="Says">What was found.</param>
/// <param name="Basis">The rule behind it; possibly "".</param>
/// <param name="Change">What to change; possibly "".</param>
public sealed record SheetFinding(SheetMark Mark, string Topic, string Says, string Basis, string Change);

/// <summary>Bars side by side, one for each line; their words carry the unit.</summary>
/// <param name="Title">What is drawn.</param>
/// <param name="Bars">The bars.</param>
public sealed record SheetBars(string Title, IReadOnlyList<SheetBar> Bars) : SheetBlock
{
    /// <summary>What the longest bar stands for, since bars of two documents are not to one scale; "" where there is none.</summary>
    public string Scale => Bars.MaxBy(bar => bar.Value) is { Value: > 0 } longest ? $"the longest bar is {longest.Words}" : "";
}

/// <summary>One bar.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">Its length; 0 or more.</param>
/// <param name="Words">Its number as people read it.</param>
public sealed record SheetBar(string Name, double Value, string Words);

/// <summary>Lines to copy into a file, as they are.</summary>
/// <param name="Caption">What they are.</param>
/// <param name="Lines">The lines.</param>
public sealed record SheetLines(string Caption, IReadOnlyList<string> Lines) : SheetBlock;
