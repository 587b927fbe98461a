using ZoneControl.Logic;

namespace ZoneControl.Bench.Rules.Monitors;

/// <summary>
/// VALVE-STAGGER, where the transformer's VA is known: at every frame that opens a valve, the holding load of the open ones
/// and the inrush of those that started less than their inrush time ago stay within it.
/// </summary>
internal sealed class ValveStagger : RuleMonitor
{
    // Since each valve was energised, capped at its inrush; a time fault does not make an actuator cold again.
    private readonly int[] _ms;

    public ValveStagger(string rule, Evidence seen, IFindings findings)
        : base(rule, seen, findings) => _ms = new int[seen.House.ZoneCount];

    private bool Known => Seen.House.TransformerDeciVa > 0;

    public override void End() => Array.Clear(_ms);

    public override void ForgetTimes()
    {
    }

    public override void OnFrame()
    {
        if (!Known)
            return;
        for (int zone = 0; zone < _ms.Length; zone++)
        {
            if ((Seen.Energised & (1 << zone)) != 0)
                _ms[zone] = 0;
        }

        if ((Seen.Energised & Seen.House.DrivenZones) == 0)
            return;
        Occasion();
        int load = LoadDeciVa();
        if (load > Seen.House.TransformerDeciVa)
        {
            Broken($"with {Words.Zones(Seen.Energised)} opened the valves draw {Va(load)}; the transformer gives "
                + $"{Va(Seen.House.TransformerDeciVa)}");
        }
    }

    public override void Pass(int ms)
    {
        for (int zone = 0; Known && zone < _ms.Length; zone++)
            ValveStretches.Age(ref _ms[zone], ms, Seen.House.InrushMs[zone]);
    }

    public override void Walk(StateWalk walk) => walk.Ints(_ms);

    private static string Va(int deciVa) => FormattableString.Invariant($"{deciVa / 10.0:0.#} VA");

    private int LoadDeciVa()
    {
        ControllerSettings house = Seen.House;
        int load = 0;
        for (int zone = 0; zone < _ms.Length; zone++)
        {
            if ((Seen.Now.Valves & house.DrivenZones & (1 << zone)) != 0)
                load += _ms[zone] < house.InrushMs[zone] ? house.InrushDeciVa[zone] : house.HoldDeciVa[zone];
        }

        return load;
    }
}
