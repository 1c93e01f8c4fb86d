namespace SweepStats.Statistics;

/// <summary>Effective degrees of freedom of a sum of independent contributions.</summary>
/// <remarks>
/// Formula: ν = (Σu²)² / Σ(u⁴/ν). Assumes independent, nearly normal parts. Source: JCGM 100:2008, G.4.1, equation (G.2b).
/// Returns infinity where every part is zero or known.
/// </remarks>
public static class WelchSatterthwaite
{
    /// <summary>Effective degrees of freedom.</summary>
    public static double DegreesOfFreedom(ReadOnlySpan<Contribution> parts)
    {
        double variance = 0;
        double weight = 0;
        foreach (Contribution part in parts)
        {
            double square = part.StandardUncertainty * part.StandardUncertainty;
            variance += square;
            weight += square * square / part.DegreesOfFreedom;
        }

        return weight > 0 ? variance * variance / weight : double.PositiveInfinity;
    }

    /// <summary>Root sum of squares of the parts.</summary>
    public static double Combined(ReadOnlySpan<Contribution> parts)
    {
        double variance = 0;
        foreach (Contribution part in parts)
        {
            variance += part.StandardUncertainty * part.StandardUncertainty;
        }

        return Math.Sqrt(variance);
    }
}
