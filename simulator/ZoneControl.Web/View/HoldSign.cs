using ZoneControl.Bench.Scripts;
using ZoneControl.Logic;

namespace ZoneControl.Web.View;

/// <summary>How a hold reason is marked in drawings: a letter beside the bench's words.</summary>
/// <param name="Letter">One letter, different for each reason.</param>
/// <param name="Word">Its short name, as in script files.</param>
/// <param name="Sentence">What it means.</param>
public sealed record HoldSign(char Letter, string Word, string Sentence)
{
    /// <summary>The sign for a reason.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A reason without a letter.</exception>
    public static HoldSign For(HoldReason reason)
    {
        HoldWord words = HoldWords.Of(reason);
        return new HoldSign(LetterOf(reason), words.Word, words.Sentence);
    }

    private static char LetterOf(HoldReason reason) => reason switch
    {
        HoldReason.None => '-',
        HoldReason.Service => 'H',
        HoldReason.Priority => 'W',
        HoldReason.Lockout => 'L',
        HoldReason.ValveLatched => 'V',
        HoldReason.Limit => 'T',
        HoldReason.FlowLatched => 'N',
        HoldReason.PumpStuck => 'P',
        HoldReason.Supply => 'U',
        HoldReason.TooFewValves => 'F',
        HoldReason.Proof => 'O',
        HoldReason.StartDelay => 'D',
        HoldReason.Rest => 'R',
        HoldReason.Reset => 'B',
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "a hold reason without a letter"),
    };
}
