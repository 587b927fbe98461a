using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using ZoneControl.Plant.Reference;

namespace ZoneControl.Plant.Benchmarks;

/// <summary>
/// One run, one table: a solve after one valve moved, by the plant to a relative residual of 1e-9 and by the EPANET engine from
/// npm to its accuracy of 1e-5, cold and warm, in turn on the same machine. The ratios say more than the times.
/// </summary>
internal static class EngineRatios
{
    private const int Turns = 3;

    public static int Print(TextWriter to)
    {
        ValveMoves[] plain = [.. Cases(FrictionLaw.Colebrook)];
        ValveMoves[] engineLaw = [.. Cases(FrictionLaw.SwameeJainDunlop)];
        var best = new Dictionary<string, Times>();
        for (int turn = 0; turn < Turns; turn++)
        {
            if (EngineTimes(plain) is not { } engine)
            {
                to.WriteLine("The engine did not run: node is needed, and the package in the folder that ENGINE_HOME names"
                    + " (npm ci in tests/reference/engine).");
                return 1;
            }

            for (int i = 0; i < plain.Length; i++)
            {
                (double cold, double warm) = engine[plain[i].Name];
                var now = new Times(Microseconds(plain[i]), Microseconds(engineLaw[i]), cold, warm);
                best[plain[i].Name] = best.TryGetValue(plain[i].Name, out Times? before) ? before.Least(now) : now;
            }
        }

        to.WriteLine("Microseconds for a solve after one valve moved; plant under Colebrook and under the engine's own law.");
        to.WriteLine();
        to.WriteLine("| network | plant | same law | engine cold | engine warm | plant/cold | plant/warm | residual |");
        to.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- |");
        bool holds = true;
        for (int i = 0; i < plain.Length; i++)
        {
            Times t = best[plain[i].Name];
            double residual = Math.Max(plain[i].Residual(), engineLaw[i].Residual());
            holds &= Math.Max(t.Plant, t.SameLaw) <= t.Cold / 3 && Math.Max(t.Plant, t.SameLaw) < t.Warm && residual <= 1e-9;
            to.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"| {plain[i].Name} | {t.Plant:F2} | {t.SameLaw:F2} | {t.Cold:F1} | {t.Warm:F1}"
                + $" | {t.Plant / t.Cold:F3} | {t.Plant / t.Warm:F3} | {residual:G2} |"));
        }

        to.WriteLine();
        to.WriteLine(holds
            ? "At most a third of the engine's cold solve and less than its warm one, both laws, residual at most 1e-9: holds."
            : "At most a third of the engine's cold solve and less than its warm one, both laws, residual at most 1e-9: FAILS.");
        return holds ? 0 : 1;
    }

    private static IEnumerable<ValveMoves> Cases(FrictionLaw law) =>
        from loops in ValveMoves.Counts
        from far in (bool[])[true, false]
        select ValveMoves.Of(loops, far, law);

    // The best of many rounds: what the machine's other work adds to a round says nothing about the solver.
    private static double Microseconds(ValveMoves moves)
    {
        double least = double.PositiveInfinity;
        for (int round = 0; round < 20; round++)
        {
            int solves = 0;
            long start = Stopwatch.GetTimestamp();
            TimeSpan spent;
            do
            {
                for (int i = 0; i < 20; i++)
                {
                    moves.Cycle();
                }

                solves += 20 * moves.Openings.Length;
                spent = Stopwatch.GetElapsedTime(start);
            }
            while (spent.TotalMilliseconds < 30);
            least = Math.Min(least, spent.TotalMicroseconds / solves);
        }

        return least;
    }

    private static Dictionary<string, (double Cold, double Warm)>? EngineTimes(ValveMoves[] cases)
    {
        string file = Path.Combine(Path.GetTempPath(), $"engine-times-{Environment.ProcessId}.json");
        File.WriteAllText(file, "{\"cases\":[" + string.Join(",", cases.Select(c =>
            $"{{\"name\":{JsonSerializer.Serialize(c.Name)},\"openings\":{JsonSerializer.Serialize(c.Openings)},"
            + $"\"network\":{c.Definition.ToJson()}}}")) + "]}");
        try
        {
            using var node = Process.Start(new ProcessStartInfo("node")
            {
                ArgumentList = { Path.Combine(ReferenceNetwork.Folder, "time.mjs"), file },
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            string output = node.StandardOutput.ReadToEnd();
            node.WaitForExit();
            return node.ExitCode != 0 ? null : JsonDocument.Parse(output).RootElement.GetProperty("results").EnumerateArray()
                .ToDictionary(
                    r => r.GetProperty("name").GetString()!,
                    r => (r.GetProperty("cold_us").GetDouble(), r.GetProperty("warm_us").GetDouble()));
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
        finally
        {
            File.Delete(file);
        }
    }

    private sealed record Times(double Plant, double SameLaw, double Cold, double Warm)
    {
        public Times Least(Times other) => new(
            Math.Min(Plant, other.Plant), Math.Min(SameLaw, other.SameLaw), Math.Min(Cold, other.Cold),
            Math.Min(Warm, other.Warm));
    }
}
