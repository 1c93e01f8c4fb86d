using SweepStats.Statistics;

namespace SweepStats.Repeats;

/// <summary>How repeats of one kind scatter where they go together in the order taken. Immutable.</summary>
internal sealed class LastingScatter
{
    private readonly SerialScatter _whole, _level;

    private LastingScatter(SerialScatter whole, SerialScatter rest) => (_whole, _level) = (whole, whole.With(rest));

    /// <summary>Repeats in a series that its size was seen with.</summary>
    public required int SeenCount { get; init; }

    /// <summary>What so many repeats are worth; null for one, which shows no scatter.</summary>
    public RepeatWorth? Worth(int count) => count < 2 ? null : RepeatWorth.Of(_level.For(count), _whole.For(count));

    /// <summary>Covariance of so many repeats at a frequency.</summary>
    public SerialCovariance Level(int count) => _level.For(count);

    /// <param name="series">Series that tell how much scatters; at least one.</param>
    /// <param name="whole">How likely models are by what all frequencies share.</param>
    /// <param name="rest">How likely models are by the rest.</param>
    public static LastingScatter Of(IReadOnlyList<RepeatSeries> series, SerialLikelihood whole, SerialLikelihood rest)
    {
        double freedom = series.Sum(s => s.Count - 1.0);
        int count = (int)Math.Round(series.Sum(s => (s.Count - 1) * s.Count) / freedom);
        double Variance(Func<RepeatSeries, SerialRows> part) => series.Sum(s => (s.Count - 1) * part(s).Variance) / freedom;
        return new LastingScatter(
            SerialScatter.Of(whole.Weights(count), Variance(s => s.Whole), count),
            SerialScatter.Of(rest.Weights(count), Variance(s => s.Rest), count))
        {
            SeenCount = count,
        };
    }
}
