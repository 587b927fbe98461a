using System.Text.Json;
using ZoneControl.Plant.Reference;

namespace ZoneControl.Plant.Tests.Heat;

/// <summary>The forced week of tests/reference/heat/week.py against SciPy's LSODA.</summary>
public class ForcedWeekTests
{
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Twelve_rooms_follow_LSODA_through_a_week_of_forced_switching(bool eachMinute)
    {
        JsonElement reference = RcNetworkTests.Reference("week.json");
        int every = reference.GetProperty("everyMinutes").GetInt32();
        double[][] expected = [.. reference.GetProperty("celsius").EnumerateArray().Select(RcNetworkTests.Numbers)];
        var week = new ForcedWeek(eachMinute);
        int compared = 0;
        for (int minute = 0; minute < ForcedWeek.Minutes; minute++)
        {
            week.Minute(minute);
            if ((minute + 1) % every != 0)
            {
                continue;
            }

            double[] celsius = week.Celsius(minute + 1);
            for (int i = 0; i < celsius.Length; i++)
            {
                // LSODA's own tolerance, 1e-10 a step, adds up over 10,080 restarts.
                Near.Absolute(expected[compared][i], celsius[i], 1e-6, $"body {i} after minute {minute + 1}");
            }

            compared++;
        }

        Assert.Equal(28, compared);
    }
}
