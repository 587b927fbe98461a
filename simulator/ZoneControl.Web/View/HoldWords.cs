using ZoneControl.Logic;

namespace ZoneControl.Web.View;

/// <summary>The words a person reads for a hold reason.</summary>
/// <param name="Letter">One letter, for lanes.</param>
/// <param name="Word">A word or two.</param>
/// <param name="Sentence">What is the matter, and what ends it.</param>
public sealed record HoldWords(char Letter, string Word, string Sentence)
{
    /// <summary>The words for a reason; every reason has its own.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason without words.</exception>
    public static HoldWords For(HoldReason reason) => reason switch
    {
        HoldReason.None => new('-', "no hold", "The pump runs, or nobody asks for it."),
        HoldReason.Lockout => new('L', "season lockout",
            "Thermostats call, but the season switch says summer lockout, so calls do nothing."),
        HoldReason.ValveLatched => new('V', "valve latched",
            "Every zone that calls has a valve that was given up; it must be mended and the alarm reset."),
        HoldReason.TooFewValves => new('F', "too few valves",
            "Too many valves are late or latched: the healthy ones together fall short of minimum open."),
        HoldReason.Proof => new('O', "valves opening",
            "Valves are on their way; not enough of them have proven open yet."),
        HoldReason.StartDelay => new('D', "start delay",
            "The way is open; the start delay has not passed yet."),
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "a hold reason without words"),
    };
}
