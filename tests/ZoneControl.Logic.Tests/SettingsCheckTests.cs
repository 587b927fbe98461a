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
        { "ContactDebounceMs", "too few", s => s.ContactDebounceMs = new int[Contact.Count - 1] },
        { "ContactDebounceMs", "a limit's beyond what a trip allows", s => s.ContactDebounceMs[2] = 501 },
        { "ContactDebounceMs", "a supply's beyond what a trip allows", s => s.ContactDebounceMs[6] = 501 },
        { "ContactDebounceMs", "the last one's", s => s.ContactDebounceMs[7] = -1 },
        { "PumpMinOffMs", "negative", s => s.PumpMinOffMs = -1 },
        { "PumpMinOffMs", "too long", s => s.PumpMinOffMs = Longest + 1 },
        {
            "PumpMinOffMs", "a start before an open limit is seen", s =>
                (s.FittedContacts, s.ContactDebounceMs[2], s.PumpMinOffMs) = (Contact.Limit, 300, 300 + House.Scan - 1)
        },
        {
            "PumpMinOffMs", "no rest where lost flow may stop the pump", s =>
                (s.FittedContacts, s.PumpMinOffMs) = (Contact.Flow, House.Scan - 1)
        },
        {
            "PumpMinOffMs", "no rest where a clock that fails may stop a proven pump", s =>
                (s.StandingCapacity, s.PumpMinOffMs) = (1, House.Scan - 1)
        },
        { "PumpStartIntervalMs", "negative", s => s.PumpStartIntervalMs = -1 },
        { "PumpStartIntervalMs", "too long", s => s.PumpStartIntervalMs = Longest + 1 },
        { "FreezeHeatMaxMs", "negative", s => s.FreezeHeatMaxMs = -1 },
        { "FreezeHeatMaxMs", "too long", s => s.FreezeHeatMaxMs = Longest + 1 },
        { "PriorityMaxMs", "negative", s => s.PriorityMaxMs = -1 },
        { "PriorityMaxMs", "none where fitted", s => (s.FittedContacts, s.PriorityMaxMs) = (Contact.Priority, 0) },
        { "PriorityMaxMs", "too long", s => s.PriorityMaxMs = Longest + 1 },
        { "ServiceLimitMs", "none", s => s.ServiceLimitMs = 0 },
        { "ServiceLimitMs", "too long", s => s.ServiceLimitMs = Longest + 1 },
        { "StallScans", "none", s => s.StallScans = 0 },
        { "StallScans", "1001", s => s.StallScans = 1001 },
        { "StallLimitMs", "less than a scan", s => s.StallLimitMs = House.Scan - 1 },
        { "StallLimitMs", "too long", s => s.StallLimitMs = Longest + 1 },
        { "FittedContacts", "beyond the last", s => s.FittedContacts = 1 << Contact.Count },
        { "FittedContacts", "negative", s => (s.FittedContacts, s.PumpMinOffMs) = (-1, House.Scan) },
        { "GatedZones", "beyond the last", s => s.GatedZones = 8 },
        { "CompanionOrder", "gated", s => (s.GatedZones, s.CompanionOrder) = (2, [0, 1]) },
        { "InvertedCalls", "beyond the last", s => s.InvertedCalls = 8 },
        { "InvertedSwitches", "of a timed zone", s => (s.SwitchedZones, s.InvertedSwitches) = (1, 2) },
        { "InvertedSenses", "of a driven zone", s => (s.GatedZones, s.CompanionOrder, s.InvertedSenses) = (1, [1], 2) },
        { "FlowProofMs", "none", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowProofMs) = (Contact.Flow, House.Scan, 0) },
        { "FlowProofMs", "too long", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowProofMs) = (Contact.Flow, House.Scan, Longest + 1) },
        { "FlowLossMs", "none", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowLossMs) = (Contact.Flow, House.Scan, 0) },
        { "FlowLossMs", "too long", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowLossMs) = (Contact.Flow, House.Scan, Longest + 1) },
        { "FlowRetries", "negative", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowRetries) = (Contact.Flow, House.Scan, -1) },
        { "FlowRetries", "101", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowRetries) = (Contact.Flow, House.Scan, 101) },
        { "TransformerDeciVa", "negative", s => s.TransformerDeciVa = -1 },
        { "TransformerDeciVa", "too large", s => s.TransformerDeciVa = 100_001 },
        { "HoldDeciVa", "negative", s => (s.TransformerDeciVa, s.HoldDeciVa[1]) = (400, -1) },
        { "HoldDeciVa", "too few", s => (s.TransformerDeciVa, s.HoldDeciVa) = (400, []) },
        { "InrushDeciVa", "too many", s => (s.TransformerDeciVa, s.InrushDeciVa) = (400, [1, 1, 1, 1]) },
        { "InrushDeciVa", "less than held", s => (s.TransformerDeciVa, s.HoldDeciVa[2], s.InrushDeciVa[2]) = (400, 50, 49) },
        { "InrushMs", "negative", s => (s.TransformerDeciVa, s.InrushMs[0]) = (400, -1) },
        { "InrushMs", "longer than opening", s => (s.TransformerDeciVa, s.InrushMs[2]) = (400, House.Opening + 1) },
        {
            "TransformerDeciVa", "the last valve to open would wait for ever", s =>
                (s.TransformerDeciVa, s.HoldDeciVa, s.InrushDeciVa) = (199, [50, 50, 50], [100, 100, 100])
        },
        { "ExerciseIntervalS", "negative", s => s.ExerciseIntervalS = -1 },
        { "ExerciseIntervalS", "more than a year", s => s.ExerciseIntervalS = 366 * 24 * 3600 + 1 },
        { "ExerciseRetryS", "59", s => Exercised(s, 100, 59, 1, 1) },
        { "ExerciseRetryS", "longer than the interval", s => Exercised(s, 100, 101, 1, 1) },
        { "ExerciseRunMs", "none", s => Exercised(s, 100, 60, 0, 1) },
        { "ExerciseRunMs", "too long", s => Exercised(s, 100, 60, Longest + 1, Longest) },
        { "ExerciseLimitMs", "less than the run", s => Exercised(s, 100, 60, 500, 499) },
        { "ExerciseLimitMs", "too long", s => Exercised(s, 100, 60, 500, Longest + 1) },
        { "ContactDebounceMs", "negative", s => s.SeasonDebounceMs = -1 },
        { "ContactDebounceMs", "too long", s => s.SeasonDebounceMs = Longest + 1 },
    };

    private static void Exercised(ControllerSettings s, int interval, int retry, int run, int limit) =>
        (s.ExerciseIntervalS, s.ExerciseRetryS, s.ExerciseRunMs, s.ExerciseLimitMs) = (interval, retry, run, limit);

    [Theory]
    [MemberData(nameof(Refused))]
    public void What_is_not_lawful_is_refused_by_name(string name, string why, Action<ControllerSettings> change)
    {
        ControllerSettings settings = House.OfZones(3).With(change).Settings();

        Assert.True(name == SettingsCheck.FirstMistake(settings), $"{name}, {why}");
        Assert.Equal(name, Assert.Throws<ArgumentException>(() => new ZoneController(settings)).Message);
    }

    [Fact]
    public void Of_several_mistakes_the_one_that_is_looked_at_first_is_named()
    {
        (string Name, Action<ControllerSettings> Change)[] inOrder =
        [
            ("ZoneCount", s => s.ZoneCount = 0),
            ("ScanPeriodMs", s => s.ScanPeriodMs = 5),
            ("Capacity", s => s.Capacity[0] = 0),
            ("MinimumOpen", s => s.MinimumOpen = 0),
            ("CallDebounceMs", s => s.CallDebounceMs = -1),
            ("InvertedCalls", s => s.InvertedCalls = 8),
            ("TransformerDeciVa", s => s.TransformerDeciVa = -1),
            ("ExerciseIntervalS", s => s.ExerciseIntervalS = -1),
        ];
        for (int first = 0; first < inOrder.Length; first++)
        {
            House house = House.OfZones(3);
            foreach ((_, Action<ControllerSettings> change) in inOrder.Skip(first))
                house.With(change);
            Assert.Equal(inOrder[first].Name, SettingsCheck.FirstMistake(house.Settings()));
        }
    }

    public static TheoryData<string, Action<ControllerSettings>> Taken => new()
    {
        { "as it is", _ => { } },
        { "one zone that is its own companion", s => s.CompanionOrder = [0] },
        { "no companions", s => s.CompanionOrder = [] },
        { "shortest scan", s => s.ScanPeriodMs = 10 },
        { "longest scan", s => s.ScanPeriodMs = s.HeatLeadMs = s.PumpRundownMs = s.StallLimitMs = 1000 },
        { "largest capacities", s => (s.Capacity[0], s.StandingCapacity, s.MinimumOpen, s.PumpMinOffMs) = (1000, 16000, 16000, House.Scan) },
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
        {
            "longest debounce of contacts that trip, and the rest that a limit asks for", s =>
                (s.FittedContacts, s.ContactDebounceMs[2], s.ContactDebounceMs[6], s.PumpMinOffMs) =
                (Contact.Limit | Contact.Supply, 500, 500, 500 + House.Scan)
        },
        { "longest debounce of one that trips nothing", s => s.ContactDebounceMs[1] = Longest },
        { "longest rest", s => s.PumpMinOffMs = s.PumpStartIntervalMs = Longest },
        { "no priority where none is fitted", s => s.PriorityMaxMs = 0 },
        { "shortest priority", s => (s.FittedContacts, s.PriorityMaxMs) = (Contact.Priority, 1) },
        { "longest limits", s => s.FreezeHeatMaxMs = s.PriorityMaxMs = s.ServiceLimitMs = s.StallLimitMs = Longest },
        { "shortest limits", s => (s.FreezeHeatMaxMs, s.ServiceLimitMs, s.StallScans, s.StallLimitMs) = (0, 1, 1, House.Scan) },
        { "most stalled scans", s => s.StallScans = 1000 },
        { "every contact", s => (s.FittedContacts, s.PumpMinOffMs) = ((1 << Contact.Count) - 1, House.Scan) },
        { "a scan of rest where a clock that fails may stop a proven pump", s => (s.StandingCapacity, s.PumpMinOffMs) = (1, House.Scan) },
        { "no rest where starts are few", s => (s.StandingCapacity, s.PumpStartIntervalMs) = (1, 1) },
        { "no rest where capacity has to be proven", s => (s.StandingCapacity, s.MinimumOpen) = (1, 2) },
        { "no contact", s => s.FittedContacts = 0 },
        { "shortest flow times", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowProofMs, s.FlowLossMs, s.FlowRetries) = (Contact.Flow, House.Scan, 1, 1, 0) },
        { "longest flow times", s => (s.FittedContacts, s.PumpMinOffMs, s.FlowProofMs, s.FlowLossMs, s.FlowRetries) = (Contact.Flow, House.Scan, Longest, Longest, 100) },
        { "flow times that nobody needs", s => (s.FlowProofMs, s.FlowLossMs, s.FlowRetries) = (0, 0, -1) },
        { "all gated", s => (s.GatedZones, s.CompanionOrder) = (7, []) },
        { "all turned round", s => (s.InvertedCalls, s.SwitchedZones, s.InvertedSwitches) = (7, 7, 7) },
        {
            "a transformer that just suffices", s =>
                (s.TransformerDeciVa, s.HoldDeciVa, s.InrushDeciVa, s.InrushMs[1]) = (200, [50, 50, 50], [100, 100, 100], House.Opening)
        },
        {
            "a transformer that need not feed a panel's valve", s =>
                (s.GatedZones, s.CompanionOrder, s.TransformerDeciVa, s.HoldDeciVa, s.InrushDeciVa, s.InrushMs) =
                (4, [0, 1], 150, [50, 50, 90], [100, 100, 80], [0, 0, Longest])
        },
        { "the largest transformer", s => s.TransformerDeciVa = 100_000 },
        { "loads that nobody needs", s => (s.HoldDeciVa, s.InrushDeciVa, s.InrushMs) = ([], [], []) },
        { "longest exercise", s => Exercised(s, 366 * 24 * 3600, 366 * 24 * 3600, Longest, Longest) },
        { "shortest exercise", s => Exercised(s, 60, 60, 1, 1) },
        { "no exercise", s => Exercised(s, 0, 0, 0, 0) },
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
