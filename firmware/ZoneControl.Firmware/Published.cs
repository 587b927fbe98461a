using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>What a scan published, as ints: the way out of a compiled image, whose classes are not those of the bench.</summary>
public static class Published
{
    /// <summary>How many ints there are.</summary>
    public const int Count = 20;

    /// <summary>Copies an output image; outputs included, though the bench goes by the pins.</summary>
    public static void Copy(OutputImage image, int[] into)
    {
        into[0] = image.PowerUp ? 1 : 0;
        into[1] = image.AcceptedCalls;
        into[2] = image.AcceptedSwitches;
        into[3] = image.AcceptedSenses;
        into[4] = image.AcceptedHands;
        into[5] = image.AcceptedContacts;
        into[6] = image.Valves;
        into[7] = image.Pump ? 1 : 0;
        into[8] = image.Heat ? 1 : 0;
        into[9] = (int)image.Hold;
        into[10] = image.LateValves;
        into[11] = image.LatchedValves;
        into[12] = image.EarlySwitches;
        into[13] = image.StuckSwitches;
        into[14] = image.Alarms;
        into[15] = image.ProvenValves;
        into[16] = (int)(image.ScanMs >> 32);
        into[17] = (int)image.ScanMs;
        into[18] = (int)(image.NextDeadlineMs >> 32);
        into[19] = (int)image.NextDeadlineMs;
    }
}
