namespace ZoneControl.Bench.Rules;

/// <summary>
/// Walks over everything that a monitor remembers, to count, save or load it. Each owner of state names its fields once, in
/// one order, so that saving and loading cannot drift apart.
/// </summary>
internal sealed class StateWalk
{
    private enum Purpose { Count, Save, Load }

    private readonly Purpose _purpose;
    private readonly int[] _ints;
    private int _next;

    private StateWalk(Purpose purpose, int[] ints)
    {
        _purpose = purpose;
        _ints = ints;
    }

    /// <summary>A walk that only counts.</summary>
    public static StateWalk Counting() => new(Purpose.Count, []);

    /// <summary>A walk that writes fields into <paramref name="to"/>.</summary>
    public static StateWalk SavingTo(int[] to) => new(Purpose.Save, to);

    /// <summary>A walk that reads fields from <paramref name="from"/>.</summary>
    public static StateWalk LoadingFrom(int[] from) => new(Purpose.Load, from);

    /// <summary>Ints walked over so far.</summary>
    public int Count => _next;

    /// <summary>One number or mask.</summary>
    public void Int(ref int field)
    {
        if (_purpose == Purpose.Save)
            _ints[_next] = field;
        else if (_purpose == Purpose.Load)
            field = _ints[_next];
        _next++;
    }

    /// <summary>One number a zone.</summary>
    public void Ints(int[] fields)
    {
        for (int i = 0; i < fields.Length; i++)
            Int(ref fields[i]);
    }

    /// <summary>A yes or no.</summary>
    public void Bool(ref bool field)
    {
        int value = field ? 1 : 0;
        Int(ref value);
        field = value != 0;
    }
}
