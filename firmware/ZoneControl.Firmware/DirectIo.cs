using System;
using ZoneControl.Board;

namespace ZoneControl.Firmware;

/// <summary>
/// A pin of its own for every contact and relay. Nothing is read back: the runtime switches an output's input stage off, so
/// its level reads as low whatever it is.
/// </summary>
public sealed class DirectIo : BoardIo
{
    private readonly bool[] _high; // level that each output was last given

    /// <summary>For a plan with direct pins.</summary>
    public DirectIo(BoardPlan plan, IPins pins)
        : base(plan, pins) => _high = new bool[plan.OutputRoles.Length];

    /// <inheritdoc/>
    public override int Start()
    {
        for (int i = 0; i < _high.Length; i++)
        {
            _high[i] = Plan.RelaysActiveLow;
            Pins.OpenOutput(Plan.OutputPlaces[i], _high[i]);
        }

        for (int i = 0; i < Closed.Length; i++)
            Pins.OpenInput(Plan.InputPlaces[i]);
        return BoardFault.None;
    }

    /// <inheritdoc/>
    public override int Read()
    {
        for (int i = 0; i < Closed.Length; i++)
            Closed[i] = Pins.Read(Plan.InputPlaces[i]) == Plan.ClosedIsHigh;
        return BoardFault.None;
    }

    /// <summary>Writes what has changed, what goes off before what goes on.</summary>
    public override int Write(bool[] energised)
    {
        Write(energised, false);
        Write(energised, true);
        return BoardFault.None;
    }

    /// <inheritdoc/>
    public override void Safe()
    {
        for (int i = 0; i < _high.Length; i++)
        {
            try
            {
                Pins.Write(Plan.OutputPlaces[i], Plan.RelaysActiveLow);
            }
            catch (Exception)
            {
                // The next one may still obey; this one is left to its resistor and to the heartbeat.
            }
        }
    }

    private void Write(bool[] energised, bool which)
    {
        for (int i = 0; i < _high.Length; i++)
        {
            bool high = energised[i] != Plan.RelaysActiveLow;
            if (energised[i] != which || high == _high[i])
                continue;
            Pins.Write(Plan.OutputPlaces[i], high);
            _high[i] = high;
        }
    }
}
