using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;
using ZoneControl.Web.Live;

namespace ZoneControl.Web.View;

/// <summary>What one zone does just now.</summary>
/// <param name="Calls">Its thermostat asks (as wired, before debounce).</param>
/// <param name="Accepted">The controller took its call.</param>
/// <param name="Energised">Its valves are energised.</param>
/// <param name="Travel">Stem travel, 0 shut to 1 open.</param>
/// <param name="SwitchMade">Its end switch is made; null without one.</param>
/// <param name="Proven">The controller counts it as open.</param>
/// <param name="InAlarm">Something is wrong with its valve or switch.</param>
/// <param name="FlowM3s">Flow through its loops, m³/s.</param>
/// <param name="Warm">How far warm water has come in its loops, 0 to 1.</param>
public sealed record ZoneNow(
    bool Calls, bool Accepted, bool Energised, double Travel, bool? SwitchMade, bool Proven, bool InAlarm, double FlowM3s, double Warm);

/// <summary>What a house does just now, ready to be drawn.</summary>
/// <param name="Pump">The pump is told to run.</param>
/// <param name="Held">The pump is wanted but held, and why; none for no hold.</param>
/// <param name="Heat">Heat is asked for.</param>
/// <param name="Starved">The pump is energised with less than its minimum flow.</param>
/// <param name="PumpFlowM3s">Flow through the pump, m³/s.</param>
/// <param name="BypassFlowM3s">Flow through the bypass, m³/s.</param>
/// <param name="StandingFlowM3s">Flow through the standing loops, m³/s.</param>
/// <param name="HeadM">The pump's head, m.</param>
/// <param name="WarmMains">How far warm water has come in the mains, 0 to 1.</param>
/// <param name="TrappedC">Water in the pump's casing, °C.</param>
/// <param name="DeadheadS">Seconds so far with less than minimum flow.</param>
/// <param name="Powered">The house has power.</param>
/// <param name="Zones">Its zones, in the house file's order.</param>
public sealed record CircuitView(
    bool Pump,
    HoldReason Held,
    bool Heat,
    bool Starved,
    double PumpFlowM3s,
    double BypassFlowM3s,
    double StandingFlowM3s,
    double HeadM,
    double WarmMains,
    double TrappedC,
    double DeadheadS,
    bool Powered,
    IReadOnlyList<ZoneNow> Zones)
{
    /// <summary>What a rig does just now.</summary>
    public static CircuitView Of(Rig rig, House house, Situation situation)
    {
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(situation);
        Frame shown = rig.Shown;
        bool turns = rig.Plant.PumpSpeed > 0;
        int trouble = shown.LateValves | shown.LatchedValves | shown.EarlySwitches | shown.StuckSwitches;
        return new CircuitView(
            turns,
            shown.Hold,
            shown.Heat,
            turns && rig.Plant.PumpFlowM3s < rig.Plant.Description.Pump.MinimumFlowM3s,
            rig.Plant.PumpFlowM3s,
            rig.Plant.BypassFlowM3s,
            rig.Plant.ZoneFlowM3s(-1),
            rig.Plant.PumpHeadM,
            rig.WarmMains,
            rig.Plant.TrappedWaterC,
            rig.Plant.DeadheadS,
            situation.Power,
            [.. house.Zones.Select((zone, i) => new ZoneNow(
                (situation.Calls >> i & 1) != 0,
                ((shown.Calls | shown.Senses) >> i & 1) != 0,
                ((shown.Valves | shown.Senses) >> i & 1) != 0,
                rig.Plant.Travel(i),
                zone.Actuator.HasSwitch ? (rig.Plant.EndSwitches >> i & 1) != 0 : null,
                (shown.ProvenValves >> i & 1) != 0,
                (trouble >> i & 1) != 0,
                rig.Plant.ZoneFlowM3s(i),
                rig.WarmShare(i)))]);
    }
}
