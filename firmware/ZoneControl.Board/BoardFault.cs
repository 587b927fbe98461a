namespace ZoneControl.Board;

/// <summary>Why a board has put every output to safe and scans no more.</summary>
public static class BoardFault
{
    /// <summary>None: it works.</summary>
    public const int None = 0;

    /// <summary>Its settings are not lawful, or not those that were generated.</summary>
    public const int Settings = 1;

    /// <summary>Its pin plan cannot be.</summary>
    public const int PinPlan = 2;

    /// <summary>The output chain did not give back what was shifted into it.</summary>
    public const int ReadBack = 3;

    /// <summary>The bits wired high and low did not come out of the input chain.</summary>
    public const int InputChain = 4;

    /// <summary>Something was thrown.</summary>
    public const int Thrown = 5;
}
