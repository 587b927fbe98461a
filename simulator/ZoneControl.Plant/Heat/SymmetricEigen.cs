namespace ZoneControl.Plant.Heat;

/// <summary>
/// Eigenvalues and orthonormal eigenvectors of a small symmetric matrix: Householder reflections to three diagonals, then
/// implicit QL steps with Wilkinson's shift (Golub and Van Loan, Matrix Computations, 8.3; from memory).
/// </summary>
/// <remarks>Eigenvalues are good to rounding of the largest one, some 1e-16 of it.</remarks>
internal static class SymmetricEigen
{
    private const int MostSteps = 60; // for one eigenvalue; two or three are usual
    private const double Rounding = 1.2e-16;

    /// <summary>Turns <paramref name="a"/> (n·n, by rows) into its eigenvalues on the diagonal; gives vectors by columns.</summary>
    public static double[] Solve(double[] a, int n)
    {
        double[] rows = new double[n * n]; // eigenvectors as rows, so that a rotation runs along memory
        for (int i = 0; i < n; i++)
        {
            rows[i * n + i] = 1;
        }

        ToThreeDiagonals(a, rows, n);
        double[] values = new double[n];
        double[] beside = new double[n]; // beside[i] joins i and i + 1
        for (int i = 0; i < n; i++)
        {
            values[i] = a[i * n + i];
            beside[i] = i + 1 < n ? a[(i + 1) * n + i] : 0;
        }

        for (int first = 0; first < n; first++)
        {
            int steps = 0;
            for (int last = Block(values, beside, first); last > first && steps < MostSteps; last = Block(values, beside, first))
            {
                Step(values, beside, rows, first, last);
                steps++;
            }
        }

        double[] vectors = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            a[i * n + i] = values[i];
            for (int k = 0; k < n; k++)
            {
                vectors[k * n + i] = rows[i * n + k];
            }
        }

        return vectors;
    }

    /// <summary>Reflects column after column, so that below the diagonal only one element of each is left.</summary>
    private static void ToThreeDiagonals(double[] a, double[] rows, int n)
    {
        double[] v = new double[n];
        double[] w = new double[n];
        for (int column = 0; column + 2 < n; column++)
        {
            int from = column + 1;
            double square = 0;
            for (int i = from; i < n; i++)
            {
                v[i] = a[i * n + column];
                square += v[i] * v[i];
            }

            if (square - v[from] * v[from] == 0)
            {
                continue; // nothing below to remove
            }

            v[from] += Math.CopySign(Math.Sqrt(square), v[from]);
            double length = 0;
            for (int i = from; i < n; i++)
            {
                length += v[i] * v[i];
            }

            ReflectMatrix(a, v, w, from, n, 2 / length);
            a[from * n + column] = a[column * n + from] = -Math.CopySign(Math.Sqrt(square), v[from]);
            ReflectRows(rows, v, from, n, 2 / length);
        }
    }

    /// <summary>A := H·A·H on the part of it that begins at <paramref name="from"/>, with H = 1 − scale·v·vᵀ.</summary>
    private static void ReflectMatrix(double[] a, double[] v, double[] w, int from, int n, double scale)
    {
        double along = 0;
        for (int i = from; i < n; i++)
        {
            double sum = 0;
            for (int j = from; j < n; j++)
            {
                sum += a[i * n + j] * v[j];
            }

            w[i] = scale * sum;
            along += w[i] * v[i];
        }

        for (int i = from; i < n; i++)
        {
            w[i] -= scale / 2 * along * v[i];
        }

        for (int i = from; i < n; i++)
        {
            for (int j = from; j < n; j++)
            {
                a[i * n + j] -= v[i] * w[j] + w[i] * v[j];
            }
        }
    }

    /// <summary>The reflections so far, turned, reflected once more.</summary>
    private static void ReflectRows(double[] rows, double[] v, int from, int n, double scale)
    {
        for (int column = 0; column < n; column++)
        {
            double sum = 0;
            for (int i = from; i < n; i++)
            {
                sum += v[i] * rows[i * n + column];
            }

            sum *= scale;
            for (int i = from; i < n; i++)
            {
                rows[i * n + column] -= sum * v[i];
            }
        }
    }

    /// <summary>The last of those that <paramref name="first"/> is still joined with.</summary>
    private static int Block(double[] values, double[] beside, int first)
    {
        int last = first;
        while (last + 1 < values.Length
            && Math.Abs(beside[last]) > Rounding * (Math.Abs(values[last]) + Math.Abs(values[last + 1])))
        {
            last++;
        }

        return last;
    }

    /// <summary>One implicit QL step on a block: a shift near the eigenvalue at its beginning, chased upwards by rotations.</summary>
    private static void Step(double[] values, double[] beside, double[] rows, int first, int last)
    {
        int n = values.Length;
        double half = (values[first + 1] - values[first]) / (2 * beside[first]);
        double shift = values[first] - beside[first] / (half + Math.CopySign(Math.Sqrt(half * half + 1), half));
        double chased = values[last] - shift;
        double sine = 1;
        double cosine = 1;
        double shed = 0;
        for (int i = last - 1; i >= first; i--)
        {
            double across = sine * beside[i];
            double along = cosine * beside[i];
            double radius = Math.Sqrt(across * across + chased * chased);
            beside[i + 1] = radius;
            if (radius == 0)
            {
                // The block has come apart by itself.
                values[i + 1] -= shed;
                beside[last] = 0;
                return;
            }

            sine = across / radius;
            cosine = chased / radius;
            double above = values[i + 1] - shed;
            double turned = (values[i] - above) * sine + 2 * cosine * along;
            shed = sine * turned;
            values[i + 1] = above + shed;
            chased = cosine * turned - along;
            Rotate(rows.AsSpan(i * n, n), rows.AsSpan((i + 1) * n, n), sine, cosine);
        }

        values[first] -= shed;
        beside[first] = chased;
        beside[last] = 0;
    }

    private static void Rotate(Span<double> lower, Span<double> upper, double sine, double cosine)
    {
        for (int k = 0; k < lower.Length; k++)
        {
            double high = upper[k];
            upper[k] = sine * lower[k] + cosine * high;
            lower[k] = cosine * lower[k] - sine * high;
        }
    }
}
