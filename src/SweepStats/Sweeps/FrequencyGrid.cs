using SweepStats.Quantities;

namespace SweepStats.Sweeps;

/// <summary>
/// The frequencies of a sweep: finite, not negative, rising at every point. Who holds one need not check again. Immutable.
/// </summary>
public sealed class FrequencyGrid : IEquatable<FrequencyGrid>
{
    private readonly ImmutableArray<double> _hertz;

    /// <summary>Creates a grid.</summary>
    /// <param name="hertz">Frequencies in Hz.</param>
    /// <exception cref="ArgumentException">
    /// No points, or a point that is not a rising frequency; the message names the point.
    /// </exception>
    public FrequencyGrid(ImmutableArray<double> hertz)
    {
        if (hertz.IsDefaultOrEmpty)
        {
            throw new ArgumentException("A grid needs at least one frequency.", nameof(hertz));
        }

        for (int i = 0; i < hertz.Length; i++)
        {
            if (!double.IsFinite(hertz[i]) || hertz[i] < 0)
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"Point {i + 1} is {hertz[i]} Hz, which is not a frequency."), nameof(hertz));
            }

            if (i > 0 && hertz[i] <= hertz[i - 1])
            {
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Frequencies must rise; point {i + 1} is {hertz[i]} Hz after {hertz[i - 1]} Hz."), nameof(hertz));
            }
        }

        _hertz = hertz;
    }

    /// <summary>Number of points.</summary>
    public int Count => _hertz.Length;

    /// <summary>Frequencies in Hz.</summary>
    public ReadOnlySpan<double> Hertz => _hertz.AsSpan();

    /// <summary>The range from the first to the last point.</summary>
    public FrequencyBand Band => new(this[0], this[^1]);

    /// <summary>The frequency of a point.</summary>
    public Hertz this[int point] => new(_hertz[point]);

    /// <summary>The frequency of a point counted from either end.</summary>
    public Hertz this[Index point] => new(_hertz[point.GetOffset(_hertz.Length)]);

    /// <summary>Place of the frequency nearest to another; the lower one where two are as near.</summary>
    public int NearestPoint(Hertz at)
    {
        int above = Hertz.BinarySearch(at.Value);
        if (above >= 0)
        {
            return above;
        }

        above = ~above;
        bool below = above == Count || (above > 0 && at.Value - Hertz[above - 1] <= Hertz[above] - at.Value);
        return below ? above - 1 : above;
    }

    /// <inheritdoc/>
    public bool Equals(FrequencyGrid? other) =>
        other is not null && (ReferenceEquals(this, other) || Hertz.SequenceEqual(other.Hertz));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as FrequencyGrid);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_hertz.Length, _hertz[0], _hertz[^1]);
}
