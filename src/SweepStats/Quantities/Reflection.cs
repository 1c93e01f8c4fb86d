namespace SweepStats.Quantities;

/// <summary>
/// How much of a wave a port throws back: the magnitude |Γ| of its reflection coefficient, 0 for a perfect match, 1 for an open
/// or a short.
/// </summary>
public readonly record struct Reflection
{
    /// <summary>Takes a magnitude.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The magnitude does not lie between 0 and 1.</exception>
    public Reflection(double magnitude)
    {
        if (!(magnitude is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(magnitude), magnitude,
                "A passive port reflects between nothing (0) and everything (1).");
        }

        Magnitude = magnitude;
    }

    /// <summary>|Γ|, 0 to 1.</summary>
    public double Magnitude { get; }

    /// <summary>From a return loss in dB, 0 or more: |Γ| = 10^(−RL/20).</summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The return loss is negative: a passive port returns no more than it gets.
    /// </exception>
    public static Reflection OfReturnLoss(Decibels returnLoss) => new(Math.Pow(10, -returnLoss.Value / 20));

    /// <summary>From a voltage standing wave ratio, 1 or more: |Γ| = (s − 1)/(s + 1).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is below 1 or not a number.</exception>
    public static Reflection OfStandingWaveRatio(double ratio) =>
        ratio >= 1 ? new Reflection(double.IsPositiveInfinity(ratio) ? 1 : (ratio - 1) / (ratio + 1))
            : throw new ArgumentOutOfRangeException(nameof(ratio), ratio, "A standing wave ratio is 1 or more.");
}
