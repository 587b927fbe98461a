namespace ZoneControl.Bench.Proving;

/// <summary>States of one level that are yet to be gone on from, packed, in blocks that workers take one by one.</summary>
internal sealed class Frontier
{
    private readonly List<Block> _blocks = [];
    private int _next;

    /// <summary>States in it.</summary>
    public long Count { get; private set; }

    /// <summary>Bytes that it takes.</summary>
    public long Bytes => (long)_blocks.Count * Block.Size;

    /// <summary>Takes in a block that a worker has filled.</summary>
    public void Put(Block block)
    {
        lock (_blocks)
        {
            _blocks.Add(block);
            Count += block.States;
        }
    }

    /// <summary>The next block for a worker; null when there are no more.</summary>
    public Block? Take()
    {
        int at = Interlocked.Increment(ref _next) - 1;
        return at < _blocks.Count ? _blocks[at] : null;
    }

    /// <summary>Empties it for the next level but one; its blocks can be filled anew.</summary>
    public void Clear(Stack<Block> spare)
    {
        foreach (Block block in _blocks)
        {
            block.Clear();
            if (spare.Count < 64)
                spare.Push(block);
        }

        _blocks.Clear();
        _next = 0;
        Count = 0;
    }
}

/// <summary>A block of packed states, each behind what names it.</summary>
internal sealed class Block
{
    /// <summary>Bytes of a block.</summary>
    public const int Size = 1 << 18;

    private readonly byte[] _bytes = new byte[Size];
    private int _used;

    public int States { get; private set; }

    public byte[] Bytes => _bytes;

    public void Clear() => _used = States = 0;

    /// <summary>Adds a state; false when there is no room.</summary>
    public bool Add(long node, byte[] state, int length)
    {
        if (_used + 8 + length > Size)
            return false;
        BitConverter.TryWriteBytes(_bytes.AsSpan(_used), node);
        Array.Copy(state, 0, _bytes, _used + 8, length);
        _used += 8 + length;
        States++;
        return true;
    }

    /// <summary>What names the state at a place.</summary>
    public long NodeAt(int at) => BitConverter.ToInt64(_bytes, at);
}
