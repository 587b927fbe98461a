namespace ZoneControl.Board;

/// <summary>
/// A short number that settings, pin plan and zone names have in common wherever they are: bench, generated file, board and
/// log. It tells one house file's board from another's, and settings that a hand has changed; it is no protection against
/// intent.
/// </summary>
public static class Fingerprint
{
    /// <summary>
    /// 32-bit FNV-1a over the words, low byte first, and the names (Fowler, Noll and Vo; the constants are from memory).
    /// </summary>
    public static int Of(int[] words, string[] names)
    {
        uint sum = 2166136261;
        for (int i = 0; i < words.Length; i++)
            sum = Add(sum, words[i]);
        for (int i = 0; i < names.Length; i++)
        {
            string name = names[i];
            for (int j = 0; j < name.Length; j++)
                sum = Add(sum, name[j]);
            sum = Add(sum, -1);
        }

        return (int)sum;
    }

    /// <summary>As people and logs write it: eight hexadecimal digits.</summary>
    public static string Text(int fingerprint)
    {
        const string Digits = "0123456789abcdef";
        char[] text = new char[8];
        for (int i = 0; i < 8; i++)
            text[i] = Digits[(fingerprint >> (28 - (4 * i))) & 15];
        return new string(text);
    }

    private static uint Add(uint sum, int word)
    {
        for (int shift = 0; shift < 32; shift += 8)
            sum = (sum ^ (uint)((word >> shift) & 255)) * 16777619;
        return sum;
    }
}
