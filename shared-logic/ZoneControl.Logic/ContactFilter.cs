namespace ZoneControl.Logic;

/// <summary>
/// Debounce for up to 16 contacts: a contact's new state is accepted once it has stood for its time, counted from the scan
/// that first saw it. A contact that falls back meanwhile starts again.
/// </summary>
internal sealed class ContactFilter
{
    /// <summary>Contacts as the last scan read them, 1 for asserted.</summary>
    public int Seen;

    /// <summary>Contacts as accepted.</summary>
    public int Accepted;

    /// <summary>Contacts that the last step accepted as the other of what they were.</summary>
    public int Turned;

    /// <summary>How long each contact that differs from its accepted state has stood, ms; 0 for the others.</summary>
    public readonly int[] AgeMs;

    private readonly int[] _debounceMs;

    public ContactFilter(int[] debounceMs)
    {
        _debounceMs = debounceMs;
        AgeMs = new int[debounceMs.Length];
    }

    /// <summary>As many contacts as there are zones, with one time for all.</summary>
    public static ContactFilter ForZones(int zones, int debounceMs)
    {
        int[] times = new int[zones];
        for (int zone = 0; zone < zones; zone++)
            times[zone] = debounceMs;
        return new ContactFilter(times);
    }

    /// <summary>Contacts accepted as asserted by the last step.</summary>
    public int Rose => Accepted & Turned;

    /// <summary>Contacts as accepted before the last step.</summary>
    public int Before => Accepted ^ Turned;

    /// <summary>Takes in what this scan read, <paramref name="dt"/> ms after the last.</summary>
    /// <returns>ms until the next contact would be accepted; <see cref="Wait.Forever"/> when none is on its way.</returns>
    public static int Step(ContactFilter filter, int raw, int dt)
    {
        int accepted = filter.Accepted;
        int seen = filter.Seen;
        filter.Turned = 0;
        if (raw == accepted && seen == accepted)
            return Wait.Forever;
        filter.Seen = raw;
        int pending = raw ^ accepted;
        int touched = pending | (seen ^ accepted);
        int stood = pending & ~(raw ^ seen);
        int next = Wait.Forever;
        int[] ages = filter.AgeMs;
        int[] debounceMs = filter._debounceMs;
        for (int i = 0, bit = 1; bit <= touched; i++, bit <<= 1)
        {
            if ((touched & bit) == 0)
                continue;
            if ((pending & bit) == 0)
            {
                ages[i] = 0;
                continue;
            }

            int age = (stood & bit) != 0 ? ages[i] + dt : 0;
            int wait = debounceMs[i] - age;
            if (wait <= 0)
            {
                accepted ^= bit;
                age = 0;
            }
            else if (wait < next)
            {
                next = wait;
            }

            ages[i] = age;
        }

        filter.Turned = accepted ^ filter.Accepted;
        filter.Accepted = accepted;
        return next;
    }

    /// <summary>Contacts that are on their way start to count again, as after a clock that cannot be trusted.</summary>
    public void Restart()
    {
        for (int i = 0; i < AgeMs.Length; i++)
            AgeMs[i] = 0;
    }

    /// <summary>How many ints <see cref="Save"/> writes.</summary>
    public int Length => 2 + AgeMs.Length;

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
