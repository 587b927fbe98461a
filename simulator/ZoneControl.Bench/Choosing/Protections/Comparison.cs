using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Scripts;
using ZoneControl.Bench.Winters;
using ZoneControl.Plant.Heat;

namespace ZoneControl.Bench.Choosing.Protections;

/// <summary>What one protection came to.</summary>
public sealed record Outcome
{
    /// <summary>The protection.</summary>
    public required Protection Protection { get; init; }

    /// <summary>Seconds the pump was on with less than its minimum flow.</summary>
    public required double DeadheadS { get; init; }

    /// <summary>Seconds of that with every valve shut, so that nothing flowed at all.</summary>
    public required double ShutS { get; init; }

    /// <summary>Separate stretches of that.</summary>
    public required int DeadheadEvents { get; init; }

    /// <summary>Hottest water in the pump's casing, °C; an upper bound.</summary>
    public required double HottestTrappedC { get; init; }

    /// <summary>Pump starts.</summary>
    public required int PumpStarts { get; init; }

    /// <summary>Hours the pump was on.</summary>
    public required double PumpRunH { get; init; }

    /// <summary>Electrical energy of the pump, kWh.</summary>
    public required double PumpEnergyKWh { get; init; }

    /// <summary>The winter with its rooms; null for a script, which has none.</summary>
    public SeasonResult? Winter { get; init; }

    /// <summary>The days of the fault trials with nothing broken; null for a script.</summary>
    public SeasonResult? Sound { get; init; }

    /// <summary>The fault trials' days, in their order; null where what breaks is not felt under this protection. None for a script.</summary>
    public IReadOnlyList<SeasonResult?> Trials { get; init; } = [];

    /// <summary>Degree-hours above comfort in rooms whose valve is held open, K·h.</summary>
    public double HeldOverKh => Winter is null ? 0
        : Winter.Rooms.Where((_, zone) => (Protection.HeldOpen & (1 << zone)) != 0).Sum(room => room.OverKh);
}

/// <summary>Protections side by side.</summary>
/// <param name="House">The house.</param>
/// <param name="Under">What all of them went through, in words.</param>
/// <param name="Trials">What breaks; none for a script.</param>
/// <param name="Outcomes">What each came to.</param>
public sealed record Comparison(House House, string Under, IReadOnlyList<FaultTrial> Trials, IReadOnlyList<Outcome> Outcomes)
{
    /// <summary>What the fault trials went through, in words; "" for a script.</summary>
    public string TrialsUnder { get; init; } = "";

    /// <summary>Whether what all of them went through is the heating of a year, so that its energy is a year's.</summary>
    public bool IsAYear => Outcomes[0].Winter is { Days: >= LeastHeatingDays };

    private const int LeastHeatingDays = 150; // shorter ones leave out part of a winter (a judgement)
    private const int YearDays = 365;

    /// <summary>Compares them over the same invented winter, and over the middle of it with something broken.</summary>
    /// <param name="house">The house.</param>
    /// <param name="seed">Seed of the weather: the same seed gives the same winter everywhere.</param>
    /// <param name="days">Length of the winter, days; 1 to 366.</param>
    /// <param name="progress">Told the share that is done, 0 to 1.</param>
    /// <param name="cores">Cores to use; 0 for all. Results do not depend on it.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Comparison OverWinter(
        House house, long seed, int days, IProgress<double>? progress = null, int cores = 0, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(house);
        IReadOnlyList<Protection> protections = ProtectionList.Of(house);
        IReadOnlyList<FaultTrial> trials = FaultTrials.Of(house);
        int trialDays = FaultTrials.Days(days);
        Weather winter = house.ToWinter().Make(seed, days);
        Weather middle = MiddleOf(house, days).Make(seed, trialDays);
        SeasonJob[] jobs =
        [
            .. protections.SelectMany(p => (SeasonJob[])
            [
                new(p.House, () => winter, p.Build, new SeasonOptions { Days = days, Events = p.Under([]) }),
                new(p.House, () => middle, p.Build, new SeasonOptions { Days = trialDays, Events = p.Under([]) }),
                .. trials.Select(trial => new SeasonJob(p.House, () => middle, p.Build, new SeasonOptions { Days = trialDays, Events = p.Under(trial.Events) })),
            ]),
        ];
        IReadOnlyList<SeasonResult> results = SeasonBatch.Run(jobs, progress, cores, cancel);
        int each = trials.Count + 2;
        string under = $"{days} days of {winter.Name} from {WeatherReader.DayInWords(house.ToWinter().FirstDay)} on, coldest hour {Show.Temperature(winter.ColdestC, house.Units)}";
        return new Comparison(house, under, trials, [.. protections.Select((p, i) => Of(p, trials, [.. results.Skip(i * each).Take(each)]))])
        {
            TrialsUnder = $"{trialDays} days from {WeatherReader.DayInWords(MiddleOf(house, days).FirstDay)} on, coldest hour {Show.Temperature(middle.ColdestC, house.Units)}",
        };
    }

    /// <summary>Compares them over the owner's script: water and pump only, since its thermostats follow the script and no room.</summary>
    public static Comparison OverScript(House house, Script script, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(house);
        ArgumentNullException.ThrowIfNull(script);
        var outcomes = new List<Outcome>();
        IReadOnlyList<Protection> protections = ProtectionList.Of(house);
        foreach (Protection protection in protections)
        {
            RunTotals totals = Runner.Run(
                protection.House, script with { Events = protection.Under(script.Events) }, protection.Build, cancel: cancel).Totals;
            outcomes.Add(new Outcome
            {
                Protection = protection,
                DeadheadS = totals.DeadheadS,
                ShutS = totals.ShutS,
                DeadheadEvents = totals.DeadheadEvents,
                HottestTrappedC = totals.HottestTrappedC,
                PumpStarts = totals.PumpStarts,
                PumpRunH = totals.PumpRunS / 3600,
                PumpEnergyKWh = totals.PumpEnergyWh / 1000,
            });
            progress?.Report((double)outcomes.Count / protections.Count);
        }

        return new Comparison(house, $"the script \"{script.Title}\", {Durations.InWords(script.DurationMs)} long", [], outcomes);
    }

    /// <summary>An outcome from the results of a protection's runs: the winter, the trials' days with nothing broken, each trial.</summary>
    private static Outcome Of(Protection protection, IReadOnlyList<FaultTrial> trials, SeasonResult[] results) => new()
    {
        Protection = protection,
        DeadheadS = results[0].DeadheadS,
        ShutS = results[0].ShutS,
        DeadheadEvents = results[0].DeadheadEvents,
        HottestTrappedC = results[0].HottestTrappedC,
        PumpStarts = results[0].PumpStarts,
        PumpRunH = results[0].PumpRunH,
        PumpEnergyKWh = results[0].PumpEnergyKWh,
        Winter = results[0],
        Sound = results[1],
        Trials = [.. trials.Select((trial, i) => protection.FeltBy(trial.Events) ? results[2 + i] : null)],
    };

    /// <summary>The house's winter begun in its middle.</summary>
    private static SyntheticWinter MiddleOf(House house, int days)
    {
        SyntheticWinter winter = house.ToWinter();
        int day = winter.FirstDay + Math.Max(0, (days - FaultTrials.Days(days)) / 2);
        return winter with { FirstDay = ((day - 1) % YearDays) + 1 };
    }
}
