using ZoneControl.Board;

namespace ZoneControl.Firmware;

/// <summary>Inputs and outputs of one arrangement of pins.</summary>
public abstract class BoardIo
{
    /// <summary>Contacts as last read, one an input of the plan; true for closed.</summary>
    public readonly bool[] Closed;

    /// <summary>Takes over a plan that <see cref="PlanCheck"/> has found nothing wrong with.</summary>
    protected BoardIo(BoardPlan plan, IPins pins)
    {
        Plan = plan;
        Pins = pins;
        Closed = new bool[plan.InputRoles.Length];
    }

    /// <summary>The plan.</summary>
    protected BoardPlan Plan { get; }

    /// <summary>The pins.</summary>
    protected IPins Pins { get; }

    /// <summary>Makes every pin what it is, outputs off. Gives a constant of <see cref="BoardFault"/>.</summary>
    public abstract int Start();

    /// <summary>Reads every contact into <see cref="Closed"/>. Gives a constant of <see cref="BoardFault"/>.</summary>
    public abstract int Read();

    /// <summary>Writes every output, true for energised. Gives a constant of <see cref="BoardFault"/>.</summary>
    public abstract int Write(bool[] energised);

    /// <summary>Every output off, whatever else is wrong; nothing is thrown.</summary>
    public abstract void Safe();
}
