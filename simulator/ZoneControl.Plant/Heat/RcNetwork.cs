namespace ZoneControl.Plant.Heat;

/// <summary>
/// Bodies of one temperature each, joined by conductances to each other and to fixed temperatures around them:
/// C·dT/dt = −K·T + b. K is symmetric, so there are real time constants and orthogonal modes, and a step of any length is exact
/// (the same as the matrix exponential). <see cref="RcRun"/> follows one.
/// </summary>
public sealed class RcNetwork
{
    /// <summary>A network.</summary>
    /// <param name="capacities">Heat capacity of each body, J/K; more than 0.</param>
    /// <param name="links">Conductances between two bodies, W/K; 0 or more.</param>
    /// <param name="outward">Conductance of each body to fixed temperatures, all together, W/K; 0 or more.</param>
    /// <exception cref="ArgumentException">A value is out of range, or some body is joined to no fixed temperature at all.</exception>
    public RcNetwork(
        IReadOnlyList<double> capacities, IReadOnlyList<(int From, int To, double WPerK)> links, IReadOnlyList<double> outward)
    {
        ArgumentNullException.ThrowIfNull(capacities);
        ArgumentNullException.ThrowIfNull(links);
        ArgumentNullException.ThrowIfNull(outward);
        int n = Count = capacities.Count;
        if (n == 0 || outward.Count != n)
        {
            throw new ArgumentException($"{n} bodies and {outward.Count} outward conductances; expected one for each, at least one");
        }

        double[] k = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            Demand(capacities[i] > 0 && double.IsFinite(capacities[i]), $"capacity {i} is {capacities[i]}; expected more than 0 J/K");
            Demand(outward[i] >= 0 && double.IsFinite(outward[i]), $"outward {i} is {outward[i]}; expected at least 0 W/K");
            k[i * n + i] = outward[i];
        }

        foreach ((int from, int to, double conductance) in links)
        {
            Demand(from != to && from >= 0 && to >= 0 && from < n && to < n, $"link {from} to {to}: expected two of {n} bodies");
            Demand(conductance >= 0 && double.IsFinite(conductance), $"link {from} to {to} is {conductance}; expected at least 0 W/K");
            k[from * n + from] += conductance;
            k[to * n + to] += conductance;
            k[from * n + to] -= conductance;
            k[to * n + from] -= conductance;
        }

        double[] root = [.. capacities.Select(Math.Sqrt)];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
            {
                k[i * n + j] /= root[i] * root[j];
            }
        }

        double[] vectors = SymmetricEigen.Solve(k, n);
        PerSecond = [.. Enumerable.Range(0, n).Select(i => k[i * n + i])];
        double fastest = PerSecond.Max();
        Demand(PerSecond.All(rate => rate > 1e-15 * fastest), "a body has no way to any fixed temperature; expected one for each");
        ToModes = new double[n * n];
        FromModes = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            for (int mode = 0; mode < n; mode++)
            {
                ToModes[mode * n + i] = vectors[i * n + mode] * root[i];
                FromModes[i * n + mode] = vectors[i * n + mode] / root[i];
            }
        }
    }

    /// <summary>How many bodies.</summary>
    public int Count { get; }

    /// <summary>Rate at which each mode fades, 1/s: the inverse of its time constant.</summary>
    public IReadOnlyList<double> FadingPerS => PerSecond;

    internal double[] PerSecond { get; }

    /// <summary>By rows of modes: amplitude from temperatures.</summary>
    internal double[] ToModes { get; }

    /// <summary>By rows of bodies: temperature from amplitudes; turned, heat into a mode from heat into bodies.</summary>
    internal double[] FromModes { get; }

    private static void Demand(bool holds, string message)
    {
        if (!holds)
        {
            throw new ArgumentException(message);
        }
    }
}
