namespace ZoneControl.Logic;

/// <summary>
/// Says whether settings are lawful, on the desktop and on the board alike. The house file's reader reports every mistake
/// in words long before; this is the last look before a controller is built.
/// </summary>
public static class SettingsCheck
{
    /// <summary>The first setting that is not lawful, by name, or null when all are.</summary>
    public static string? FirstMistake(ControllerSettings settings)
    {
        if (settings.ZoneCount < 1 || settings.ZoneCount > ControllerSettings.MostZones)
            return "ZoneCount";
        if (settings.ScanPeriodMs < 10 || settings.ScanPeriodMs > 1000)
            return "ScanPeriodMs";
        return FirstZoneMistake(settings) ?? FirstCapacityMistake(settings) ?? FirstTimeMistake(settings)
            ?? FirstContactMistake(settings) ?? FirstLoadMistake(settings) ?? FirstExerciseMistake(settings);
    }

    private static string? FirstZoneMistake(ControllerSettings s)
    {
        if (!EachWithin(s.Capacity, s.ZoneCount, 1, 1000))
            return "Capacity";
        if (!EachWithin(s.OpeningMs, s.ZoneCount, 1, ControllerSettings.LongestMs))
            return "OpeningMs";
        if (!EachWithin(s.ClosingMs, s.ZoneCount, 1, ControllerSettings.LongestMs))
            return "ClosingMs";
        if (!EachWithin(s.SwitchMinMs, s.ZoneCount, 0, ControllerSettings.LongestMs))
            return "SwitchMinMs";
        if (!EachWithin(s.SwitchLimitMs, s.ZoneCount, 1, ControllerSettings.LongestMs))
            return "SwitchLimitMs";
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            // An early switch proves after the full opening time, and a healthy one may make only then, be seen a scan later
            // and accepted up to another after its debounce: a shorter limit would call such a valve late.
            int accepted = (s.SwitchedZones & (1 << zone)) != 0 ? s.SwitchDebounceMs + 2 * s.ScanPeriodMs : 0;
            if (s.SwitchLimitMs[zone] < s.OpeningMs[zone] + accepted)
                return "SwitchLimitMs";
            if (s.SwitchMinMs[zone] > s.OpeningMs[zone])
                return "SwitchMinMs";
        }

        return (s.SwitchedZones & ~((1 << s.ZoneCount) - 1)) != 0 ? "SwitchedZones" : null;
    }

    private static string? FirstCapacityMistake(ControllerSettings s)
    {
        if (s.StandingCapacity < 0 || s.StandingCapacity > 16000)
            return "StandingCapacity";
        if (s.MinimumOpen < 1)
            return "MinimumOpen";
        int companions = 0;
        int companionCapacity = 0;
        for (int i = 0; i < s.CompanionOrder.Length; i++)
        {
            int zone = s.CompanionOrder[i];
            // A gated valve is not ours to open.
            if (zone < 0 || zone >= s.ZoneCount || ((companions | s.GatedZones) & (1 << zone)) != 0)
                return "CompanionOrder";
            companions |= 1 << zone;
            companionCapacity += s.Capacity[zone];
        }

        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            int own = (companions & (1 << zone)) != 0 ? 0 : s.Capacity[zone];
            if (s.StandingCapacity + companionCapacity + own < s.MinimumOpen)
                return "MinimumOpen";
        }

        return null;
    }

    private static string? FirstTimeMistake(ControllerSettings s)
    {
        if (s.ValveRetries < 0 || s.ValveRetries > 100)
            return "ValveRetries";
        if (!Within(s.PumpStartDelayMs, 0, ControllerSettings.LongestMs))
            return "PumpStartDelayMs";
        if (!Within(s.HeatLeadMs, s.ScanPeriodMs, ControllerSettings.LongestMs))
            return "HeatLeadMs";
        if (!Within(s.PumpOverrunMs, s.HeatLeadMs, ControllerSettings.LongestMs))
            return "PumpOverrunMs";
        // At least one scan, so that valves are never released in the very scan that stops the pump.
        if (!Within(s.PumpRundownMs, s.ScanPeriodMs, ControllerSettings.LongestMs))
            return "PumpRundownMs";
        if (!Within(s.CallDebounceMs, 0, ControllerSettings.LongestMs))
            return "CallDebounceMs";
        if (!Within(s.SwitchDebounceMs, 0, 500))
            return "SwitchDebounceMs";
        // Lost flow, or a clock that fails, may stop a pump that is wanted and proven: its rest must be a true reason to be
        // off in that scan.
        bool mustRest = s.Has(Contact.Flow) || (s.StandingCapacity >= s.MinimumOpen && s.PumpStartIntervalMs == 0);
        if (!Within(s.PumpMinOffMs, mustRest ? s.ScanPeriodMs : 0, ControllerSettings.LongestMs))
            return "PumpMinOffMs";
        if (!Within(s.PumpStartIntervalMs, 0, ControllerSettings.LongestMs))
            return "PumpStartIntervalMs";
        if (!Within(s.FreezeHeatMaxMs, 0, ControllerSettings.LongestMs))
            return "FreezeHeatMaxMs";
        if (!Within(s.PriorityMaxMs, s.Has(Contact.Priority) ? 1 : 0, ControllerSettings.LongestMs))
            return "PriorityMaxMs";
        if (!Within(s.ServiceLimitMs, 1, ControllerSettings.LongestMs))
            return "ServiceLimitMs";
        if (!Within(s.StallScans, 1, 1000))
            return "StallScans";
        return Within(s.StallLimitMs, s.ScanPeriodMs, ControllerSettings.LongestMs) ? null : "StallLimitMs";
    }

    private static string? FirstContactMistake(ControllerSettings s)
    {
        int zones = (1 << s.ZoneCount) - 1;
        if (!EachWithin(s.ContactDebounceMs, Contact.Count, 0, ControllerSettings.LongestMs))
            return "ContactDebounceMs";
        for (int place = 0; place < Contact.Count; place++)
        {
            if ((Contact.Tripping & (1 << place)) != 0 && s.ContactDebounceMs[place] > 500)
                return "ContactDebounceMs";
        }

        // A limit that is open at power-up must have been seen before the pump can start.
        if (s.Has(Contact.Limit) && s.PumpMinOffMs < s.ContactDebounceMs[Contact.Place(Contact.Limit)] + s.ScanPeriodMs)
            return "PumpMinOffMs";
        if ((s.FittedContacts & ~((1 << Contact.Count) - 1)) != 0)
            return "FittedContacts";
        if ((s.GatedZones & ~zones) != 0)
            return "GatedZones";
        if ((s.InvertedCalls & ~zones) != 0)
            return "InvertedCalls";
        if ((s.InvertedSwitches & ~s.SwitchedZones) != 0)
            return "InvertedSwitches";
        if ((s.InvertedSenses & ~s.GatedZones) != 0)
            return "InvertedSenses";
        if (!s.Has(Contact.Flow))
            return null;
        if (!Within(s.FlowProofMs, 1, ControllerSettings.LongestMs))
            return "FlowProofMs";
        if (!Within(s.FlowLossMs, 1, ControllerSettings.LongestMs))
            return "FlowLossMs";
        return Within(s.FlowRetries, 0, 100) ? null : "FlowRetries";
    }

    private static string? FirstLoadMistake(ControllerSettings s)
    {
        const int MostDeciVa = 100_000;
        if (!Within(s.TransformerDeciVa, 0, MostDeciVa))
            return "TransformerDeciVa";
        if (s.TransformerDeciVa == 0)
            return null;
        if (!EachWithin(s.HoldDeciVa, s.ZoneCount, 0, MostDeciVa))
            return "HoldDeciVa";
        if (!EachWithin(s.InrushDeciVa, s.ZoneCount, 0, MostDeciVa))
            return "InrushDeciVa";
        if (!EachWithin(s.InrushMs, s.ZoneCount, 0, ControllerSettings.LongestMs))
            return "InrushMs";
        int held = 0;
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if ((s.GatedZones & (1 << zone)) == 0)
                held += s.HoldDeciVa[zone];
        }

        // The last valve to open does so while all others are held: else it would wait for ever.
        for (int zone = 0; zone < s.ZoneCount; zone++)
        {
            if ((s.GatedZones & (1 << zone)) != 0)
                continue;
            // Ages are counted to the opening time and no further.
            if (s.InrushMs[zone] > s.OpeningMs[zone])
                return "InrushMs";
            if (s.InrushDeciVa[zone] < s.HoldDeciVa[zone])
                return "InrushDeciVa";
            if (held - s.HoldDeciVa[zone] + s.InrushDeciVa[zone] > s.TransformerDeciVa)
                return "TransformerDeciVa";
        }

        return null;
    }

    private static string? FirstExerciseMistake(ControllerSettings s)
    {
        const int YearS = 366 * 24 * 3600;
        if (!Within(s.ExerciseIntervalS, 0, YearS))
            return "ExerciseIntervalS";
        if (s.ExerciseIntervalS == 0)
            return null;
        if (!Within(s.ExerciseRetryS, 60, s.ExerciseIntervalS))
            return "ExerciseRetryS";
        if (!Within(s.ExerciseRunMs, 1, ControllerSettings.LongestMs))
            return "ExerciseRunMs";
        return Within(s.ExerciseLimitMs, s.ExerciseRunMs, ControllerSettings.LongestMs) ? null : "ExerciseLimitMs";
    }

    private static bool EachWithin(int[] values, int count, int least, int most)
    {
        if (values.Length != count)
            return false;
        for (int i = 0; i < count; i++)
        {
            if (!Within(values[i], least, most))
                return false;
        }

        return true;
    }

    private static bool Within(int value, int least, int most) => value >= least && value <= most;
}
