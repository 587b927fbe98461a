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
        return FirstZoneMistake(settings) ?? FirstCapacityMistake(settings) ?? FirstTimeMistake(settings);
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
            if (zone < 0 || zone >= s.ZoneCount || (companions & (1 << zone)) != 0)
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
        return Within(s.SeasonDebounceMs, 0, ControllerSettings.LongestMs) ? null : "SeasonDebounceMs";
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
