namespace SweepStats.Statistics;

/// <summary>How repeats scatter that go together in the order taken, for any number of them. Immutable.</summary>
/// <remarks>Covariances of several models, each scaled to the sample variance it was seen with, weighed and added up. Unit:
/// squared unit of the values.</remarks>
internal sealed class SerialScatter
{
    private readonly ImmutableArray<double> _sizes;

    private SerialScatter(ImmutableArray<double> sizes) => _sizes = sizes;

    /// <summary>Scatter of given size that goes together as the weighed models say.</summary>
    /// <param name="weights">Weight of each of <see cref="SerialLikelihood.Models"/>.</param>
    /// <param name="variance">Sample variance that was seen.</param>
    /// <param name="count">Repeats that it was seen with, at least 2.</param>
    public static SerialScatter Of(double[] weights, double variance, int count) => new(
    [
        // A sample variance shows too little of what lasts, the less the longer it lasts.
        .. SerialLikelihood.Models.Select((model, i) => weights[i] * variance / model.Of(count).SampleVariance),
    ]);

    /// <summary>Both together.</summary>
    public SerialScatter With(SerialScatter other) => new([.. _sizes.Zip(other._sizes, (a, b) => a + b)]);

    /// <summary>Covariance of so many repeats.</summary>
    public SerialCovariance For(int count)
    {
        var lags = new double[count];
        for (int l = 0; l < count; l++)
        {
            for (int i = 0; i < _sizes.Length; i++)
            {
                lags[l] += _sizes[i] * SerialLikelihood.Models[i].At(l);
            }
        }

        return new SerialCovariance(lags);
    }
}
