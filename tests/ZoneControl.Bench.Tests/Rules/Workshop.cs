using ZoneControl.Logic;

namespace ZoneControl.Bench.Tests.Rules;

/// <summary>
/// The small house that traces are made for. Kiln and Loft suffice alone; Glaze and Shop need each other. Times in seconds:
/// opening 10 (timed) and 12 (switched), too early below 2, limit 15, closing 8; start delay 12, overrun 20, rundown 5,
/// heat lead 3; scans every 0.1.
/// </summary>
internal static class Workshop
{
    public const int Kiln = 0;
    public const int Glaze = 1;
    public const int Shop = 2;
    public const int Loft = 3;

    private static readonly string[] _names = ["Kiln", "Glaze", "Shop", "Loft"];

    public static string NameOf(int zone) => _names[zone];

    /// <summary>The house with something more, or other.</summary>
    public static ControllerSettings With(Action<ControllerSettings> change)
    {
        ControllerSettings house = Settings();
        change(house);
        return house;
    }

    public static ControllerSettings Settings() => new()
    {
        ZoneCount = 4,
        ScanPeriodMs = 100,
        Capacity = [2, 1, 1, 2],
        StandingCapacity = 0,
        MinimumOpen = 2,
        SwitchedZones = (1 << Shop) | (1 << Loft),
        OpeningMs = [10_000, 10_000, 12_000, 12_000],
        ClosingMs = [8_000, 8_000, 8_000, 8_000],
        SwitchMinMs = [0, 0, 2_000, 2_000],
        SwitchLimitMs = [15_000, 15_000, 15_000, 15_000],
        ValveRetries = 1,
        CompanionOrder = [Glaze, Shop],
        PumpStartDelayMs = 12_000,
        PumpOverrunMs = 20_000,
        PumpRundownMs = 5_000,
        HeatLeadMs = 3_000,
        CallDebounceMs = 0,
        SwitchDebounceMs = 0,
        SeasonDebounceMs = 0,
    };
}
