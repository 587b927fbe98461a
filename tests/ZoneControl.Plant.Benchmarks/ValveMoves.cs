using ZoneControl.Plant.Reference;

namespace ZoneControl.Plant.Benchmarks;

/// <summary>
/// A network of one manifold with all loops open, of which one loop's valve goes through a cycle of openings. Far: from open
/// to nearly shut and back, in leaps. Near: a few half seconds of a slow stroke.
/// </summary>
internal sealed class ValveMoves
{
    private static readonly string[] _names =
        ["four loops", "thirteen loops", "sixty-four loops", "two hundred and fifty-six loops"];

    private static readonly double[] _far = [1, 0.1, 0.8, 0.02, 0.5, 0.95, 0.3, 0.6];
    private static readonly double[] _near = [0.9, 0.902, 0.904, 0.906, 0.908, 0.906, 0.904, 0.902];

    private readonly PlantDescription _house;
    private readonly double[] _travels;

    public ValveMoves(ReferenceNetwork definition, bool far, FrictionLaw law)
    {
        Definition = definition with
        {
            Manifolds = [.. definition.Manifolds.Select(m => m with
            {
                Loops = [.. m.Loops.Select(l => l with { Open = true })],
            })],
        };
        Openings = far ? _far : _near;
        Name = $"{Definition.Loops.Count} loops, {(far ? "far" : "near")}";
        _house = Definition.ToPlant(law);
        Network = new Network(_house);
        _travels = Definition.Travels();
        Network.Solve(_travels);
    }

    public static int[] Counts { get; } = [4, 13, 64, 256];

    public string Name { get; }

    public ReferenceNetwork Definition { get; }

    public double[] Openings { get; }

    public Network Network { get; }

    public static ValveMoves Of(int loops, bool far, FrictionLaw law) =>
        new(ReferenceNetwork.Named(_names[Array.IndexOf(Counts, loops)]), far, law);

    /// <summary>One cycle: a solve for each opening.</summary>
    public void Cycle()
    {
        foreach (double opening in Openings)
        {
            _travels[0] = opening;
            Network.Solve(_travels);
        }
    }

    /// <summary>
    /// Largest relative residual over one cycle, worked out apart from the solver: heads from <see cref="Friction"/> and the
    /// definitions, loop by loop, and the sum of flows.
    /// </summary>
    public double Residual()
    {
        double worst = 0;
        foreach (double opening in Openings)
        {
            _travels[0] = opening;
            Network.Solve(_travels);
            double sum = 0;
            for (int i = 0; i < _house.Loops.Count; i++)
            {
                LoopDescription loop = _house.Loops[i];
                double flow = Network.LoopFlowM3s(i);
                double head = Lost(loop.Tube, flow) + flow * flow
                    * ValveCurve.Resistance(loop.ValveKvs * _travels[loop.Zone], _house.Rules.Gravity);
                worst = Math.Max(worst, Math.Abs(head / Network.HeadAcrossMainsEndsM - 1));
                sum += flow;
            }

            double round = Network.HeadAcrossMainsEndsM + Lost(_house.Mains, Network.PumpFlowM3s);
            double pump = new PumpCurve(_house.Pump.Curve).Head(sum, out _);
            worst = Math.Max(worst, Math.Max(Math.Abs(round / pump - 1), Math.Abs(sum / Network.PumpFlowM3s - 1)));
        }

        return worst;
    }

    private double Lost(PipeDescription pipe, double flow)
    {
        double area = Math.PI / 4 * pipe.InsideDiameterM * pipe.InsideDiameterM;
        double speed = flow / area;
        double reynolds = speed * pipe.InsideDiameterM / _house.Rules.KinematicViscosity!.Value;
        double factor = new Friction(_house.Rules.Friction, pipe.RoughnessM / pipe.InsideDiameterM).Factor(reynolds);
        return (factor * pipe.LengthM / pipe.InsideDiameterM + pipe.FittingsK) * speed * speed / (2 * _house.Rules.Gravity);
    }
}
