using ZoneControl.Plant.Heat;

namespace ZoneControl.Plant.Tests.Heat;

public class WeatherTests
{
    [Fact]
    public void The_same_seed_is_the_same_winter_and_another_seed_another()
    {
        var winter = new SyntheticWinter();
        double[] Hours(long seed) => [.. Enumerable.Range(0, 5040).Select(hour => winter.Make(seed, 210).InHour(hour)).Take(200)];
        Assert.Equal(Hours(5), Hours(5));
        Assert.NotEqual(Hours(5), Hours(6));
    }

    // Kept so that a winter that somebody spoke about stays that winter: what this code gave when it was written.
    [Fact]
    public void A_winter_stays_as_it_was()
    {
        Weather weather = new SyntheticWinter().Make(1, 210);
        Near.Absolute(4.554433397536022, weather.MeanC, 1e-9);
        Near.Absolute(-11.671958735451954, weather.ColdestC, 1e-9);
    }

    // Without noise and snap: mean 9 °C of the year less 9 K on the 20th of January, 3 K of daily swing, coldest at five.
    [Fact]
    public void Without_noise_the_swings_are_what_they_are_said_to_be()
    {
        Weather weather = new SyntheticWinter { FirstDay = 1, NoiseK = 0, SnapK = 0 }.Make(3, 365);
        double[] hours = [.. Enumerable.Range(0, 365 * 24).Select(hour => weather.InHour(hour))];
        Near.Absolute(9, hours.Average(), 0.02);
        int coldest = Array.IndexOf(hours, hours.Min());
        Assert.Equal(5, coldest % 24);
        Assert.InRange(coldest / 24 + 1, 19, 21);
        Near.Absolute(-3, hours.Min(), 0.01);
        Near.Absolute(21, hours.Max(), 0.01);
    }

    [Fact]
    public void Noise_has_its_spread_and_persists_for_its_time()
    {
        double[] noise = [.. Enumerable.Range(1, 60).SelectMany(seed =>
        {
            Weather weather = new SyntheticWinter { MeanC = 0, SeasonSwingK = 0, DaySwingK = 0, SnapK = 0 }.Make(seed, 200);
            return Enumerable.Range(0, 4800).Select(hour => weather.InHour(hour));
        })];
        double variance = noise.Average(k => k * k);
        Near.Relative(3, Math.Sqrt(variance), 0.1);
        double afterThreeDays = Enumerable.Range(0, 60).SelectMany(i => Enumerable.Range(0, 4700).Select(hour =>
            noise[i * 4800 + hour] * noise[i * 4800 + hour + 72])).Average() / variance;
        Near.Absolute(1 / Math.E, afterThreeDays, 0.08);
    }

    [Fact]
    public void A_cold_snap_of_its_depth_comes_in_the_middle_half()
    {
        var calm = new SyntheticWinter { NoiseK = 0, SnapK = 0 };
        for (int seed = 1; seed < 20; seed++)
        {
            Weather without = calm.Make(seed, 210);
            Weather with = (calm with { SnapK = 12 }).Make(seed, 210);
            double[] depth = [.. Enumerable.Range(0, 5040).Select(hour => without.InHour(hour) - with.InHour(hour))];
            Near.Absolute(12, depth.Max(), 0.02);
            Assert.InRange(Array.IndexOf(depth, depth.Max()), 1259, 3781);
            Assert.Equal(120, depth.Count(k => k > 0), 2.0);
        }
    }

    [Fact]
    public void What_is_no_weather_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new Weather("none", []));
        Assert.Contains("hour 1", Assert.Throws<ArgumentException>(() => new Weather("hot", [0, 61])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => new Weather("what", [double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SyntheticWinter().Make(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SyntheticWinter { NoiseDays = 0 }.Make(1, 1));
    }
}
