using SweepStats.Statistics;

namespace SweepStats.Leakage;

/// <summary>What is known of the level of a steady leakage at one frequency. Immutable.</summary>
/// <remarks>
/// A power P̂ with a standard error u, both kept in dB; up to P̂ + z·u is reckoned with, z being the normal quantile. Powers and
/// not levels add up, so that the limit goes on steadily from a leakage that shows to one that noise may hide (P̂ = 0).
/// </remarks>
/// <param name="EstimateDb">Level in dB on the scale of the sweeps; −∞ where none shows.</param>
/// <param name="ErrorDb">Standard error of its power as a level in dB; −∞ where the level is known.</param>
public readonly record struct LeakageLevel(double EstimateDb, double ErrorDb)
{
    /// <summary>No leakage.</summary>
    public static LeakageLevel None { get; } = Known(double.NegativeInfinity);

    /// <summary>A leakage whose level is known.</summary>
    public static LeakageLevel Known(double levelDb) => new(levelDb, double.NegativeInfinity);

    /// <summary>Level in dB that it exceeds in 5 of 100 cases; −∞ where there is none.</summary>
    public double LimitDb => Below(Confidence.NinetyFive.Level);

    internal bool IsNone => double.IsNegativeInfinity(EstimateDb) && double.IsNegativeInfinity(ErrorDb);

    /// <summary>Level in dB that it stays below with a probability.</summary>
    internal double Below(double probability) => double.IsNegativeInfinity(ErrorDb) ? EstimateDb
        : 10 * Math.Log10(Power(EstimateDb) + (StudentQuantile.Of(probability).Normal * Power(ErrorDb)));

    private static double Power(double levelDb) => Math.Pow(10, levelDb / 10);
}
