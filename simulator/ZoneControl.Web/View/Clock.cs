namespace ZoneControl.Web.View;

/// <summary>How moments are shown: as time of day, or as time since the start.</summary>
/// <param name="Start">Time of day at 0 ms; null shows time since the start.</param>
public sealed record Clock(TimeOnly? Start)
{
    private const long DayMs = 86_400_000;

    /// <summary>What the moments are, for a table's head: "time of day" or "since start".</summary>
    public string Heading => Start is null ? "since start" : "time of day";

    /// <summary>A moment to the minute: "06:40", on later days "day 2 06:40"; since start "0:40".</summary>
    public string Minutes(long ms) => Show(ms, seconds: false);

    /// <summary>A moment to the second: "06:40:12"; tenths only where there are any.</summary>
    public string Seconds(long ms) => Show(ms, seconds: true);

    /// <summary>ms after which the first full minute of the clock comes, so that ticks stand at round times.</summary>
    public long OffsetMs => Start is { } start ? start.ToTimeSpan().Ticks / TimeSpan.TicksPerMillisecond : 0;

    private string Show(long ms, bool seconds)
    {
        long at = ms + OffsetMs;
        long day = at / DayMs;
        long rest = Start is null ? at : at % DayMs;
        string hours = Start is null ? $"{rest / 3_600_000}" : $"{rest / 3_600_000:00}";
        string text = $"{hours}:{rest / 60_000 % 60:00}";
        if (seconds)
            text += $":{rest / 1000 % 60:00}";
        if (seconds && rest % 1000 != 0)
            text += $".{rest % 1000 / 100}";
        return Start is not null && day > 0 ? $"day {day + 1} {text}" : text;
    }
}
