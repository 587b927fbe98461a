using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;
using ZoneControl.Bench.Winters;
using ZoneControl.Plant.Heat;
using ZoneControl.Plant.Reference;

namespace ZoneControl.Plant.Benchmarks;

/// <summary>
/// One run, one table: thermal steps of the forced week against SciPy's LSODA and a NumPy exponential integrator, results compared
/// too; then whole seasons, skipping against stepping, allocation, and growth with zones and loops. Ratios say more than times.
/// </summary>
internal static class HeatRatios
{
    private const int SeasonDays = 210;
    private const int SteppedDays = 7;

    public static int Print(TextWriter to)
    {
        bool holds = Thermal(to);
        holds &= Seasons(to);
        Growth(to);
        return holds ? 0 : 1;
    }

    private static bool Thermal(TextWriter to)
    {
        double each = DaysPerS(eachMinute: true);
        double closed = DaysPerS(eachMinute: false);
        to.WriteLine("Twelve rooms of two nodes, one-minute steps, forced switching; simulated days a second.");
        to.WriteLine();
        to.WriteLine("| integrator | days/s | plant, each minute anew | plant, only where something changes | largest difference |");
        to.WriteLine("| --- | --- | --- | --- | --- |");
        if (Python() is not { } python)
        {
            to.WriteLine($"| (python3 with SciPy did not run) | | {each:#,0} days/s | {closed:#,0} days/s | |");
            to.WriteLine();
            return false;
        }

        double lsoda = python.GetProperty("lsodaDaysPerS").GetDouble();
        double numpy = python.GetProperty("numpyDaysPerS").GetDouble();
        double fromLsoda = Difference(24 * 60, python.GetProperty("lsodaDayEnd"));
        double fromNumpy = Difference(ForcedWeek.Minutes, python.GetProperty("numpyWeekEnd"));
        Row("LSODA (rtol 1e-6), a day", lsoda, fromLsoda);
        Row("NumPy exponential, the week", numpy, fromNumpy);
        to.WriteLine();
        return fromLsoda < 1e-3 && fromNumpy < 1e-8;

        void Row(string name, double rate, double difference) => to.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {rate:0.0} | {each / rate:#,0} times | {closed / rate:#,0} times | {difference:0.0E+0} K |"));
    }

    private static bool Seasons(TextWriter to)
    {
        House house = Demo();
        double cold = Seconds(house, SeasonDays, everyScan: false, out _);
        double best = Enumerable.Range(0, 5).Min(round => Seconds(house, SeasonDays, everyScan: false, out _));
        long before = GC.GetAllocatedBytesForCurrentThread();
        TimeSpan busy = Process.GetCurrentProcess().TotalProcessorTime;
        Seconds(house, SeasonDays, everyScan: false, out SeasonResult season);
        TimeSpan spent = Process.GetCurrentProcess().TotalProcessorTime - busy;
        double bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / (SeasonDays * 24.0);
        double skipped = Enumerable.Range(0, 5).Min(round => Seconds(house, SteppedDays, everyScan: false, out _));
        double stepped = Seconds(house, SteppedDays, everyScan: true, out _);
        to.WriteLine("The demo house.");
        to.WriteLine();
        to.WriteLine("| what | figure |");
        to.WriteLine("| --- | --- |");
        Row("a season of 210 days, first run, compiling as it goes", $"{cold:0.00} s");
        Row("a season of 210 days, best of five", $"{best:0.00} s");
        Row("the same in processor time, which other work on the machine does not stretch", $"{spent.TotalSeconds:0.00} s");
        Row("simulated days a second", $"{SeasonDays / best:#,0}");
        Row($"{SteppedDays} days, stepping every scan over skipping", $"{stepped / skipped:#,0} times ({stepped:0.00} s over {skipped * 1000:0.0} ms)");
        Row("allocation a simulated hour, flow patterns and set-up included", $"{bytes:#,0} bytes");
        Row("scans a season", $"{season.Scans:#,0}");
        Row("energy balance over the season", $"{Math.Abs(season.Heat.BalanceError):0.0E+0}");
        to.WriteLine();
        bool holds = best < 1 && Math.Abs(season.Heat.BalanceError) < 1e-3;
        to.WriteLine(holds ? "A season in under a second, balance within 0.1 %: holds." : "A season in under a second, balance within 0.1 %: FAILS.");
        to.WriteLine();
        return holds;

        void Row(string what, string figure) => to.WriteLine($"| {what} | {figure} |");
    }

    private static void Growth(TextWriter to)
    {
        to.WriteLine("Growth: 60 days, two loops a zone; then eight zones.");
        to.WriteLine();
        to.WriteLine("| zones | loops | ms | µs a simulated hour and zone |");
        to.WriteLine("| --- | --- | --- | --- |");
        foreach ((int zones, int loops) in ((int, int)[])[(1, 2), (2, 4), (4, 8), (8, 16), (16, 32), (8, 32), (8, 64)])
        {
            House house = GrownHouse.Of(zones, loops);
            double s = Enumerable.Range(0, 4).Min(round => Seconds(house, 60, everyScan: false, out _));
            to.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {zones} | {loops} | {s * 1000:0} | {s * 1e6 / (60 * 24 * zones):0.0} |"));
        }
    }

    internal static House Demo() =>
        HouseFile.Read(Path.Combine(AppContext.BaseDirectory, "examples", "pottery.house.toml")).House!;

    private static double Seconds(House house, int days, bool everyScan, out SeasonResult result)
    {
        Weather weather = house.ToWinter().Make(1, days);
        long start = Stopwatch.GetTimestamp();
        result = SeasonRunner.Run(
            house, weather, settings => new LibraryController(settings), new SeasonOptions { Days = days, EveryScan = everyScan });
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static double DaysPerS(bool eachMinute)
    {
        double best = 0;
        for (int round = 0; round < 10; round++)
        {
            var week = new ForcedWeek(eachMinute);
            double sum = 0;
            long start = Stopwatch.GetTimestamp();
            for (int minute = 0; minute < ForcedWeek.Minutes; minute++)
            {
                week.Minute(minute);
                for (int room = 0; room < ForcedWeek.Rooms; room++)
                {
                    sum += week.RoomC(room, minute + 1);
                }
            }

            best = Math.Max(best, 7 / Stopwatch.GetElapsedTime(start).TotalSeconds);
            if (!double.IsFinite(sum))
            {
                throw new InvalidOperationException("the week is no number");
            }
        }

        return best;
    }

    private static double Difference(int minutes, JsonElement expected)
    {
        var week = new ForcedWeek(eachMinute: true);
        for (int minute = 0; minute < minutes; minute++)
        {
            week.Minute(minute);
        }

        return week.Celsius(minutes).Zip(expected.EnumerateArray(), (mine, theirs) => Math.Abs(mine - theirs.GetDouble())).Max();
    }

    private static JsonElement? Python()
    {
        try
        {
            using var python = Process.Start(new ProcessStartInfo(Environment.GetEnvironmentVariable("PYTHON") ?? "python3")
            {
                ArgumentList = { Path.Combine(AppContext.BaseDirectory, "reference", "heat", "week.py"), "time" },
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            string output = python.StandardOutput.ReadToEnd();
            python.WaitForExit();
            return python.ExitCode == 0 ? JsonDocument.Parse(output).RootElement : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
