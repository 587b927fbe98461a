#pragma warning disable CA1822 // interface stated before its parts
namespace ZoneControl.Plant;

/// <summary>
/// Water, valves and pump of one house, moved along in virtual time by whoever drives its inputs. Results do not depend on
/// how the time between two input changes is cut into calls of <see cref="AdvanceTo"/>.
/// </summary>
public sealed class PlantModel
{
    /// <summary>A change that never comes.</summary>
    public const long Never = long.MaxValue;

    /// <summary>Builds the plant at time 0: every valve shut, pump off, casing at the water's temperature.</summary>
    /// <exception cref="ArgumentException">A value of the description cannot be used; the message names it.</exception>
    public PlantModel(PlantDescription description) => Description = description;

    /// <summary>What the plant is made of.</summary>
    public PlantDescription Description { get; }

    /// <summary>Time reached, ms.</summary>
    public long NowMs { get; private set; }

    /// <summary>Drives the inputs from this moment on: valves energised (one bit a zone), pump on, heat asked for.</summary>
    public void Drive(int valves, bool pump, bool heat) => throw new NotImplementedException();

    /// <summary>Plants or repairs a fault of one zone's actuator or switch, from this moment on.</summary>
    public void SetFault(int zone, ActuatorFault fault) => throw new NotImplementedException();

    /// <summary>Moves time on, ms; never back.</summary>
    public void AdvanceTo(long ms) => NowMs = ms;

    /// <summary>The first time after <see cref="NowMs"/> at which an end switch changes if the inputs stay, ms.</summary>
    public long NextSwitchChangeMs => Never;

    /// <summary>
    /// A valve moves, or the casing's temperature changes noticeably: look again within a second.
    /// </summary>
    public bool IsMoving => false;

    /// <summary>End switches made, one bit a zone.</summary>
    public int EndSwitches => 0;

    /// <summary>Stem travel of a zone's valves, 0 shut to 1 open.</summary>
    public double Travel(int zone) => 0;

    /// <summary>Flow of a loop, m³/s.</summary>
    public double LoopFlowM3s(int loop) => 0;

    /// <summary>Flow of a zone, all its loops together, m³/s.</summary>
    public double ZoneFlowM3s(int zone) => 0;

    /// <summary>Flow through the pump, m³/s.</summary>
    public double PumpFlowM3s => 0;

    /// <summary>Flow through the bypass, m³/s.</summary>
    public double BypassFlowM3s => 0;

    /// <summary>Head of the pump, m.</summary>
    public double PumpHeadM => 0;

    /// <summary>Temperature of the water in the pump's casing, °C.</summary>
    public double TrappedWaterC => 0;

    /// <summary>Hottest <see cref="TrappedWaterC"/> so far, °C.</summary>
    public double HottestTrappedC => 0;

    /// <summary>Seconds so far with the pump energised and less than its minimum flow.</summary>
    public double DeadheadS => 0;

    /// <summary>Separate stretches of deadhead so far.</summary>
    public int DeadheadEvents => 0;

    /// <summary>Pump starts so far.</summary>
    public int PumpStarts => 0;

    /// <summary>Seconds so far that the pump was on.</summary>
    public double PumpRunS => 0;

    /// <summary>Electrical energy of the pump so far, Wh.</summary>
    public double PumpEnergyWh => 0;

    /// <summary>
    /// When warm water first reached a manifold that feeds an open loop: the volume of mains and branch moved while heat
    /// was asked for. ms; null while it has not.
    /// </summary>
    public long? FirstWarmFlowMs => null;
}

/// <summary>What is wrong with one zone's actuator and end switch.</summary>
public sealed record ActuatorFault
{
    /// <summary>Nothing is wrong.</summary>
    public static ActuatorFault None { get; } = new();

    /// <summary>The stem stays where it is, whatever is energised.</summary>
    public bool Stuck { get; init; }

    /// <summary>The actuator gets no supply: a broken wire or a dead heater. It closes as if released.</summary>
    public bool Dead { get; init; }

    /// <summary>Dead times and strokes take this many times as long; 0.1 to 100.</summary>
    public double Slowness { get; init; } = 1;

    /// <summary>What the end switch does.</summary>
    public SwitchFault Switch { get; init; }
}

/// <summary>What an end switch does.</summary>
public enum SwitchFault
{
    /// <summary>It follows the stem.</summary>
    None,

    /// <summary>It never makes: a broken wire.</summary>
    NeverMakes,

    /// <summary>It is always made: welded or shorted.</summary>
    AlwaysMade,
}
