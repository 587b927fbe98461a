namespace ZoneControl.Logic;

/// <summary>
/// Debounce for up to 16 contacts that share one time: a contact's new state is accepted once it has stood that long,
/// counted from the scan that first saw it. A contact that falls back meanwhile starts again.
/// </summary>
internal sealed class ContactFilter
{
    /// <summary>Contacts as the last scan read them.</summary>
    public int Seen;

    /// <summary>Contacts as accepted.</summary>
    public int Accepted;

    /// <summary>How long each contact that differs from its accepted state has stood, ms; 0 for the others.</summary>
    public readonly int[] AgeMs;

    public ContactFilter(int contacts) => AgeMs = new int[contacts];

    /// <summary>Takes in what this scan read, <paramref name="dt"/> ms after the last.</summary>
    /// <returns>ms until the next contact would be accepted; <see cref="Wait.Forever"/> when none is on its way.</returns>
    public static int Step(ContactFilter filter, int raw, int dt, int debounceMs)
    {
        int pending = raw ^ filter.Accepted;
        int stood = pending & ~(raw ^ filter.Seen);
        int settled = (filter.Seen ^ filter.Accepted) & ~pending;
        filter.Seen = raw;
        if ((pending | settled) == 0)
            return Wait.Forever;

        int next = Wait.Forever;
        int[] ages = filter.AgeMs;
        for (int i = 0; i < ages.Length; i++)
        {
            int bit = 1 << i;
            if ((pending & bit) == 0)
            {
                ages[i] = 0;
                continue;
            }

            int age = (stood & bit) != 0 ? ages[i] + dt : 0;
            if (age >= debounceMs)
            {
                filter.Accepted ^= bit;
                age = 0;
            }
            else if (debounceMs - age < next)
            {
                next = debounceMs - age;
            }

            ages[i] = age;
        }

        return next;
    }

    public int Save(int[] state, int at)
    {
        state[at++] = Seen;
        state[at++] = Accepted;
        for (int i = 0; i < AgeMs.Length; i++)
            state[at++] = AgeMs[i];
        return at;
    }

    public int Load(int[] state, int at)
    {
        Seen = state[at++];
        Accepted = state[at++];
        for (int i = 0; i < AgeMs.Length; i++)
            AgeMs[i] = state[at++];
        return at;
    }
}
