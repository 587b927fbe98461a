using ZoneControl.Plant;

namespace ZoneControl.Web.Live;

/// <summary>
/// How far warm water has come, for drawings: it fills pipes from one end to the other as flow carries it (plug flow) while
/// heat is asked for, and what stands still cools over half an hour (a choice for the eye, no physics).
/// </summary>
internal sealed class WarmWay(PlantModel plant)
{
    private const double CoolsInS = 1800;

    private readonly double[] _loops = new double[plant.Description.Loops.Count];
    private double _mainsM3;
    private long _ms;

    /// <summary>Heat is asked for.</summary>
    public bool Heat { get; set; }

    public double Mains => Share(_mainsM3, plant.Description.Mains.VolumeM3 / 2);

    public double Zone(int zone)
    {
        double warm = 0;
        double all = 0;
        for (int i = 0; i < _loops.Length; i++)
        {
            if (plant.Description.Loops[i].Zone != zone)
                continue;
            warm += _loops[i];
            all += plant.Description.Loops[i].Tube.VolumeM3;
        }

        return Share(warm, all);
    }

    /// <summary>Carries the water on with the flows that stood until now; ms.</summary>
    public void Step(long ms)
    {
        double s = (ms - _ms) / 1000.0;
        _ms = ms;
        if (s <= 0)
            return;
        bool arrives = Mains >= 1;
        _mainsM3 = Carry(_mainsM3, plant.Description.Mains.VolumeM3 / 2, plant.PumpFlowM3s, Heat, s);
        for (int i = 0; i < _loops.Length; i++)
            _loops[i] = Carry(_loops[i], plant.Description.Loops[i].Tube.VolumeM3, plant.LoopFlowM3s(i), arrives, s);
    }

    private static double Carry(double warmM3, double volumeM3, double flowM3s, bool warm, double s)
    {
        double change = warm && flowM3s > 0 ? flowM3s * s : -volumeM3 * s / CoolsInS;
        return Math.Clamp(warmM3 + change, 0, volumeM3);
    }

    private static double Share(double part, double whole) => whole > 0 ? part / whole : 0;

}
