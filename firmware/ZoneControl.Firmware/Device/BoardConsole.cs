using System;

namespace ZoneControl.Firmware;

/// <summary>The chip's own console.</summary>
public sealed class BoardConsole : IConsole
{
    /// <inheritdoc/>
    public void WriteLine(string line) => Console.WriteLine(line);
}
