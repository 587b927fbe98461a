// Written by "zonecontrol board" from pottery.house.toml (The pottery).
// Change the house file and write this anew: the board refuses to run when what is below does not give the
// fingerprint that stands beside it.
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>Settings and pin plan of one house.</summary>
public static class GeneratedSettings
{
    /// <summary>Fingerprint of settings, plan and names; the bench and the board's log show the same.</summary>
    public const string Fingerprint = "93c1ee97";

    /// <summary>Names of the zones, z1 first.</summary>
    public static string[] Names() => new string[]
    {
        "throwing-room",
        "glazing-room",
        "shop",
        "living-room",
        "bedroom",
        "bath",
    };

    /// <summary>Fills settings and plan.</summary>
    public static void Fill(ControllerSettings settings, BoardPlan plan)
    {
        Fill(settings);
        Fill(plan);
    }

    private static void Fill(ControllerSettings s)
    {
        s.ZoneCount = 6;
        s.ScanPeriodMs = 100;
        s.Capacity = new int[] { 3, 2, 1, 2, 1, 1 };
        s.StandingCapacity = 0;
        s.MinimumOpen = 2;
        s.SwitchedZones = 41;
        s.OpeningMs = new int[] { 225000, 300000, 300000, 225000, 300000, 225000 };
        s.ClosingMs = new int[] { 375000, 450000, 450000, 375000, 450000, 375000 };
        s.SwitchMinMs = new int[] { 60000, 90000, 90000, 60000, 90000, 60000 };
        s.SwitchLimitMs = new int[] { 337500, 450000, 450000, 337500, 450000, 337500 };
        s.ValveRetries = 2;
        s.CompanionOrder = new int[] { 1, 0, 3, 2 };
        s.PumpStartDelayMs = 180000;
        s.PumpOverrunMs = 180000;
        s.PumpRundownMs = 10000;
        s.HeatLeadMs = 5000;
        s.CallDebounceMs = 1000;
        s.SwitchDebounceMs = 200;
        s.ContactDebounceMs = new int[] { 2000, 0, 0, 0, 0, 0, 0, 1000 };
        s.FittedContacts = 1;
        s.InvertedContacts = 12;
        s.InvertedCalls = 0;
        s.InvertedSwitches = 0;
        s.InvertedSenses = 0;
        s.GatedZones = 0;
        s.PumpMinOffMs = 180000;
        s.PumpStartIntervalMs = 300000;
        s.FlowProofMs = 20000;
        s.FlowLossMs = 5000;
        s.FlowRetries = 2;
        s.TransformerDeciVa = 0;
        s.HoldDeciVa = new int[] { 90, 60, 30, 60, 30, 30 };
        s.InrushDeciVa = new int[] { 270, 180, 90, 180, 90, 90 };
        s.InrushMs = new int[] { 60000, 90000, 90000, 60000, 90000, 60000 };
        s.ExerciseIntervalS = 1209600;
        s.ExerciseRetryS = 3600;
        s.ExerciseRunMs = 120000;
        s.ExerciseLimitMs = 1177500;
        s.FreezeHeatMaxMs = 14400000;
        s.PriorityMaxMs = 3600000;
        s.ServiceLimitMs = 1800000;
        s.StallScans = 10;
        s.StallLimitMs = 1000;
    }

    private static void Fill(BoardPlan p)
    {
        p.Module = 0;
        p.Arrangement = 0;
        p.RelaysActiveLow = false;
        p.ClosedIsHigh = false;
        p.AcKinds = 0;
        p.HeartbeatPin = 18;
        p.InputRoles = new int[] { 0, 1, 2, 3, 4, 5, 16, 19, 21, 64 };
        p.InputPlaces = new int[] { 34, 35, 36, 39, 14, 17, 16, 13, 4, 33 };
        p.OutputRoles = new int[] { 96, 112, 80, 81, 82, 83, 84, 85 };
        p.OutputPlaces = new int[] { 19, 21, 22, 23, 25, 26, 27, 32 };
        p.ChainPins = new int[0];
        p.InputBits = 0;
        p.OutputBits = 0;
    }
}
