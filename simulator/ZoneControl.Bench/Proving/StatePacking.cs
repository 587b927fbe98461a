namespace ZoneControl.Bench.Proving;

/// <summary>
/// States as few bytes: most ints of a state are 0, and most others are small. Two states are alike exactly when their
/// bytes are.
/// </summary>
internal static class StatePacking
{
    // Values of a byte: 0 to 39 a run of so many zeros and one, 40 to 249 the value 1 to 210, the rest as below.
    private const int LongestRun = 40;
    private const int LargestByte = 210;
    private const byte TwoBytes = 250;
    private const byte FourBytes = 251;

    /// <summary>The most bytes that so many ints may take.</summary>
    public static int Most(int ints) => ints * 5;

    /// <summary>Packs ints behind what is there already.</summary>
    /// <returns>Where the next byte goes.</returns>
    public static int Pack(int[] ints, byte[] into, int at)
    {
        int zeros = 0;
        foreach (int value in ints)
        {
            if (value == 0)
            {
                if (++zeros == LongestRun)
                {
                    into[at++] = LongestRun - 1;
                    zeros = 0;
                }

                continue;
            }

            if (zeros > 0)
            {
                into[at++] = (byte)(zeros - 1);
                zeros = 0;
            }

            if (value is > 0 and <= LargestByte)
            {
                into[at++] = (byte)(value + LongestRun - 1);
            }
            else if (value is > 0 and <= ushort.MaxValue)
            {
                into[at++] = TwoBytes;
                into[at++] = (byte)value;
                into[at++] = (byte)(value >> 8);
            }
            else
            {
                into[at++] = FourBytes;
                for (int shift = 0; shift < 32; shift += 8)
                    into[at++] = (byte)(value >> shift);
            }
        }

        if (zeros > 0)
            into[at++] = (byte)(zeros - 1);
        return at;
    }

    /// <summary>Fills ints from bytes that <see cref="Pack"/> wrote for as many.</summary>
    /// <returns>Where the next byte is.</returns>
    public static int Unpack(byte[] from, int at, int[] ints)
    {
        int i = 0;
        while (i < ints.Length)
        {
            byte b = from[at++];
            if (b < LongestRun)
            {
                Array.Clear(ints, i, b + 1);
                i += b + 1;
            }
            else if (b < TwoBytes)
            {
                ints[i++] = b - LongestRun + 1;
            }
            else if (b == TwoBytes)
            {
                ints[i++] = from[at] | (from[at + 1] << 8);
                at += 2;
            }
            else
            {
                ints[i++] = from[at] | (from[at + 1] << 8) | (from[at + 2] << 16) | (from[at + 3] << 24);
                at += 4;
            }
        }

        return at;
    }
}
