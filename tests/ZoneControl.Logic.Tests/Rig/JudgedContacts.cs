namespace ZoneControl.Logic.Tests;

/// <summary>Debounce as the judge sees it: a contact is accepted once it has stood since its last change for long enough.</summary>
internal sealed class JudgedContacts(int contacts, int debounceMs, int atPowerUp)
{
    private readonly long[] _changed = new long[contacts];
    private int _raw;
    private bool _powered;

    public int Accepted { get; private set; } = atPowerUp;

    /// <summary>The first scan only looks: it accepts nothing.</summary>
    public void Look(long now, int raw)
    {
        for (int i = 0; i < _changed.Length; i++)
        {
            int bit = 1 << i;
            if (!_powered || ((raw ^ _raw) & bit) != 0)
                _changed[i] = now;
            if (_powered && ((raw ^ Accepted) & bit) != 0 && now - _changed[i] >= debounceMs)
                Accepted ^= bit;
        }

        _raw = raw;
        _powered = true;
    }
}

/// <summary>Which zones the rules let be open, worked out from calls and published alarms.</summary>
internal static class JudgedPlan
{
    /// <summary>
    /// OPEN-COMPANION: a healthy companion is wanted while standing capacity, healthy askers and the healthy companions
    /// before it fall short; late ones, while all healthy ones together do.
    /// </summary>
    public static int Wanted(ControllerSettings s, int asked, int late, int latched, out bool tooFew)
    {
        tooFew = false;
        if (asked == 0)
            return 0;
        int wanted = asked;
        int sum = s.StandingCapacity + Sum(s, asked & ~late);
        int[] companions = s.CompanionOrder.Where(z => !Bits.Has(asked, z)).ToArray();
        foreach (int zone in companions.Where(z => !Bits.Has(late, z)))
        {
            if (sum >= s.MinimumOpen)
                return wanted;
            wanted |= 1 << zone;
            sum += s.Capacity[zone];
        }

        tooFew = sum < s.MinimumOpen;
        return tooFew ? wanted | Bits.Of(companions) & ~latched : wanted;
    }

    public static int Sum(ControllerSettings s, int zones) =>
        Enumerable.Range(0, s.ZoneCount).Where(z => Bits.Has(zones, z)).Sum(z => s.Capacity[z]);
}
