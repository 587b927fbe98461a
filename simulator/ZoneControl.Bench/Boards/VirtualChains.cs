using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>Faults of the shift chains.</summary>
public enum ChainFault
{
    /// <summary>None.</summary>
    None,

    /// <summary>A stage of the output register is stuck low.</summary>
    StuckLow,

    /// <summary>A stage of the output register is stuck high.</summary>
    StuckHigh,

    /// <summary>No clock arrives.</summary>
    ClockLost,

    /// <summary>The input chain's plug is out: its data line is pulled high.</summary>
    InputsUnplugged,

    /// <summary>The output chain's plug is out: its read-back line is pulled high, and nothing arrives.</summary>
    OutputsUnplugged,
}

/// <summary>
/// Shift registers as their data sheets have them. 74HC165: load while the strobe is low, shift at the clock's rising edge
/// while it is high, the last input already at the output before the first clock. 74HC595: shift at the clock's rising edge,
/// latch at the strobe's, outputs off while not enabled; what it wakes up with is anything.
/// </summary>
public sealed class VirtualChains : VirtualHardware
{
    private readonly bool[] _inputs;
    private readonly bool[] _register;
    private readonly bool[] _latch;
    private readonly int[] _levels = [.. Enumerable.Repeat(-1, PinGuide.Most)];

    /// <summary>For a plan with chains.</summary>
    public VirtualChains(BoardPlan plan)
        : base(plan)
    {
        _inputs = new bool[plan.InputBits];
        _register = new bool[plan.OutputBits];
        _latch = new bool[plan.OutputBits];
        Scramble();
    }

    /// <summary>What is broken.</summary>
    public ChainFault Fault { get; set; }

    /// <summary>The stage of the output register that is stuck, from 0.</summary>
    public int StuckPlace { get; set; }

    /// <summary>The output chips lose their supply for a moment: they wake up with anything.</summary>
    public void Scramble()
    {
        for (int i = 0; i < _register.Length; i++)
        {
            _register[i] = i % 3 != 0;
            _latch[i] = i % 2 == 0;
        }
    }

    /// <summary>Whether the outputs are enabled.</summary>
    public bool Enabled => _levels[Plan.ChainPins[BoardPlan.Enable]] == 1;

    /// <inheritdoc/>
    protected override bool InputLevel(int pin)
    {
        if (pin == Plan.ChainPins[BoardPlan.InputData])
        {
            if (Plan.ChainPins[BoardPlan.Strobe] is var strobe && _levels[strobe] == 0)
                Load();
            return Fault == ChainFault.InputsUnplugged || _inputs[0];
        }

        return pin == Plan.ChainPins[BoardPlan.ReadBack] && (Fault == ChainFault.OutputsUnplugged || _register[^1]);
    }

    /// <inheritdoc/>
    protected override void Driven(int pin, int level)
    {
        int before = _levels[pin];
        _levels[pin] = level;
        bool rises = before != 1 && level == 1;
        if (pin == Plan.ChainPins[BoardPlan.Clock] && rises && Fault != ChainFault.ClockLost)
            Shift();
        if (pin != Plan.ChainPins[BoardPlan.Strobe])
            return;
        if (level == 0)
            Load();
        if (rises)
            _register.CopyTo(_latch, 0);
    }

    /// <inheritdoc/>
    protected override bool Energised(int output) => Enabled && Energises(_latch[Plan.OutputPlaces[output]] ? 1 : 0);

    private void Load()
    {
        Array.Clear(_inputs);
        _inputs[0] = true;
        for (int i = 0; i < Plan.InputPlaces.Length; i++)
            _inputs[Plan.InputPlaces[i]] = ContactLevel(i);
    }

    private void Shift()
    {
        if (_levels[Plan.ChainPins[BoardPlan.Strobe]] == 1)
        {
            Array.Copy(_inputs, 1, _inputs, 0, _inputs.Length - 1);
            _inputs[^1] = false;
        }

        if (Fault == ChainFault.OutputsUnplugged)
            return;
        Array.Copy(_register, 0, _register, 1, _register.Length - 1);
        _register[0] = _levels[Plan.ChainPins[BoardPlan.OutputData]] == 1;
        if (Fault is ChainFault.StuckLow or ChainFault.StuckHigh)
            _register[StuckPlace] = Fault == ChainFault.StuckHigh;
    }
}
