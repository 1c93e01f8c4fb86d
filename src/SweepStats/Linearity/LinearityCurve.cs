using SweepStats.Statistics;

namespace SweepStats.Linearity;

/// <summary>How far the receiver follows the source over its levels, from linearity and reference sweeps. Immutable.</summary>
public sealed record LinearityCurve
{
    /// <summary>Shortfall that is called compression, in dB.</summary>
    public const double CompressionDb = 1;

    /// <summary>
    /// Each source level against the lowest, rising; at least one. The reference's own is among them where no linearity sweep was
    /// taken at it.
    /// </summary>
    public required ImmutableArray<LinearityStep> Steps { get; init; }

    /// <summary>Level of the limits.</summary>
    public required Confidence Confidence { get; init; }

    /// <summary>Source level of the reference sweeps in dBm; null where nothing states it.</summary>
    public double? ReferenceDbm { get; init; }

    /// <summary>Reference sweeps are among those of <see cref="Steps"/>.</summary>
    public bool StepsHoldReference { get; init; }

    /// <summary>
    /// The step from the lowest source level up to the reference sweeps; null where their level is the lowest, or nothing states
    /// it.
    /// </summary>
    public LinearityStep? Reference { get; init; }

    /// <summary>
    /// Received level in dB, on the scale of the sweeps, from which on the receiver is taken to fall short at the reference's
    /// source level or below: −∞ where it does at every frequency tested; null where no shortfall is shown there.
    /// </summary>
    public double? OverloadedFromDb { get; init; }

    /// <summary>
    /// What the reference falls short by at most, in dB: the upper limit of the step up to it, or where it was taken at the
    /// lowest level, of the highest step above it; null where neither has limits.
    /// </summary>
    public double? MostAtReferenceDb => (Reference ?? (ReferenceDbm <= LowestDbm ? Steps[^1] : null))?.Interval?.High;

    /// <summary>Lowest source level in dBm, which the others are held against.</summary>
    public double LowestDbm => Steps[0].LowDbm;

    /// <summary>Sweeps compared.</summary>
    public int SweepCount => Steps[0].LowSweeps + Steps.Sum(s => s.HighSweeps);

    /// <summary>Every step, that to the reference once.</summary>
    public IEnumerable<LinearityStep> All => Reference is null || Steps.Contains(Reference) ? Steps : Steps.Append(Reference);

    /// <summary>
    /// Source level in dBm at which the receiver shows 1 dB too little, by a straight line between the levels that were taken;
    /// null where no level is that far off.
    /// </summary>
    public double? CompressionDbm
    {
        get
        {
            (double source, double shortfall) = (LowestDbm, 0.0);
            foreach (LinearityStep step in Steps)
            {
                if (step.ShortfallDb >= CompressionDb)
                {
                    return source + ((CompressionDb - shortfall) / (step.ShortfallDb - shortfall) * (step.HighDbm - source));
                }

                (source, shortfall) = (step.HighDbm, step.ShortfallDb);
            }

            return null;
        }
    }
}
