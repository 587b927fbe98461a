using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Reference;

/// <summary>
/// The week that tests/reference/heat/week.py describes: twelve rooms over their floors, switched by a pattern known beforehand.
/// Either begun anew each minute, as a stepper does, or only where something changes.
/// </summary>
public sealed class ForcedWeek
{
    /// <summary>Rooms.</summary>
    public const int Rooms = 12;

    /// <summary>Length, minutes.</summary>
    public const int Minutes = 7 * 24 * 60;

    private const double BelowC = 10;
    private const double WaterC = 36;

    private readonly bool _eachMinute;
    private readonly RcNetwork[] _shut = new RcNetwork[Rooms];
    private readonly RcNetwork[] _open = new RcNetwork[Rooms];
    private readonly RcRun[] _runs = [.. Enumerable.Range(0, Rooms).Select(_ => new RcRun(2))];
    private readonly bool[] _isOpen = new bool[Rooms];
    private readonly double[] _celsius = new double[2];
    private readonly double[] _watts = new double[2];
    private bool _begun;

    /// <summary>The week at its start.</summary>
    public ForcedWeek(bool eachMinute)
    {
        _eachMinute = eachMinute;
        for (int i = 0; i < Rooms; i++)
        {
            double[] capacities = [2.0e6 + 3e5 * i, 1.0e6 + 2e5 * i];
            (int, int, double)[] links = [(0, 1, 60 + 8.0 * i)];
            _shut[i] = new RcNetwork(capacities, links, [Down(i), Loss(i)]);
            _open[i] = new RcNetwork(capacities, links, [Down(i) + Tubes(i), Loss(i)]);
        }
    }

    /// <summary>What happens at the start of a minute; minutes come in order from 0.</summary>
    public void Minute(int minute)
    {
        bool hour = minute % 60 == 0;
        for (int i = 0; i < Rooms; i++)
        {
            bool open = (minute / (20 + 3 * i) + i) % 3 == 0;
            if (_eachMinute || hour || open != _isOpen[i])
            {
                Begin(minute, i, open);
            }
        }

        _begun = true;
    }

    /// <summary>Temperatures at the end of so many minutes, °C: floors, then rooms.</summary>
    public double[] Celsius(int minutes) =>
    [
        .. _runs.Select(run => run.CelsiusAt(0, 60_000L * minutes)), .. _runs.Select(run => run.CelsiusAt(1, 60_000L * minutes)),
    ];

    /// <summary>A room's temperature at the end of so many minutes, °C.</summary>
    public double RoomC(int room, int minutes) => _runs[room].CelsiusAt(1, 60_000L * minutes);

    private void Begin(int minute, int i, bool open)
    {
        if (_begun)
        {
            _runs[i].CelsiusAt(60_000L * minute, _celsius);
        }
        else
        {
            (_celsius[0], _celsius[1]) = (19, 18);
        }

        int hour = minute / 60;
        double outdoors = -4 + 6 * Math.Sin(2 * Math.PI * (hour - 9) / 24) - hour / 48.0;
        _watts[0] = Down(i) * BelowC + (open ? Tubes(i) * WaterC : 0);
        _watts[1] = Loss(i) * outdoors + 20 + 5 * i;
        _isOpen[i] = open;
        _runs[i].Begin(60_000L * minute, open ? _open[i] : _shut[i], _celsius, _watts);
    }

    private static double Down(int i) => 8 + i;

    private static double Loss(int i) => 15 + 3 * i;

    private static double Tubes(int i) => 80 + 10 * i;
}
