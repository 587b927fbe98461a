namespace ZoneControl.Firmware;

/// <summary>Where the log goes.</summary>
public interface IConsole
{
    /// <summary>Writes a line; it may take as long as it likes.</summary>
    void WriteLine(string line);
}
