using ZoneControl.Board;

namespace ZoneControl.Bench.Boards;

/// <summary>Contacts and relays on pins of their own.</summary>
internal sealed class VirtualDirect(BoardPlan plan) : VirtualHardware(plan)
{
    private readonly int[] _levels = [.. Enumerable.Repeat(-1, PinGuide.Most)];

    protected override bool InputLevel(int pin)
    {
        int input = Array.IndexOf(Plan.InputPlaces, pin);
        return input >= 0 && ContactLevel(input);
    }

    protected override void Driven(int pin, int level) => _levels[pin] = level;

    protected override bool Energised(int output) => Energises(_levels[Plan.OutputPlaces[output]]);
}
