using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Linearity;

/// <summary>How far the receiver follows the source over its levels, from linearity sweeps. Immutable.</summary>
public sealed record LinearityCurve
{
    /// <summary>Shortfall that is called compression, in dB.</summary>
    public const double CompressionDb = 1;

    /// <summary>Each source level against the lowest, rising; at least one.</summary>
    public required ImmutableArray<LinearityStep> Steps { get; init; }

    /// <summary>Level of the limits.</summary>
    public required Confidence Confidence { get; init; }

    /// <summary>Lowest source level in dBm, which the others are held against.</summary>
    public double LowestDbm => Steps[0].LowDbm;

    /// <summary>Sweeps compared.</summary>
    public int SweepCount => Steps[0].LowSweeps + Steps.Sum(s => s.HighSweeps);

    /// <summary>
    /// Source level in dBm at which the receiver shows 1 dB too little, by a straight line between the levels that were taken; null where no level is that far off.
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
