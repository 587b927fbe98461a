using ZoneControl.Logic;

namespace ZoneControl.Bench.Proving;

/// <summary>What a search moves on together: settings, a controller, the moves of the world, and what is judged.</summary>
/// <param name="Scaled">The house as monitors are told it, with scaled times.</param>
/// <param name="Build">Builds one controller for one worker.</param>
/// <param name="Moves">Everything that may happen between two scans.</param>
/// <param name="Rules">Rules to judge; null for all.</param>
/// <param name="NameOf">A zone's name by its number, for reasons.</param>
internal sealed record ProductPlan(
    ControllerSettings Scaled,
    Func<IProvable> Build,
    IReadOnlyList<Move> Moves,
    IReadOnlySet<string>? Rules,
    Func<int, string> NameOf);
