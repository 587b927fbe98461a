namespace ZoneControl.Logic.Tests;

/// <summary>Each setting at its limits is taken, and beyond them refused by its name.</summary>
public class SettingsCheckTests
{
    private const int Longest = ControllerSettings.LongestMs;

    public static TheoryData<string, string, Action<ControllerSettings>> Refused => new()
    {
        { "ZoneCount", "none", s => s.ZoneCount = 0 },
        { "ZoneCount", "17", s => s.ZoneCount = 17 },
        { "ScanPeriodMs", "9", s => s.ScanPeriodMs = 9 },
        { "ScanPeriodMs", "1001", s => s.ScanPeriodMs = 1001 },
        { "Capacity", "too few", s => s.Capacity = [1, 1] },
        { "Capacity", "too many", s => s.Capacity = [1, 1, 1, 1] },
        { "Capacity", "0", s => s.Capacity[2] = 0 },
        { "Capacity", "1001", s => s.Capacity[0] = 1001 },
        { "OpeningMs", "0", s => s.OpeningMs[1] = 0 },
        { "OpeningMs", "too long", s => s.OpeningMs[1] = Longest + 1 },
        { "OpeningMs", "too few", s => s.OpeningMs = [1000] },
        { "ClosingMs", "0", s => s.ClosingMs[1] = 0 },
        { "ClosingMs", "too long", s => s.ClosingMs[1] = Longest + 1 },
        { "ClosingMs", "too many", s => s.ClosingMs = [1, 1, 1, 1] },
        { "SwitchMinMs", "negative", s => s.SwitchMinMs[1] = -1 },
        { "SwitchMinMs", "beyond opening", s => s.SwitchMinMs[2] = House.Opening + 1 },
        { "SwitchMinMs", "too few", s => s.SwitchMinMs = [] },
        { "SwitchLimitMs", "before opening", s => s.SwitchLimitMs[2] = House.Opening - 1 },
        {
            "SwitchLimitMs", "before a switch at the last moment is accepted", s =>
                (s.SwitchedZones, s.SwitchLimitMs[2]) = (4, House.Opening + s.SwitchDebounceMs + 2 * s.ScanPeriodMs - 1)
        },
        { "SwitchLimitMs", "0", s => s.SwitchLimitMs[0] = 0 },
        { "SwitchLimitMs", "too long", s => s.SwitchLimitMs[0] = Longest + 1 },
        { "SwitchLimitMs", "too few", s => s.SwitchLimitMs = [] },
        { "SwitchedZones", "beyond the last", s => s.SwitchedZones = 8 },
        { "SwitchedZones", "negative", s => s.SwitchedZones = -1 },
        { "StandingCapacity", "negative", s => s.StandingCapacity = -1 },
        { "StandingCapacity", "16001", s => s.StandingCapacity = 16001 },
        { "MinimumOpen", "0", s => s.MinimumOpen = 0 },
        { "MinimumOpen", "more than all companions", s => s.MinimumOpen = 4 },
        { "MinimumOpen", "out of reach of one zone alone", s => (s.MinimumOpen, s.CompanionOrder) = (3, [0]) },
        { "CompanionOrder", "twice", s => s.CompanionOrder = [1, 1] },
        { "CompanionOrder", "negative", s => s.CompanionOrder = [-1] },
        { "CompanionOrder", "beyond the last", s => s.CompanionOrder = [3] },
        { "ValveRetries", "negative", s => s.ValveRetries = -1 },
        { "ValveRetries", "101", s => s.ValveRetries = 101 },
        { "PumpStartDelayMs", "negative", s => s.PumpStartDelayMs = -1 },
        { "PumpStartDelayMs", "too long", s => s.PumpStartDelayMs = Longest + 1 },
        { "HeatLeadMs", "less than a scan", s => s.HeatLeadMs = House.Scan - 1 },
        { "HeatLeadMs", "too long", s => s.HeatLeadMs = Longest + 1 },
        { "PumpOverrunMs", "less than the lead", s => s.PumpOverrunMs = House.HeatLead - 1 },
        { "PumpOverrunMs", "too long", s => s.PumpOverrunMs = Longest + 1 },
        { "PumpRundownMs", "less than a scan", s => s.PumpRundownMs = House.Scan - 1 },
        { "PumpRundownMs", "too long", s => s.PumpRundownMs = Longest + 1 },
        { "CallDebounceMs", "negative", s => s.CallDebounceMs = -1 },
        { "CallDebounceMs", "too long", s => s.CallDebounceMs = Longest + 1 },
        { "SwitchDebounceMs", "negative", s => s.SwitchDebounceMs = -1 },
        { "SwitchDebounceMs", "501", s => s.SwitchDebounceMs = 501 },
        { "SeasonDebounceMs", "negative", s => s.SeasonDebounceMs = -1 },
        { "SeasonDebounceMs", "too long", s => s.SeasonDebounceMs = Longest + 1 },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_is_not_lawful_is_refused_by_name(string name, string why, Action<ControllerSettings> change)
    {
        ControllerSettings settings = House.OfZones(3).With(change).Settings();

        Assert.True(name == SettingsCheck.FirstMistake(settings), $"{name}, {why}");
        Assert.Equal(name, Assert.Throws<ArgumentException>(() => new ZoneController(settings)).Message);
    }

    public static TheoryData<string, Action<ControllerSettings>> Taken => new()
    {
        { "as it is", _ => { } },
        { "one zone that is its own companion", s => s.CompanionOrder = [0] },
        { "no companions", s => s.CompanionOrder = [] },
        { "shortest scan", s => s.ScanPeriodMs = 10 },
        { "longest scan", s => s.ScanPeriodMs = s.HeatLeadMs = s.PumpRundownMs = 1000 },
        { "largest capacities", s => (s.Capacity[0], s.StandingCapacity, s.MinimumOpen) = (1000, 16000, 16000) },
        { "minimum open that needs every zone", s => s.MinimumOpen = 3 },
        { "minimum open that one zone alone just reaches", s => (s.CompanionOrder, s.MinimumOpen) = ([0, 1], 2) },
        { "standing capacity makes up the rest", s => (s.CompanionOrder, s.StandingCapacity, s.MinimumOpen) = ([], 1, 2) },
        { "all switched", s => s.SwitchedZones = 7 },
        {
            "shortest times", s => (s.SwitchedZones, s.OpeningMs[0], s.ClosingMs[0], s.SwitchMinMs[0], s.SwitchLimitMs[0]) =
                (1, 1, 1, 0, 1 + s.SwitchDebounceMs + 2 * s.ScanPeriodMs)
        },
        { "shortest limit without a switch", s => (s.SwitchedZones, s.SwitchLimitMs[0]) = (0, s.OpeningMs[0]) },
        {
            "longest times", s =>
                (s.SwitchedZones, s.OpeningMs[0], s.ClosingMs[0], s.SwitchMinMs[0], s.SwitchLimitMs[0]) =
                (0, Longest, Longest, Longest, Longest)
        },
        { "least retries", s => s.ValveRetries = 0 },
        { "most retries", s => s.ValveRetries = 100 },
        { "no delay", s => s.PumpStartDelayMs = 0 },
        { "longest delay", s => s.PumpStartDelayMs = Longest },
        { "lead of a scan", s => s.HeatLeadMs = House.Scan },
        { "longest overrun and lead", s => s.PumpOverrunMs = s.HeatLeadMs = Longest },
        { "rundown of a scan", s => s.PumpRundownMs = House.Scan },
        { "longest rundown", s => s.PumpRundownMs = Longest },
        { "longest debounce", s => (s.CallDebounceMs, s.SwitchDebounceMs, s.SeasonDebounceMs) = (Longest, 500, Longest) },
    };

    [Theory]
    [MemberData(nameof(Taken))]
    public void What_is_just_lawful_is_taken(string what, Action<ControllerSettings> change)
    {
        string? mistake = SettingsCheck.FirstMistake(House.OfZones(3).With(change).Settings());

        Assert.True(mistake == null, $"{what}: {mistake}");
    }

    [Fact]
    public void Sixteen_zones_are_the_most() =>
        Assert.Null(SettingsCheck.FirstMistake(House.OfZones(16).Settings()));
}
