using ZoneControl.Logic;

namespace ZoneControl.Board;

/// <summary>
/// Settings and pin plan as one list of ints in a fixed order: what the fingerprint is made of, and what the bench hands to a
/// compiled image, whose classes are not its own.
/// </summary>
public static class SettingsWords
{
    /// <summary>Number of the order; a change of it changes every fingerprint.</summary>
    public const int Order = 1;

    /// <summary>The words of settings and plan.</summary>
    public static int[] Of(ControllerSettings settings, BoardPlan plan)
    {
        WordList words = WordList.ForWriting();
        Pass(words, settings, plan);
        return words.Written();
    }

    /// <summary>Fills settings and plan from words that <see cref="Of"/> made.</summary>
    public static void Read(int[] words, ControllerSettings settings, BoardPlan plan) =>
        Pass(WordList.ForReading(words), settings, plan);

    private static void Pass(WordList w, ControllerSettings s, BoardPlan p)
    {
        w.Int(Order);
        Controller(w, s);
        Plan(w, p);
    }

    private static void Controller(WordList w, ControllerSettings s)
    {
        s.ZoneCount = w.Int(s.ZoneCount);
        s.ScanPeriodMs = w.Int(s.ScanPeriodMs);
        s.Capacity = w.Array(s.Capacity);
        s.StandingCapacity = w.Int(s.StandingCapacity);
        s.MinimumOpen = w.Int(s.MinimumOpen);
        s.SwitchedZones = w.Int(s.SwitchedZones);
        s.OpeningMs = w.Array(s.OpeningMs);
        s.ClosingMs = w.Array(s.ClosingMs);
        s.SwitchMinMs = w.Array(s.SwitchMinMs);
        s.SwitchLimitMs = w.Array(s.SwitchLimitMs);
        s.ValveRetries = w.Int(s.ValveRetries);
        s.CompanionOrder = w.Array(s.CompanionOrder);
        s.PumpStartDelayMs = w.Int(s.PumpStartDelayMs);
        s.PumpOverrunMs = w.Int(s.PumpOverrunMs);
        s.PumpRundownMs = w.Int(s.PumpRundownMs);
        s.HeatLeadMs = w.Int(s.HeatLeadMs);
        s.CallDebounceMs = w.Int(s.CallDebounceMs);
        s.SwitchDebounceMs = w.Int(s.SwitchDebounceMs);
        s.ContactDebounceMs = w.Array(s.ContactDebounceMs);
        s.FittedContacts = w.Int(s.FittedContacts);
        s.InvertedContacts = w.Int(s.InvertedContacts);
        s.InvertedCalls = w.Int(s.InvertedCalls);
        s.InvertedSwitches = w.Int(s.InvertedSwitches);
        s.InvertedSenses = w.Int(s.InvertedSenses);
        s.GatedZones = w.Int(s.GatedZones);
        s.PumpMinOffMs = w.Int(s.PumpMinOffMs);
        s.PumpStartIntervalMs = w.Int(s.PumpStartIntervalMs);
        s.FlowProofMs = w.Int(s.FlowProofMs);
        s.FlowLossMs = w.Int(s.FlowLossMs);
        s.FlowRetries = w.Int(s.FlowRetries);
        s.TransformerDeciVa = w.Int(s.TransformerDeciVa);
        s.HoldDeciVa = w.Array(s.HoldDeciVa);
        s.InrushDeciVa = w.Array(s.InrushDeciVa);
        s.InrushMs = w.Array(s.InrushMs);
        s.ExerciseIntervalS = w.Int(s.ExerciseIntervalS);
        s.ExerciseRetryS = w.Int(s.ExerciseRetryS);
        s.ExerciseRunMs = w.Int(s.ExerciseRunMs);
        s.ExerciseLimitMs = w.Int(s.ExerciseLimitMs);
        s.FreezeHeatMaxMs = w.Int(s.FreezeHeatMaxMs);
        s.PriorityMaxMs = w.Int(s.PriorityMaxMs);
        s.ServiceLimitMs = w.Int(s.ServiceLimitMs);
        s.StallScans = w.Int(s.StallScans);
        s.StallLimitMs = w.Int(s.StallLimitMs);
    }

    private static void Plan(WordList w, BoardPlan p)
    {
        p.Module = w.Int(p.Module);
        p.Arrangement = w.Int(p.Arrangement);
        p.RelaysActiveLow = w.Bool(p.RelaysActiveLow);
        p.ClosedIsHigh = w.Bool(p.ClosedIsHigh);
        p.AcKinds = w.Int(p.AcKinds);
        p.HeartbeatPin = w.Int(p.HeartbeatPin);
        p.InputRoles = w.Array(p.InputRoles);
        p.InputPlaces = w.Array(p.InputPlaces);
        p.OutputRoles = w.Array(p.OutputRoles);
        p.OutputPlaces = w.Array(p.OutputPlaces);
        p.ChainPins = w.Array(p.ChainPins);
        p.InputBits = w.Int(p.InputBits);
        p.OutputBits = w.Int(p.OutputBits);
    }
}
