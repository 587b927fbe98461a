using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace ZoneControl.Plant;

/// <summary>
/// Many paths side by side, four to a block and evaluated four at a time, for the search in <see cref="CircuitNewton"/>. The
/// laws are those of <see cref="FlowPath"/>, written so that one evaluation takes one logarithm; a test holds both
/// together. The width is four whatever the machine, so results do not depend on it.
/// </summary>
/// <remarks>
/// Each path is followed by a place p on its curve from which Reynolds number R and scaled loss S = f·R² both follow
/// explicitly. Up to R = 4,000, p is R. Above, Colebrook gives no explicit S by R, but with u = √S = R√f it reads
/// R = −2u·log10(e/3.7D + 2.51/u): there p is u over its value at 4,000, times 4,000. Under the other law p is R everywhere.
/// Against w, the square root of head, p is nearly a straight line, so that steps towards a wanted w are short of exact only
/// by little; they carry the second derivative that a power law has.
/// </remarks>
internal sealed class PathBank
{
    private const int Width = 4;
    private const double LeastPlace = 1e-30;
    private const double MostPlace = 1e12;
    private const double TwoOverLn10 = 0.86858896380650366;

    private readonly Block[] _blocks;
    private readonly FlowPath[] _paths;
    private readonly bool _explicit;

    /// <summary>A bank of paths, all under one friction law, each open and without a valve.</summary>
    public PathBank(FrictionLaw law, IEnumerable<FlowPath> paths)
    {
        _explicit = law == FrictionLaw.SwameeJainDunlop;
        _paths = [.. paths];
        _blocks = new Block[(_paths.Length + Width - 1) / Width];
        for (int i = 0; i < _blocks.Length * Width; i++)
        {
            // Blocks are filled up with the last path, shut.
            FlowPath path = _paths[Math.Min(i, _paths.Length - 1)];
            ref Block block = ref _blocks[i / Width];
            Put(ref block.FrictionHead, i, path.FrictionHead);
            Put(ref block.FlowPerReynolds, i, 1 / path.ReynoldsPerFlow);
            Put(ref block.RoughTerm, i, path.Friction.RoughTerm);
            Put(ref block.RootPerPlace, i, path.Friction.RootAtStart);
            Put(ref block.Join0, i, path.Friction.Join.C0);
            Put(ref block.Join1, i, path.Friction.Join.C1);
            Put(ref block.Join2, i, path.Friction.Join.C2);
            Put(ref block.Join3, i, path.Friction.Join.C3);
            Put(ref block.Place, i, Friction.TurbulentStart);
            // Until it is opened, a valve that is all there is in its path has some resistance, so that heads are not 0.
            double square = path.Square(0) / (path.ReynoldsPerFlow * path.ReynoldsPerFlow);
            Put(ref block.Square, i, square + path.FrictionHead > 0 ? square : 1);
            Put(ref block.Open, i, i < _paths.Length ? 1 : 0);
        }

        Evaluate();
    }

    /// <summary>How many paths.</summary>
    public int Count => _paths.Length;

    /// <summary>Flow of all open paths at their places, m³/s.</summary>
    public double Flow { get; private set; }

    /// <summary>
    /// The straight line that stands for the open paths' flow by root of head s (m^0.5): <c>FlowAtNone + FlowPerRoot·s</c>.
    /// </summary>
    public double FlowAtNone { get; private set; }

    /// <summary>Its slope.</summary>
    public double FlowPerRoot { get; private set; }

    /// <summary>How far the open path furthest off was from the root asked for in <see cref="Follow"/>, m^0.5.</summary>
    public double Worst { get; private set; }

    /// <summary>Flow of a path at its place, m³/s; 0 when shut.</summary>
    public double FlowOf(int path) => _blocks[path / Width].Flow.GetElement(path % Width);

    /// <summary>Root of head of a path at its place, m^0.5.</summary>
    public double RootOf(int path) => _blocks[path / Width].Root.GetElement(path % Width);

    /// <summary>Its derivative by flow, m^0.5 per m³/s.</summary>
    public double RootPerFlow(int path) => 1 / _blocks[path / Width].FlowPerRoot.GetElement(path % Width);

    /// <summary>Opens a path with a valve of that resistance, m per (m³/s)², and sets it near a root of head.</summary>
    public void Open(int path, double valve, double root)
    {
        FlowPath pipe = _paths[path];
        ref Block block = ref _blocks[path / Width];
        double square = pipe.Square(valve) / (pipe.ReynoldsPerFlow * pipe.ReynoldsPerFlow);
        Put(ref block.Square, path, square);
        Put(ref block.Open, path, 1);
        double place = Guess(path, square, root * root);
        Put(ref block.Place, path, place);
        Evaluate(ref block, block.Place);

        // One step alone, so that the straight line of the whole begins well.
        Vector256<double> stepped = Stepped(block, Vector256.Create(root));
        Put(ref block.Place, path, stepped.GetElement(path % Width));
        Evaluate(ref block, block.Place);
    }

    /// <summary>Shuts a path.</summary>
    public void Shut(int path)
    {
        ref Block block = ref _blocks[path / Width];
        Put(ref block.Open, path, 0);
        Evaluate(ref block, block.Place);
    }

    /// <summary>Sets a path to a flow, m³/s, that another search found.</summary>
    public void PutAt(int path, double flow)
    {
        FlowPath pipe = _paths[path];
        double reynolds = flow * pipe.ReynoldsPerFlow;
        double place = reynolds <= Friction.TurbulentStart || _explicit
            ? reynolds
            : reynolds * Math.Sqrt(pipe.Friction.Factor(reynolds)) / pipe.Friction.RootAtStart;
        ref Block block = ref _blocks[path / Width];
        Put(ref block.Place, path, Math.Max(place, LeastPlace));
        Evaluate(ref block, block.Place);
    }

    /// <summary>Moves a path's place towards a flow, m³/s, by one step.</summary>
    public void MoveTo(int path, double flow)
    {
        ref Block block = ref _blocks[path / Width];
        int lane = path % Width;
        double root = block.Root.GetElement(lane)
            + (flow - block.Flow.GetElement(lane)) / block.FlowPerRoot.GetElement(lane);
        Put(ref block.Place, path, Stepped(block, Vector256.Create(root)).GetElement(lane));
        Evaluate(ref block, block.Place);
    }

    /// <summary>Adds up what the open paths pass at their places.</summary>
    public void AddUp()
    {
        Vector256<double> flow = default, atNone = default, perRoot = default;
        foreach (ref Block block in _blocks.AsSpan())
        {
            flow += block.Flow;
            atNone += block.Flow - block.FlowPerRoot * block.Root;
            perRoot += block.FlowPerRoot;
        }

        (Flow, FlowAtNone, FlowPerRoot) = (Vector256.Sum(flow), Vector256.Sum(atNone), Vector256.Sum(perRoot));
    }

    /// <summary>Moves every path one step towards a root of head (m^0.5), evaluates and adds up.</summary>
    public void Follow(double root)
    {
        var wanted = Vector256.Create(root);
        Vector256<double> flow = default, atNone = default, perRoot = default, worst = default;
        foreach (ref Block block in _blocks.AsSpan())
        {
            Evaluate(ref block, Stepped(block, wanted));
            flow += block.Flow;
            atNone += block.Flow - block.FlowPerRoot * block.Root;
            perRoot += block.FlowPerRoot;
            worst = Vector256.Max(worst, Vector256.Abs(block.Root - wanted) * block.Open);
        }

        (Flow, FlowAtNone, FlowPerRoot) = (Vector256.Sum(flow), Vector256.Sum(atNone), Vector256.Sum(perRoot));
        Worst = Largest(worst);
    }

    /// <summary>How far the open path furthest off is, as it is, from a root of head, m^0.5.</summary>
    public double FurthestFrom(double root)
    {
        Vector256<double> worst = default;
        foreach (ref Block block in _blocks.AsSpan())
        {
            worst = Vector256.Max(worst, Vector256.Abs(block.Root - Vector256.Create(root)) * block.Open);
        }

        return Largest(worst);
    }

    private static double Largest(Vector256<double> v) =>
        Math.Max(Math.Max(v.GetElement(0), v.GetElement(1)), Math.Max(v.GetElement(2), v.GetElement(3)));

    private void Evaluate()
    {
        foreach (ref Block block in _blocks.AsSpan())
        {
            Evaluate(ref block, block.Place);
        }

        AddUp();
    }

    // Exact in laminar flow; in turbulent flow as if the factor were what it is now.
    private double Guess(int path, double square, double head)
    {
        FlowPath pipe = _paths[path];
        double linear = 64 * pipe.FrictionHead;
        double laminar = 2 * head / (linear + Math.Sqrt(linear * linear + 4 * square * head));
        if (laminar <= Friction.LaminarEnd)
        {
            return Math.Max(laminar, LeastPlace);
        }

        double rootPerPlace = pipe.Friction.RootAtStart;
        double u = Math.Sqrt(head / (pipe.FrictionHead + square / (rootPerPlace * rootPerPlace)));
        double reynolds = u / rootPerPlace;
        return Math.Max(reynolds, Friction.LaminarEnd);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Stepped(in Block block, Vector256<double> root)
    {
        Vector256<double> missing = root - block.Root;
        Vector256<double> place = block.Place + missing * (block.PlacePerRoot + missing * block.PlaceBend);
        place = Vector256.Min(Vector256.Max(place, 0.1 * block.Place), 10 * block.Place);
        return Vector256.Min(Vector256.Max(place, Vector256.Create(LeastPlace)), Vector256.Create(MostPlace));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private void Evaluate(ref Block block, Vector256<double> place)
    {
        Vector256<double> reynolds = place, reynoldsSlope = Vector256<double>.One, scaled, scaledSlope;
        if (_explicit)
        {
            Vector256<double> smooth = 5.74 * Vector256.Exp(-0.9 * Vector256.Log(place));
            Vector256<double> sum = block.RoughTerm + smooth;
            Vector256<double> x = -TwoOverLn10 * Vector256.Log(sum);
            Vector256<double> perX = Vector256<double>.One / x;
            scaled = place * place * perX * perX;
            scaledSlope = 2 * place * perX * perX * (Vector256<double>.One - TwoOverLn10 * 0.9 * smooth / sum * perX);
        }
        else
        {
            Vector256<double> u = place * block.RootPerPlace;
            Vector256<double> smooth = Vector256.Create(2.51) / u;
            Vector256<double> sum = block.RoughTerm + smooth;
            Vector256<double> x = -TwoOverLn10 * Vector256.Log(sum);
            reynolds = u * x;
            reynoldsSlope = (x + TwoOverLn10 * smooth / sum) * block.RootPerPlace;
            scaled = u * u;
            scaledSlope = 2 * u * block.RootPerPlace;
        }

        Vector256<double> slow = Vector256.LessThan(place, Vector256.Create(Friction.TurbulentStart));
        if (slow != Vector256<double>.Zero)
        {
            Slow(block, place, out Vector256<double> slowScaled, out Vector256<double> slowSlope);
            reynolds = Vector256.ConditionalSelect(slow, place, reynolds);
            reynoldsSlope = Vector256.ConditionalSelect(slow, Vector256<double>.One, reynoldsSlope);
            scaled = Vector256.ConditionalSelect(slow, slowScaled, scaled);
            scaledSlope = Vector256.ConditionalSelect(slow, slowSlope, scaledSlope);
        }

        Vector256<double> squared = block.Square * reynolds;
        Vector256<double> head = block.FrictionHead * scaled + squared * reynolds;
        Vector256<double> headSlope = block.FrictionHead * scaledSlope + 2 * squared * reynoldsSlope;
        Vector256<double> root = Vector256.Sqrt(head);
        Vector256<double> perRoot = 2 * root / headSlope;
        Vector256<double> flowPerReynolds = block.FlowPerReynolds * block.Open;
        block.Place = place;
        block.Root = root;
        block.PlacePerRoot = perRoot;

        // For h ~ p^a, p goes with w^(2/a): half the second derivative of that.
        block.PlaceBend = 0.5 * perRoot * (perRoot / place - Vector256<double>.One / root);
        block.Flow = reynolds * flowPerReynolds;
        block.FlowPerRoot = reynoldsSlope * perRoot * flowPerReynolds;
    }

    // Laminar, and the join to turbulent flow.
    private void Slow(in Block block, Vector256<double> reynolds, out Vector256<double> scaled, out Vector256<double> slope)
    {
        var start = Vector256.Create(Friction.LaminarEnd);
        Vector256<double> t = (reynolds - start) * (1 / (Friction.TurbulentStart - Friction.LaminarEnd));
        Vector256<double> joined = block.Join0 + t * (block.Join1 + t * (block.Join2 + t * block.Join3));
        Vector256<double> joinedSlope = (block.Join1 + t * (2 * block.Join2 + t * 3 * block.Join3))
            * (1 / (Friction.TurbulentStart - Friction.LaminarEnd));
        if (_explicit)
        {
            joinedSlope = reynolds * (2 * joined + reynolds * joinedSlope);
            joined = joined * reynolds * reynolds;
        }

        Vector256<double> laminar = Vector256.LessThanOrEqual(reynolds, start);
        scaled = Vector256.ConditionalSelect(laminar, 64 * reynolds, joined);
        slope = Vector256.ConditionalSelect(laminar, Vector256.Create(64.0), joinedSlope);
    }

    private static void Put(ref Vector256<double> vector, int path, double value) =>
        vector = vector.WithElement(path % Width, value);

    private struct Block
    {
        // What the paths are.
        public Vector256<double> FrictionHead; // m per unit of scaled loss
        public Vector256<double> Square; // m per Reynolds number squared: fittings and valve
        public Vector256<double> FlowPerReynolds; // m³/s
        public Vector256<double> RoughTerm;
        public Vector256<double> RootPerPlace;
        public Vector256<double> Join0;
        public Vector256<double> Join1;
        public Vector256<double> Join2;
        public Vector256<double> Join3;
        public Vector256<double> Open; // 1 or 0

        // Where they are.
        public Vector256<double> Place;
        public Vector256<double> Root;
        public Vector256<double> PlacePerRoot;
        public Vector256<double> PlaceBend;
        public Vector256<double> Flow;
        public Vector256<double> FlowPerRoot;
    }
}
