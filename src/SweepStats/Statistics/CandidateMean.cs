namespace SweepStats.Statistics;

/// <summary>Mean of one candidate among several, for the question which is the largest. All in one unit.</summary>
/// <param name="Value">The mean, or a bound that it lies above.</param>
/// <param name="StandardError">Of the mean, by what belongs to this candidate alone; not negative.</param>
/// <param name="DegreesOfFreedom">Of the standard error.</param>
/// <param name="Open">Only a bound is known: the mean may be anything above.</param>
public readonly record struct CandidateMean(double Value, double StandardError, double DegreesOfFreedom, bool Open)
{
    /// <summary>The standard error rests on one estimate of scatter that other candidates with this mark rest on too.</summary>
    public bool CommonScatter { get; init; }

    /// <summary>How far the mean moves with one standard error of what moves all candidates, each by its own measure.</summary>
    public double Shared { get; init; }

    /// <summary>How far it may lie to either side for reasons that move all candidates to the same side.</summary>
    public double Shift { get; init; }

    /// <summary>Standard error of the difference to another candidate, with its degrees of freedom.</summary>
    internal (double Error, double DegreesOfFreedom) ErrorOfDifference(CandidateMean other)
    {
        // One estimate counts once: taken for two, it would seem to have up to twice its degrees of freedom.
        ReadOnlySpan<Contribution> parts = CommonScatter && other.CommonScatter
            ? [new(Math.Sqrt((StandardError * StandardError) + (other.StandardError * other.StandardError)),
                Math.Min(DegreesOfFreedom, other.DegreesOfFreedom)), SharedPart(other)]
            : [new(StandardError, DegreesOfFreedom), new(other.StandardError, other.DegreesOfFreedom), SharedPart(other)];
        return (WelchSatterthwaite.Combined(parts), WelchSatterthwaite.DegreesOfFreedom(parts));
    }

    /// <summary>
    /// How far this candidate lies above another, in standard errors of the difference, with its degrees of freedom.
    /// </summary>
    internal (double T, double DegreesOfFreedom) Above(CandidateMean other)
    {
        (double error, double dof) = ErrorOfDifference(other);
        double apart = Value - other.Value - Math.Abs(Shift - other.Shift);
        return (error > 0 ? apart / error : apart > 0 ? double.PositiveInfinity : 0, dof);
    }

    private Contribution SharedPart(CandidateMean other) => new(Math.Abs(Shared - other.Shared), double.PositiveInfinity);
}
