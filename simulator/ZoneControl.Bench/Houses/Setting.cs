namespace ZoneControl.Bench.Houses;

/// <summary>A value that the house file may give, and otherwise gets from a rule of thumb or from other values.</summary>
/// <typeparam name="T">Type of the value.</typeparam>
/// <param name="Value">The value in force.</param>
/// <param name="DerivedFrom">Where it came from when the file does not give it, in words; null when the file gives it.</param>
/// <param name="Line">Line of the house file that gives it, from 1; 0 when derived.</param>
public sealed record Setting<T>(T Value, string? DerivedFrom, int Line)
{
    /// <summary>Whether the file gives it.</summary>
    public bool IsGiven => DerivedFrom is null;
}

/// <summary>Makes settings.</summary>
public static class Setting
{
    /// <summary>A value that the file gives at a line (from 1; 0 when made in code).</summary>
    public static Setting<T> Given<T>(T value, int line = 0) => new(value, null, line);

    /// <summary>A value that follows from something else, named in words.</summary>
    public static Setting<T> Derived<T>(T value, string from) => new(value, from, 0);
}

/// <summary>One setting as people read it: for tables of what is in force and why.</summary>
/// <param name="Key">Key in the house file: "controller.pump_overrun".</param>
/// <param name="Text">The value in words: "2 min".</param>
/// <param name="DerivedFrom">Where it came from; null when the file gives it.</param>
/// <param name="Line">Line that gives it; 0 when derived.</param>
public sealed record SettingLine(string Key, string Text, string? DerivedFrom, int Line);
