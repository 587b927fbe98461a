using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Proving;

/// <summary>A controller whose whole memory can be taken out and put back, so that every state of it can be visited.</summary>
public interface IProvable : IController
{
    /// <summary>How many ints <see cref="Save"/> writes.</summary>
    int StateLength { get; }

    /// <summary>Where among them the whole seconds since the pump last ran stand; their rest in ms is the next one.</summary>
    int IdlePlace { get; }

    /// <summary>Writes everything that bears on what it does next, in canonical form: alike states are alike.</summary>
    void Save(int[] state);

    /// <summary>Takes over a state that <see cref="Save"/> wrote for the same settings.</summary>
    /// <param name="state">The state.</param>
    /// <param name="nowMs">Time of the scan after which it was saved, ms of this controller's clock.</param>
    void Load(int[] state, long nowMs);
}
