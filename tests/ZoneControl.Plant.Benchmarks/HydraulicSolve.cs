using BenchmarkDotNet.Attributes;

namespace ZoneControl.Plant.Benchmarks;

/// <summary>One solve after one loop's valve moved, by number of loops; the aim is growth with loops at most linear.</summary>
[MemoryDiagnoser]
public class HydraulicSolve
{
    private const int Moves = 8;

    private ValveMoves _moves = null!;

    [Params(4, 13, 64, 256)]
    public int Loops { get; set; }

    /// <summary>Leaps from open to nearly shut, or half seconds of a slow stroke.</summary>
    [Params(true, false)]
    public bool Far { get; set; }

    [Params(FrictionLaw.Colebrook, FrictionLaw.SwameeJainDunlop)]
    public FrictionLaw Law { get; set; }

    [GlobalSetup]
    public void SetUp()
    {
        _moves = ValveMoves.Of(Loops, Far, Law);
        if (_moves.Openings.Length != Moves)
        {
            throw new InvalidOperationException($"expected {Moves} moves in a cycle, found {_moves.Openings.Length}");
        }
    }

    [Benchmark(OperationsPerInvoke = Moves)]
    public double AfterOneValveMoved()
    {
        _moves.Cycle();
        return _moves.Network.PumpFlowM3s;
    }
}
