namespace ZoneControl.Plant;

/// <summary>
/// Darcy friction of a full round pipe. Laminar flow (Re up to 2,000) is 64/Re, after Hagen and Poiseuille; above 4,000 the
/// chosen law holds; between them a cubic that meets both ends in value and slope. In every law the head loss, which goes
/// with f·Re², rises with flow, while the factor itself may dip.
/// </summary>
/// <remarks>
/// Between 2,000 and 4,000 real flow changes to and fro between two states, and no single factor is right; what matters
/// here is that the join has one answer for each head. The EPANET law joins the factor itself (J. E. Dunlop, 1991, quoted in
/// appendix D of the EPANET 2 manual); written with the two ends' values and slopes it is the plain cubic Hermite
/// polynomial. The Colebrook law joins f·Re² in the same way, where the condition of F. N. Fritsch and R. E. Carlson,
/// "Monotone piecewise cubic interpolation", SIAM J. Numer. Anal. 17 (1980), holds for every roughness accepted.
/// </remarks>
public sealed class Friction
{
    /// <summary>Reynolds number up to which flow is laminar.</summary>
    public const double LaminarEnd = 2000;

    /// <summary>Reynolds number from which flow is turbulent.</summary>
    public const double TurbulentStart = 4000;

    /// <summary>Largest ratio of roughness to inside diameter accepted: where the diagram of L. F. Moody (1944) ends.</summary>
    public const double RoughestRelative = 0.05;

    private const double TwoOverLn10 = 0.86858896380650366;

    private readonly FrictionLaw _law;
    private readonly double _startTerm;

    /// <summary>Friction of a pipe.</summary>
    /// <param name="law">Law of turbulent flow and of the join to laminar.</param>
    /// <param name="relativeRoughness">Roughness over inside diameter, 0 to 0.05.</param>
    /// <exception cref="ArgumentOutOfRangeException">The roughness is outside that range.</exception>
    public Friction(FrictionLaw law, double relativeRoughness)
    {
        if (!(relativeRoughness is >= 0 and <= RoughestRelative))
        {
            throw new ArgumentOutOfRangeException(
                nameof(relativeRoughness), relativeRoughness, "roughness over inside diameter is expected between 0 and 0.05");
        }

        _law = law;
        RoughTerm = relativeRoughness / 3.7;
        _startTerm = Math.Pow(RoughTerm, 1.11);
        double turbulent = Turbulent(TurbulentStart, out double turbulentSlope);
        RootAtStart = Math.Sqrt(turbulent);
        Join = law == FrictionLaw.SwameeJainDunlop
            ? new HermiteCubic(
                LaminarEnd, 64 / LaminarEnd, -64 / (LaminarEnd * LaminarEnd), TurbulentStart, turbulent, turbulentSlope)
            : new HermiteCubic(
                LaminarEnd, 64 * LaminarEnd, 64,
                TurbulentStart, Scaled(TurbulentStart, turbulent, turbulentSlope, out double slope), slope);
    }

    /// <summary>Relative roughness over 3.7, as it stands in both laws.</summary>
    internal double RoughTerm { get; }

    /// <summary>√f at Re 4,000.</summary>
    internal double RootAtStart { get; }

    /// <summary>The join from Re 2,000 to 4,000: of f·Re², with the EPANET engine's law of f.</summary>
    internal HermiteCubic Join { get; }

    /// <summary>Darcy friction factor f.</summary>
    /// <param name="reynolds">Reynolds number; more than 0.</param>
    public double Factor(double reynolds) => ScaledLoss(reynolds, out _) / (reynolds * reynolds);

    /// <summary>
    /// f·Re², to which head loss is proportional (h = f·Re²·ν²L/(2gD³)); 0 at 0, rising, with a continuous slope.
    /// </summary>
    /// <param name="reynolds">Reynolds number; 0 or more.</param>
    /// <param name="slope">Its derivative by Reynolds number.</param>
    public double ScaledLoss(double reynolds, out double slope)
    {
        if (reynolds <= LaminarEnd)
        {
            slope = 64;
            return 64 * reynolds;
        }

        if (reynolds >= TurbulentStart)
        {
            double f = Turbulent(reynolds, out double fSlope);
            return Scaled(reynolds, f, fSlope, out slope);
        }

        double joined = Join.At(reynolds, out double joinedSlope);
        if (_law == FrictionLaw.SwameeJainDunlop)
        {
            return Scaled(reynolds, joined, joinedSlope, out slope);
        }

        slope = joinedSlope;
        return joined;
    }

    private static double Scaled(double reynolds, double factor, double factorSlope, out double slope)
    {
        slope = reynolds * (2 * factor + reynolds * factorSlope);
        return factor * reynolds * reynolds;
    }

    private double Turbulent(double reynolds, out double slope) =>
        _law == FrictionLaw.SwameeJainDunlop ? SwameeJain(reynolds, out slope) : Colebrook(reynolds, out slope);

    /// <summary>P. K. Swamee and A. K. Jain (1976): f = 0.25/[log10(e/3.7D + 5.74/Re^0.9)]².</summary>
    private double SwameeJain(double reynolds, out double slope)
    {
        double smoothTerm = 5.74 * Math.Pow(reynolds, -0.9);
        double sum = RoughTerm + smoothTerm;
        double x = -TwoOverLn10 * Math.Log(sum);
        double xSlope = TwoOverLn10 * 0.9 * smoothTerm / (reynolds * sum);
        slope = -2 * xSlope / (x * x * x);
        return 1 / (x * x);
    }

    /// <summary>
    /// C. F. Colebrook (1939): 1/√f = −2·log10(e/3.7D + 2.51/(Re√f)), solved for x = 1/√f by three Newton steps from the
    /// explicit formula of S. E. Haaland (1983). That start is within 2 % and each step squares the error, with a small
    /// factor, so three reach the last digits; a test holds the residual.
    /// </summary>
    private double Colebrook(double reynolds, out double slope)
    {
        double b = 2.51 / reynolds;
        double x = -0.9 * TwoOverLn10 * Math.Log(_startTerm + 6.9 / reynolds);
        double sum = RoughTerm + b * x;
        for (int i = 0; i < 3; i++)
        {
            x -= (x + TwoOverLn10 * Math.Log(sum)) / (1 + TwoOverLn10 * b / sum);
            sum = RoughTerm + b * x;
        }

        double c = TwoOverLn10 * b / sum;
        double xSlope = c * x / (reynolds * (1 + c));
        slope = -2 * xSlope / (x * x * x);
        return 1 / (x * x);
    }
}
