using System;
using ZoneControl.Board;

namespace ZoneControl.Firmware;

/// <summary>
/// Chains of 74HC165 and 74HC595 on six pins. Both chains have one clock, and one strobe that loads the inputs while low and
/// latches the outputs as it rises: so it moves only while the output register holds an image that has been read back.
/// </summary>
/// <remarks>
/// Reading shifts twice: the inverse of the last image while the inputs come out, then the image again while the inverse
/// comes back. Writing shifts twice: the new image, and once more while it comes back itself. So every bit of the register
/// is seen at both levels in every scan, and nothing is latched before it has been seen. What is seen is the register, not
/// the relay's contact.
/// </remarks>
public sealed class ChainIo : BoardIo
{
    private readonly int _clock;
    private readonly int _strobe;
    private readonly int _outputData;
    private readonly int _inputData;
    private readonly int _readBack;
    private readonly int _enable;
    private readonly int _clocks; // of one exchange: the longer chain's bits
    private readonly bool[] _held; // what the output register holds, by place
    private readonly bool[] _next; // what is shifted into it
    private readonly bool[] _in; // what came out of the input chain, by place
    private bool _enabled;

    /// <summary>For a plan with chains.</summary>
    public ChainIo(BoardPlan plan, IPins pins)
        : base(plan, pins)
    {
        _clock = plan.ChainPins[BoardPlan.Clock];
        _strobe = plan.ChainPins[BoardPlan.Strobe];
        _outputData = plan.ChainPins[BoardPlan.OutputData];
        _inputData = plan.ChainPins[BoardPlan.InputData];
        _readBack = plan.ChainPins[BoardPlan.ReadBack];
        _enable = plan.ChainPins[BoardPlan.Enable];
        _clocks = plan.InputBits > plan.OutputBits ? plan.InputBits : plan.OutputBits;
        _held = new bool[plan.OutputBits];
        _next = new bool[plan.OutputBits];
        _in = new bool[plan.InputBits];
    }

    /// <summary>Opens the pins with the outputs disabled; they are enabled by the first good <see cref="Write"/>.</summary>
    public override int Start()
    {
        Pins.OpenOutput(_enable, false);
        Pins.OpenOutput(_clock, false);
        Pins.OpenOutput(_outputData, false);
        Pins.OpenOutput(_strobe, true);
        Pins.OpenInput(_inputData);
        Pins.OpenInput(_readBack);
        for (int i = 0; i < _next.Length; i++)
            _next[i] = Plan.RelaysActiveLow;
        Exchange(); // what comes back now is what the chips woke up with
        return BoardFault.None;
    }

    /// <inheritdoc/>
    public override int Read()
    {
        Strobe();
        Invert();
        bool good = Exchange();
        for (int i = 0; i < Closed.Length; i++)
            Closed[i] = _in[Plan.InputPlaces[i]] == Plan.ClosedIsHigh;
        if (!_in[0] || _in[_in.Length - 1])
            return BoardFault.InputChain;
        if (!good)
            return BoardFault.ReadBack;
        Invert();
        return Exchange() ? BoardFault.None : BoardFault.ReadBack;
    }

    /// <inheritdoc/>
    public override int Write(bool[] energised)
    {
        for (int i = 0; i < energised.Length; i++)
            _next[Plan.OutputPlaces[i]] = energised[i] != Plan.RelaysActiveLow;
        if (!Exchange() || !Exchange())
            return BoardFault.ReadBack;
        Strobe();
        if (!_enabled)
        {
            _enabled = true;
            Pins.Write(_enable, true);
        }

        return BoardFault.None;
    }

    /// <inheritdoc/>
    public override void Safe()
    {
        _enabled = false;
        try
        {
            Pins.Write(_enable, false);
        }
        catch (Exception)
        {
            // Then the heartbeat's absence is what is left.
        }
    }

    private void Strobe()
    {
        Pins.Write(_strobe, false);
        Pins.Write(_strobe, true);
    }

    private void Invert()
    {
        for (int i = 0; i < _next.Length; i++)
            _next[i] = !_held[i];
    }

    /// <summary>Shifts once through both chains; false when what came back is not what the output register should have held.</summary>
    private bool Exchange()
    {
        bool good = true;
        for (int k = 0; k < _clocks; k++)
        {
            int place = _clocks - 1 - k; // where this bit will be in the end
            Pins.Write(_outputData, place < _next.Length && _next[place]);
            int back = _held.Length - 1 - k; // where the bit at the end of the chain was in the beginning
            if (Pins.Read(_readBack) != (back >= 0 && _held[back]))
                good = false;
            if (k < _in.Length)
                _in[k] = Pins.Read(_inputData);
            Pins.Write(_clock, true);
            Pins.Write(_clock, false);
        }

        for (int i = 0; i < _next.Length; i++)
            _held[i] = _next[i];
        return good;
    }
}
