using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Boards;

/// <summary>
/// The delay of the board's envelope, put before a controller that has no board: contacts that switch 24 V AC are seen one
/// scan later than they change, closing or opening.
/// </summary>
public sealed class LateContacts : IController
{
    private readonly IController _inner;
    private readonly int _kinds;
    private readonly InputImage _before = new();
    private readonly InputImage _shown = new();

    private LateContacts(IController inner, int kinds)
    {
        _inner = inner;
        _kinds = kinds;
    }

    /// <inheritdoc/>
    public string Name => _inner.Name;

    /// <summary>The controller with the house's delay before it; the controller itself where there is none.</summary>
    public static IController Around(House house, IController inner)
    {
        ArgumentNullException.ThrowIfNull(house);
        return house.Board.AcKinds.Value == 0 ? inner : new LateContacts(inner, house.Board.AcKinds.Value);
    }

    /// <inheritdoc/>
    public void PowerUp()
    {
        // Nothing has been sampled yet: every contact is open until it has.
        Copy(new InputImage(), _before, ~0);
        _inner.PowerUp();
    }

    /// <inheritdoc/>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        ArgumentNullException.ThrowIfNull(outputs);
        Copy(inputs, _shown, ~_kinds);
        Copy(_before, _shown, _kinds);
        _inner.Scan(nowMs, _shown, outputs);
        if (!Same(_before, inputs))
            outputs.NextDeadlineMs = Math.Min(outputs.NextDeadlineMs, nowMs + 1);
        Copy(inputs, _before, ~0);
    }

    private bool Same(InputImage a, InputImage b) =>
        ((Of(Role.Call) & (a.Calls ^ b.Calls)) | (Of(Role.Switch) & (a.EndSwitches ^ b.EndSwitches)) | (Of(Role.Sense) & (a.Senses ^ b.Senses))
            | (Of(Role.Hand) & (a.ServiceValves ^ b.ServiceValves)) | (Of(Role.Contact) & (a.Contacts ^ b.Contacts))) == 0;

    private int Of(int kind) => (_kinds & (1 << kind)) != 0 ? ~0 : 0;

    private static void Copy(InputImage from, InputImage to, int kinds)
    {
        if ((kinds & (1 << Role.Call)) != 0)
            to.Calls = from.Calls;
        if ((kinds & (1 << Role.Switch)) != 0)
            to.EndSwitches = from.EndSwitches;
        if ((kinds & (1 << Role.Sense)) != 0)
            to.Senses = from.Senses;
        if ((kinds & (1 << Role.Hand)) != 0)
            to.ServiceValves = from.ServiceValves;
        if ((kinds & (1 << Role.Contact)) != 0)
            to.Contacts = from.Contacts;
    }
}
