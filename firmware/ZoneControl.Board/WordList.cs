namespace ZoneControl.Board;

/// <summary>A list of ints that is written, or read back, in order: how settings cross into a compiled image.</summary>
internal sealed class WordList
{
    private readonly bool _reading;
    private int[] _words;
    private int _at;

    private WordList(int[] words, bool reading)
    {
        _words = words;
        _reading = reading;
    }

    public static WordList ForWriting() => new WordList(new int[256], false);

    public static WordList ForReading(int[] words) => new WordList(words, true);

    public int[] Written()
    {
        int[] words = new int[_at];
        for (int i = 0; i < _at; i++)
            words[i] = _words[i];
        return words;
    }

    /// <summary>Writes a value, or reads and gives one.</summary>
    public int Int(int value)
    {
        if (_reading)
            return _words[_at++];
        if (_at == _words.Length)
            Grow();
        _words[_at++] = value;
        return value;
    }

    public bool Bool(bool value) => Int(value ? 1 : 0) != 0;

    /// <summary>Writes an array with its length, or reads and gives one.</summary>
    public int[] Array(int[] values)
    {
        int[] array = _reading ? new int[Int(0)] : values;
        if (!_reading)
            Int(values.Length);
        for (int i = 0; i < array.Length; i++)
            array[i] = Int(array[i]);
        return array;
    }

    private void Grow()
    {
        int[] more = new int[_words.Length * 2];
        for (int i = 0; i < _at; i++)
            more[i] = _words[i];
        _words = more;
    }
}
