namespace ZoneControl.Bench.Proving;

/// <summary>How each state was first come by: from which one, by which move. 10 bytes a state; one list a worker.</summary>
internal sealed class Trail
{
    private const int ChunkBits = 16;
    private const int WorkerShift = 48;
    private readonly List<(long[] Parents, ushort[] Moves)>[] _chunks;
    private readonly int[] _counts;

    public Trail(int workers)
    {
        _chunks = new List<(long[], ushort[])>[workers];
        for (int i = 0; i < workers; i++)
            _chunks[i] = [];
        _counts = new int[workers];
    }

    /// <summary>The parent of the first state.</summary>
    public const long None = -1;

    /// <summary>Bytes that it takes.</summary>
    public long Bytes => _chunks.Sum(list => (long)list.Count) * (1 << ChunkBits) * 10;

    /// <summary>Notes a state found by a worker.</summary>
    /// <returns>What names the state from now on.</returns>
    public long Add(int worker, long parent, Move move)
    {
        int at = _counts[worker]++;
        List<(long[] Parents, ushort[] Moves)> chunks = _chunks[worker];
        if (at >> ChunkBits == chunks.Count)
        {
            lock (chunks)
                chunks.Add((new long[1 << ChunkBits], new ushort[1 << ChunkBits]));
        }

        (long[] parents, ushort[] moves) = chunks[at >> ChunkBits];
        int slot = at & ((1 << ChunkBits) - 1);
        parents[slot] = parent;
        moves[slot] = move.Code;
        return ((long)worker << WorkerShift) | (uint)at;
    }

    /// <summary>The moves from the first state to one, in order.</summary>
    public IReadOnlyList<Move> To(long node)
    {
        var moves = new List<Move>();
        while (node != None)
        {
            (long[] parents, ushort[] codes) = _chunks[(int)(node >> WorkerShift)][(int)((uint)node >> ChunkBits)];
            int slot = (int)(node & ((1 << ChunkBits) - 1));
            if (parents[slot] == None)
                break;
            moves.Add(Move.Of(codes[slot]));
            node = parents[slot];
        }

        moves.Reverse();
        return moves;
    }
}
