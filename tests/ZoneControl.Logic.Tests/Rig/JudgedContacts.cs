namespace ZoneControl.Logic.Tests;

/// <summary>Debounce as the judge sees it: a contact is accepted once it has stood since its last change for long enough.</summary>
internal sealed class JudgedContacts(int[] debounceMs, int atPowerUp)
{
    private readonly long[] _changed = new long[debounceMs.Length];
    private int _raw;

    public int Accepted { get; private set; } = atPowerUp;

    public int Before { get; private set; } = atPowerUp;

    public int Rose => Accepted & ~Before;

    public int Fell => Before & ~Accepted;

    public static JudgedContacts OfZones(int zones, int debounceMs) => new(Enumerable.Repeat(debounceMs, zones).ToArray(), 0);

    /// <summary>A scan that only looks, as the first after power-up and one whose clock cannot be trusted: it accepts nothing.</summary>
    public void Begin(long now, int raw)
    {
        Array.Fill(_changed, now);
        _raw = raw;
        Before = Accepted;
    }

    public void Look(long now, int raw)
    {
        Before = Accepted;
        for (int i = 0; i < _changed.Length; i++)
        {
            int bit = 1 << i;
            if (((raw ^ _raw) & bit) != 0)
                _changed[i] = now;
            if (((raw ^ Accepted) & bit) != 0 && now - _changed[i] >= debounceMs[i])
                Accepted ^= bit;
        }

        _raw = raw;
    }
}
