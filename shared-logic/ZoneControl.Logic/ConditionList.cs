namespace ZoneControl.Logic;

/// <summary>A list of conditions, filled on request; the caller makes one and uses it again and again.</summary>
public sealed class ConditionList
{
    /// <summary>A wait that time alone does not end.</summary>
    public const int Unknown = -1;

    private const int Most = 9;

    /// <summary>How many conditions there are.</summary>
    public int Count { get; private set; }

    /// <summary>Which, in the fixed order of <see cref="Condition"/>.</summary>
    public readonly Condition[] Which = new Condition[Most];

    /// <summary>Whether each is met.</summary>
    public readonly bool[] Met = new bool[Most];

    /// <summary>ms until time will have met it; 0 when met, <see cref="Unknown"/> when something else has to happen.</summary>
    public readonly int[] WaitMs = new int[Most];

    internal void Clear() => Count = 0;

    internal void Add(Condition which, bool met, int waitMs)
    {
        Which[Count] = which;
        Met[Count] = met;
        WaitMs[Count] = met ? 0 : waitMs;
        Count++;
    }
}
