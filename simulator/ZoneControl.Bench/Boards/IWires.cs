namespace ZoneControl.Bench.Boards;

/// <summary>What is wired to a board's pins.</summary>
public interface IWires
{
    /// <summary>The level that a pin has from outside: 1 for high, 0 for low.</summary>
    int Level(int pin);

    /// <summary>The board drives a pin to a level, or lets it float (-1).</summary>
    void Drive(int pin, int level);
}
