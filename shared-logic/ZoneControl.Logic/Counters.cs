namespace ZoneControl.Logic;

/// <summary>
/// What the controller has counted since power-up. Apart from its state: nothing is decided by it. Counts stop at
/// <see cref="int.MaxValue"/> rather than turn negative.
/// </summary>
public sealed class Counters
{
    internal Counters(int zones) => Strokes = new int[zones];

    /// <summary>Pump starts.</summary>
    public int PumpStarts;

    /// <summary>Pump stops because a condition was lost while it ran.</summary>
    public int Trips;

    /// <summary>Times the pump was wanted and held.</summary>
    public int Holds;

    /// <summary>Exercises done.</summary>
    public int Exercises;

    /// <summary>Whole seconds that the pump ran.</summary>
    public int PumpRunS => Ran.Count;

    /// <summary>Times each zone's valves were energised.</summary>
    public readonly int[] Strokes;

    internal readonly WholeSeconds Ran = new WholeSeconds();

    internal void Energised(int zones)
    {
        for (int zone = 0; zones != 0; zone++, zones >>= 1)
        {
            if ((zones & 1) != 0)
                Strokes[zone] = Next(Strokes[zone]);
        }
    }

    internal static int Next(int count) => count == int.MaxValue ? count : count + 1;
}
