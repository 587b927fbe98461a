namespace ZoneControl.Plant.Heat;

/// <summary>
/// Water side, warm side and weather of one house together, moved along in virtual time. Whoever drives <see cref="Water"/> calls
/// <see cref="Follow"/> afterwards, so that the warm side sees it.
/// </summary>
public sealed class HeatedHouse
{
    /// <summary>Steps of a stroke at which flows change; see <see cref="PlantModel"/>.</summary>
    public const int DefaultStrokeSteps = 8;

    private readonly Weather _weather;
    private long _weatherMs = Weather.StepMs;
    private FlowPattern _followed = FlowPattern.Still;

    /// <summary>A house at time 0.</summary>
    /// <param name="plant">Its water side.</param>
    /// <param name="heat">Its warm side; a room for each zone.</param>
    /// <param name="weather">The weather.</param>
    /// <param name="looksEverySecond">Make every look of thermostats and source; slower, for comparison.</param>
    /// <param name="strokeSteps">Steps of a stroke, 2 to 31.</param>
    /// <exception cref="ArgumentException">A value cannot be used; the message names it.</exception>
    public HeatedHouse(
        PlantDescription plant,
        HeatDescription heat,
        Weather weather,
        bool looksEverySecond = false,
        int strokeSteps = DefaultStrokeSteps)
    {
        ArgumentNullException.ThrowIfNull(weather);
        if (strokeSteps == 0)
        {
            throw new ArgumentOutOfRangeException(nameof(strokeSteps), strokeSteps, "expected 2 or more steps of a stroke");
        }

        _weather = weather;
        Water = new PlantModel(plant, strokeSteps);
        Heat = new HeatModel(plant, heat, weather.InHour(0), Weather.StepMs) { LooksEverySecond = looksEverySecond };
    }

    /// <summary>The water side.</summary>
    public PlantModel Water { get; }

    /// <summary>The warm side.</summary>
    public HeatModel Heat { get; }

    /// <summary>Time reached, ms.</summary>
    public long NowMs => Water.NowMs;

    /// <summary>The next moment at which something changes by itself: a look, a step of a stroke, the weather; ms.</summary>
    public long NextEventMs => Math.Min(Math.Min(Heat.NextLookMs, Water.NextFlowChangeMs), _weatherMs);

    /// <summary>
    /// Moves time on, ms; at most to <see cref="NextEventMs"/>, so that whoever reads contacts sees each change when it comes.
    /// </summary>
    /// <returns>Whether a thermostat changed its mind.</returns>
    public bool AdvanceTo(long ms)
    {
        bool changed = Heat.AdvanceTo(ms);
        Water.AdvanceTo(ms);
        Follow();
        if (_weatherMs <= ms)
        {
            long hour = _weatherMs / Weather.StepMs;
            _weatherMs += Weather.StepMs;
            Heat.SetOutdoor(_weather.InHour(hour), _weatherMs);
        }

        return changed;
    }

    /// <summary>Takes over what <see cref="Water"/> was driven to at this moment.</summary>
    public void Follow()
    {
        if (!ReferenceEquals(Water.Pattern, _followed))
        {
            _followed = Water.Pattern;
            Heat.SetFlows(_followed);
        }

        Heat.SetHeatAsked(Water.HeatAsked);
    }
}
