namespace ZoneControl.Plant.Heat;

/// <summary>
/// Eigenvalues and orthonormal eigenvectors of a small symmetric matrix by cyclic Jacobi rotations (Golub and Van Loan,
/// Matrix Computations, 8.5; from memory). Slow for large ones, and accurate to the last digits.
/// </summary>
internal static class SymmetricEigen
{
    private const int MostSweeps = 60;
    private const double Negligible = 1e-16; // of what stands on the diagonal: relative accuracy for small eigenvalues too

    /// <summary>Turns <paramref name="a"/> (n·n, by rows) into its eigenvalues on the diagonal; gives vectors by columns.</summary>
    public static double[] Solve(double[] a, int n)
    {
        double[] vectors = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            vectors[i * n + i] = 1;
        }

        for (int sweep = 0; sweep < MostSweeps; sweep++)
        {
            bool turned = false;
            for (int p = 0; p < n - 1; p++)
            {
                for (int q = p + 1; q < n; q++)
                {
                    double off = a[p * n + q];
                    if (Math.Abs(off) <= Negligible * Math.Sqrt(Math.Abs(a[p * n + p] * a[q * n + q])))
                    {
                        continue;
                    }

                    Turn(a, vectors, n, p, q, off);
                    turned = true;
                }
            }

            if (!turned)
            {
                break;
            }
        }

        return vectors;
    }

    private static void Turn(double[] a, double[] vectors, int n, int p, int q, double off)
    {
        double theta = (a[q * n + q] - a[p * n + p]) / (2 * off);
        double t = Math.CopySign(1, theta) / (Math.Abs(theta) + Math.Sqrt(theta * theta + 1));
        double c = 1 / Math.Sqrt(t * t + 1);
        double s = t * c;
        for (int k = 0; k < n; k++)
        {
            double kp = a[k * n + p];
            double kq = a[k * n + q];
            a[k * n + p] = c * kp - s * kq;
            a[k * n + q] = s * kp + c * kq;
        }

        for (int k = 0; k < n; k++)
        {
            double pk = a[p * n + k];
            double qk = a[q * n + k];
            a[p * n + k] = c * pk - s * qk;
            a[q * n + k] = s * pk + c * qk;
            double vp = vectors[k * n + p];
            double vq = vectors[k * n + q];
            vectors[k * n + p] = c * vp - s * vq;
            vectors[k * n + q] = s * vp + c * vq;
        }

        a[p * n + q] = a[q * n + p] = 0;
    }
}
