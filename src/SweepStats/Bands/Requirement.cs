using SweepStats.Quantities;

namespace SweepStats.Bands;

/// <summary>Shielding asked for, as a line over frequency. Immutable.</summary>
/// <remarks>
/// Between two points the dB value runs straight over the logarithm of frequency; outside the points nothing is asked.
/// </remarks>
public sealed class Requirement
{
    /// <summary>Lowest shielding that can be asked for in dB: nothing is asked for below none.</summary>
    public const double LeastDb = 0;

    /// <summary>
    /// Highest shielding that can be asked for in dB; beyond what any receiver spans (common practice, no source).
    /// </summary>
    public const double MostDb = 300;

    private readonly ImmutableArray<RequirementPoint> _points;

    private Requirement(ImmutableArray<RequirementPoint> points) => _points = points;

    /// <summary>From the first point to the last; null where the same is asked at every frequency.</summary>
    public FrequencyBand? Stretch => _points.Length == 1 ? null : new FrequencyBand(_points[0].Frequency, _points[^1].Frequency);

    /// <summary>
    /// Whether a shielding can be asked for, however it is stated: as one figure, as a point of a line, or on the command line.
    /// </summary>
    /// <param name="db">Shielding in dB; what is no number cannot.</param>
    public static bool CanAskFor(double db) => db is >= LeastDb and <= MostDb;

    /// <summary>The same shielding at every frequency.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Requirement Constant(Decibels shielding)
    {
        if (!double.IsFinite(shielding.Value))
        {
            throw new ArgumentOutOfRangeException(nameof(shielding), shielding, "A required shielding is a finite number of dB.");
        }

        return new([new(new Hertz(double.NaN), shielding)]);
    }

    /// <summary>Points joined by straight lines over log frequency.</summary>
    /// <exception cref="ArgumentException">Fewer than two points, or frequencies that are not positive and rising.</exception>
    public static Requirement Line(ImmutableArray<RequirementPoint> points)
    {
        if (points.IsDefault || points.Length < 2)
        {
            throw new ArgumentException("A requirement line needs at least two points.", nameof(points));
        }

        for (int i = 0; i < points.Length; i++)
        {
            if (!(points[i].Frequency.Value > 0) || !double.IsFinite(points[i].Shielding.Value)
                || (i > 0 && points[i].Frequency <= points[i - 1].Frequency))
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"Requirement point {i + 1} must have a positive frequency above the one before ")
                        + "and a finite value in dB.", nameof(points));
            }
        }

        return new(points);
    }

    /// <summary>Shielding asked for at a frequency; null outside the line.</summary>
    public Decibels? At(Hertz frequency)
    {
        if (_points.Length == 1)
        {
            return _points[0].Shielding;
        }

        if (frequency < _points[0].Frequency || frequency > _points[^1].Frequency)
        {
            return null;
        }

        int right = 1;
        while (_points[right].Frequency < frequency)
        {
            right++;
        }

        (RequirementPoint below, RequirementPoint above) = (_points[right - 1], _points[right]);
        (double f0, double f, double f1) = (below.Frequency.Value, frequency.Value, above.Frequency.Value);
        (double a, double b) = (below.Shielding.Value, above.Shielding.Value);
        return new Decibels(a + ((b - a) * Math.Log(f / f0) / Math.Log(f1 / f0)));
    }
}
