namespace ZoneControl.Bench.Proving;

/// <summary>
/// States that were visited, as 128-bit hashes in open tables: 16 bytes each and room to spare. Two states with one hash
/// would be taken for one; <see cref="ErrorBound"/> says how likely that is for a hash that spreads evenly.
/// </summary>
internal sealed class VisitedSet
{
    private const int ShardBits = 8;
    private const int FirstSlots = 256;
    private readonly Shard[] _shards = new Shard[1 << ShardBits];
    private readonly long _mostBytes;
    private long _bytes;
    private long _count;

    /// <param name="mostBytes">The most that the tables may take together.</param>
    public VisitedSet(long mostBytes)
    {
        _mostBytes = mostBytes;
        for (int i = 0; i < _shards.Length; i++)
            _shards[i] = new Shard();
        _bytes = (long)_shards.Length * FirstSlots * 16;
    }

    /// <summary>States in it.</summary>
    public long Count => Interlocked.Read(ref _count);

    /// <summary>Bytes that the tables take.</summary>
    public long Bytes => Interlocked.Read(ref _bytes);

    /// <summary>A table would have had to grow beyond the limit; from then on nothing more is taken in.</summary>
    public bool Full { get; private set; }

    /// <summary>
    /// The chance that any two of so many states share a hash, at most: n (n - 1) / 2 pairs, each with chance 2^-128. It
    /// holds for an ideal hash; XXH128 is taken for one, as it is no cryptographic hash and states are no adversary.
    /// </summary>
    public static double ErrorBound(long states) => states * (states - 1.0) / 2 * Math.Pow(2, -128);

    /// <summary>Takes a state in; false when it was there, or when the set is full.</summary>
    public bool Add(UInt128 hash)
    {
        ulong high = (ulong)(hash >> 64);
        ulong low = (ulong)hash;
        if (high == 0 && low == 0)
            low = 1; // all zeros is an empty slot
        Shard shard = _shards[high >> (64 - ShardBits)];
        lock (shard)
        {
            if (shard.Count * 4 >= shard.Slots * 3 && !Grow(shard))
                return false;
            if (!shard.Add(high, low))
                return false;
        }

        Interlocked.Increment(ref _count);
        return true;
    }

    private bool Grow(Shard shard)
    {
        long more = shard.Slots * 16L;
        // Old and new table stand side by side while one is moved into the other.
        if (Full || Interlocked.Add(ref _bytes, more) + more > _mostBytes)
        {
            Full = true;
            return false;
        }

        shard.Grow();
        return true;
    }

    private sealed class Shard
    {
        private ulong[] _table = new ulong[2 * FirstSlots];

        public int Count { get; private set; }

        public int Slots => _table.Length / 2;

        public bool Add(ulong high, ulong low)
        {
            int mask = Slots - 1;
            for (int slot = (int)low & mask; ; slot = (slot + 1) & mask)
            {
                ulong there = _table[2 * slot];
                ulong thereLow = _table[2 * slot + 1];
                if ((there | thereLow) == 0)
                {
                    _table[2 * slot] = high;
                    _table[2 * slot + 1] = low;
                    Count++;
                    return true;
                }

                if (there == high && thereLow == low)
                    return false;
            }
        }

        public void Grow()
        {
            ulong[] old = _table;
            _table = new ulong[old.Length * 2];
            Count = 0;
            for (int i = 0; i < old.Length; i += 2)
            {
                if ((old[i] | old[i + 1]) != 0)
                    Add(old[i], old[i + 1]);
            }
        }
    }
}
