using SweepStats.Statistics;

namespace SweepStats.Repeats;

/// <summary>What repeats that go together are worth, beside as many independent ones. Immutable.</summary>
/// <remarks>
/// The variance of their mean is the factor times s²/n, s² their own sample variance, which shows too little of what lasts; and
/// s² has fewer degrees of freedom than n − 1. What all frequencies of a sweep share may last longer or shorter than the rest: a
/// figure over the band takes the larger of the two factors.
/// </remarks>
public sealed record RepeatWorth
{
    private RepeatWorth()
    {
    }

    /// <summary>How many repeats.</summary>
    public required int Count { get; init; }

    /// <summary>As many independent ones would have a mean as well known.</summary>
    public required double Independent { get; init; }

    /// <summary>Correlation of one repeat with the next.</summary>
    public required double Lag1 { get; init; }

    /// <summary>Variance of the mean at a frequency over s²/n.</summary>
    public required double Factor { get; init; }

    /// <summary>Degrees of freedom of s² at a frequency.</summary>
    public required double DegreesOfFreedom { get; init; }

    /// <summary>Variance of the mean of a figure over the band over s²/n.</summary>
    public required double FigureFactor { get; init; }

    /// <summary>Degrees of freedom of s² of such a figure.</summary>
    public required double FigureDegreesOfFreedom { get; init; }

    /// <summary>
    /// How much wider an interval of their mean is than one of as many independent repeats with the same scatter, at 95 %.
    /// </summary>
    public double Widening =>
        Math.Sqrt(Factor) * StudentT.Quantile(0.975, DegreesOfFreedom) / StudentT.Quantile(0.975, Count - 1);

    /// <summary>
    /// Error of the mean of a figure over the band, where it was taken from the scatter of independent repeats.
    /// </summary>
    internal Contribution OfFigure(Contribution independent) =>
        new(Math.Sqrt(FigureFactor) * independent.StandardUncertainty, FigureDegreesOfFreedom);

    internal static RepeatWorth Of(SerialCovariance level, SerialCovariance whole)
    {
        SerialCovariance figure = Of(whole) > Of(level) ? whole : level;
        return new RepeatWorth
        {
            Count = level.Count,
            Independent = level.Worth,
            Lag1 = level.Lag1,
            Factor = Of(level),
            DegreesOfFreedom = level.DegreesOfFreedom(),
            FigureFactor = Of(figure),
            FigureDegreesOfFreedom = figure.DegreesOfFreedom(),
        };
    }

    private static double Of(SerialCovariance scatter) => scatter.VarianceOfMean * scatter.Count / scatter.SampleVariance;
}
