using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>Placeholder until generated.</summary>
public static class GeneratedSettings
{
    /// <summary>Fingerprint.</summary>
    public const string Fingerprint = "00000000";

    /// <summary>Names.</summary>
    public static string[] Names() => new string[0];

    /// <summary>Fills.</summary>
    public static void Fill(ControllerSettings settings, BoardPlan plan) { }
}
