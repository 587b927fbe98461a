using System.IO.Hashing;

namespace ZoneControl.Bench.Proving;

/// <summary>One worker of a search: takes states of one level, makes every move from each, and keeps what is new.</summary>
internal sealed class Explorer
{
    private readonly int _worker;
    private readonly ProductPlan _plan;
    private readonly Product _product;
    private readonly VisitedSet _visited;
    private readonly Trail _trail;
    private readonly byte[] _packed;
    private readonly Func<Block> _newBlock;
    private Block _block;

    public Explorer(int worker, ProductPlan plan, VisitedSet visited, Trail trail, Func<Block> newBlock)
    {
        _worker = worker;
        _plan = plan;
        _product = new Product(plan);
        _visited = visited;
        _trail = trail;
        _packed = new byte[StatePacking.Most(_product.Length)];
        _newBlock = newBlock;
        _block = newBlock();
    }

    /// <summary>Moves made.</summary>
    public long Transitions { get; private set; }

    /// <summary>How often each rule was given something to judge.</summary>
    public IReadOnlyList<long> Occasions => _product.Occasions;

    /// <summary>The breach that it found on this level: the first rule in the rule book's order; null when none.</summary>
    public Breach? Found { get; private set; }

    /// <summary>Puts the first state of all into the next level.</summary>
    public void Begin(Frontier into)
    {
        _product.Begin();
        Judge(Trail.None, new Move(MoveKind.Wait));
        Keep(Trail.None, new Move(MoveKind.Wait), into);
        Flush(into);
    }

    /// <summary>Goes on from every state of a block.</summary>
    /// <param name="block">The states.</param>
    /// <param name="next">Where new states go.</param>
    /// <param name="stop">Asked after each state; true to leave the rest.</param>
    /// <returns>False when it was stopped.</returns>
    public bool Expand(Block block, Frontier next, Func<bool> stop)
    {
        int at = 0;
        for (int i = 0; i < block.States; i++)
        {
            long node = block.NodeAt(at);
            at = StatePacking.Unpack(block.Bytes, at + 8, _product.WorldBefore);
            at = StatePacking.Unpack(block.Bytes, at, _product.SubjectBefore);
            at = StatePacking.Unpack(block.Bytes, at, _product.MonitorsBefore);
            foreach (Move move in _plan.Moves)
            {
                if (!_product.Step(move))
                    continue;
                Transitions++;
                if (_product.BrokenRule >= 0)
                    Judge(node, move);
                else
                    Keep(node, move, next);
            }

            if ((i & 63) == 0 && stop())
                return false;
        }

        return true;
    }

    /// <summary>Hands over what it has of the next level.</summary>
    public void Flush(Frontier into)
    {
        if (_block.States == 0)
            return;
        into.Put(_block);
        _block = _newBlock();
    }

    private void Judge(long node, Move move)
    {
        if (_product.BrokenRule >= 0 && (Found is null || _product.BrokenRule < Found.Rule))
            Found = new Breach(_product.BrokenRule, _product.Why, node, move);
    }

    private void Keep(long node, Move move, Frontier into)
    {
        int length = StatePacking.Pack(_product.WorldAfter, _packed, 0);
        length = StatePacking.Pack(_product.SubjectAfter, _packed, length);
        length = StatePacking.Pack(_product.MonitorsAfter, _packed, length);
        if (!_visited.Add(XxHash128.HashToUInt128(_packed.AsSpan(0, length))))
            return;
        long found = _trail.Add(_worker, node, move);
        if (_block.Add(found, _packed, length))
            return;
        into.Put(_block);
        _block = _newBlock();
        if (!_block.Add(found, _packed, length))
            throw new InvalidOperationException($"a state of {length} bytes does not fit a block");
    }
}

/// <summary>A rule broken by a move.</summary>
/// <param name="Rule">Its place in the rule book.</param>
/// <param name="Why">In words.</param>
/// <param name="Node">The state that the move was made from.</param>
/// <param name="Move">The move.</param>
internal sealed record Breach(int Rule, string Why, long Node, Move Move);
