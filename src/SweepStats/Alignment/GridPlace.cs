namespace SweepStats.Alignment;

/// <summary>Where a frequency lies among those of a sweep.</summary>
/// <param name="Below">Place of the reading at it, or of the next one below.</param>
/// <param name="Share">How far it lies on the way to the next reading above: 0 to below 1.</param>
/// <param name="IsMeasured">Whether the sweep has a reading at the frequency itself.</param>
internal readonly record struct GridPlace(int Below, double Share, bool IsMeasured)
{
    /// <summary>A reading at the frequency itself.</summary>
    public static GridPlace At(int place) => new(place, 0, true);

    /// <summary>The value there, on the straight line between its neighbours.</summary>
    public double Of(ReadOnlySpan<double> values) =>
        Share == 0 ? values[Below] : values[Below] + (Share * (values[Below + 1] - values[Below]));
}
