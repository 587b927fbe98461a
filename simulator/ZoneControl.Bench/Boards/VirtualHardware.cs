using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>
/// The hardware around a virtual chip: contacts in, relays out, and the charge pump that feeds the pump's and the heat
/// relay's coils only while the heartbeat goes on.
/// </summary>
public abstract class VirtualHardware : IWires
{
    private readonly bool[] _closed;
    private int _beatLevel;
    private long _beatUs = long.MinValue;

    /// <summary>For a plan.</summary>
    protected VirtualHardware(BoardPlan plan)
    {
        Plan = plan;
        _closed = new bool[plan.InputRoles.Length];
    }

    /// <summary>The hardware that a plan asks for.</summary>
    public static VirtualHardware Of(BoardPlan plan) =>
        plan.Arrangement == BoardPlan.Chains ? new VirtualChains(plan) : new VirtualDirect(plan);

    /// <summary>How long after a change of the heartbeat the charge pump still feeds the coils, microseconds.</summary>
    public static long BeatHoldUs(int scanPeriodMs) => Math.Max(1000, 3 * scanPeriodMs) * 1000L;

    /// <summary>Time since boot, microseconds; moved on by whoever drives the board.</summary>
    public long NowUs { get; set; }

    /// <summary>Time by which a scan is lengthened at each read of a pin, microseconds: for a chip that is too slow.</summary>
    public long ReadTakesUs { get; set; }

    /// <summary>Thrown at the next read of a pin: for software that fails.</summary>
    public Exception? Throws { get; set; }

    /// <summary>Told after every change of a pin that the board drives, for whoever looks between two instructions.</summary>
    public Action? Moved { get; set; }

    /// <summary>The plan.</summary>
    protected BoardPlan Plan { get; }

    /// <summary>Sets the contacts as an input image has them.</summary>
    public void SetContacts(InputImage image)
    {
        for (int i = 0; i < _closed.Length; i++)
        {
            int role = Plan.InputRoles[i];
            int mask = Role.Kind(role) switch
            {
                Role.Call => image.Calls,
                Role.Switch => image.EndSwitches,
                Role.Sense => image.Senses,
                Role.Hand => image.ServiceValves,
                _ => image.Contacts,
            };
            _closed[i] = (mask & (1 << Role.Index(role))) != 0;
        }
    }

    /// <summary>The heartbeat has gone on up to now: said for scans that were left out because nothing could change in them.</summary>
    public void KeepBeating()
    {
        if (_beatUs != long.MinValue)
            _beatUs = NowUs;
    }

    /// <summary>Whether the charge pump feeds the coils.</summary>
    public bool Beats(int scanPeriodMs) => _beatUs != long.MinValue && NowUs - _beatUs <= BeatHoldUs(scanPeriodMs);

    /// <summary>What the relays do.</summary>
    public void ShowOutputs(OutputImage image, int scanPeriodMs)
    {
        bool fed = Beats(scanPeriodMs);
        image.Valves = 0;
        for (int i = 0; i < Plan.OutputRoles.Length; i++)
        {
            bool on = Energised(i);
            switch (Role.Kind(Plan.OutputRoles[i]))
            {
                case Role.Valve:
                    image.Valves |= on ? 1 << Role.Index(Plan.OutputRoles[i]) : 0;
                    break;
                case Role.Pump:
                    image.Pump = on && fed;
                    break;
                default:
                    image.Heat = on && fed;
                    break;
            }
        }
    }

    /// <inheritdoc/>
    public int Level(int pin)
    {
        NowUs += ReadTakesUs;
        if (Throws is { } thrown)
        {
            Throws = null;
            throw thrown;
        }

        return InputLevel(pin) ? 1 : 0;
    }

    /// <inheritdoc/>
    public void Drive(int pin, int level)
    {
        if (pin == Plan.HeartbeatPin && level >= 0)
        {
            if (level != _beatLevel)
                _beatUs = NowUs;
            _beatLevel = level;
        }

        Driven(pin, level);
        Moved?.Invoke();
    }

    /// <summary>Level that the wiring gives an input.</summary>
    protected abstract bool InputLevel(int pin);

    /// <summary>A pin was driven or let go.</summary>
    protected abstract void Driven(int pin, int level);

    /// <summary>Whether an output's coil would be energised if it were fed.</summary>
    protected abstract bool Energised(int output);

    /// <summary>Level that a contact gives. One that switches AC is seen as half-waves of 50 Hz while it is closed.</summary>
    protected bool ContactLevel(int input)
    {
        bool ac = (Plan.AcKinds & (1 << Role.Kind(Plan.InputRoles[input]))) != 0;
        bool seen = _closed[input] && (!ac || NowUs / 10_000 % 2 == 0);
        return seen == Plan.ClosedIsHigh;
    }

    /// <summary>Whether a level of an output energises its relay; a floating one is held off by its resistor.</summary>
    protected bool Energises(int level) => level >= 0 && (level == 1) != Plan.RelaysActiveLow;
}
