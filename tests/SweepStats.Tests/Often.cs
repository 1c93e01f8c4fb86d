using System.Globalization;
using MathNet.Numerics.Distributions;
using Xunit;

namespace SweepStats.Tests;

/// <summary>Whether something happened about as often as promised, by the binomial law of the number of draws.</summary>
/// <remarks>
/// A count fails where so many (or so few) and more extreme ones are less likely than 1 in 1 000 under what is promised, however
/// many were drawn. Draws must be independent; what goes together within a campaign counts once.
/// </remarks>
internal static class Often
{
    /// <summary>Least probability that is put down to chance.</summary>
    public const double Chance = 0.001;

    /// <summary>It happens in a share of the draws, or more seldom.</summary>
    /// <param name="found">Draws in which it did.</param>
    /// <param name="of">Draws.</param>
    /// <param name="promised">Share at most, 0 to 1.</param>
    /// <param name="whenFull">Most of the full number of draws, where a test keeps it tighter than the law does.</param>
    /// <param name="about">What was counted, for the message.</param>
    public static void AtMost(int found, int of, double promised, int? whenFull = null, string about = "")
    {
        Check(AsMany(found, of, promised), found, of, $"at most {Percent(promised)} are promised. {about}");
        Assert.True(!Draws.Full || found <= (whenFull ?? of), $"{found} of {of}: {whenFull} are allowed. {about}");
    }

    /// <summary>It happens in a share of the draws, or more often.</summary>
    /// <param name="found">Draws in which it did.</param>
    /// <param name="of">Draws.</param>
    /// <param name="promised">Share at least, 0 to 1.</param>
    /// <param name="whenFull">Fewest of the full number of draws, where a test keeps it tighter than the law does.</param>
    /// <param name="about">What was counted, for the message.</param>
    public static void AtLeast(int found, int of, double promised, int? whenFull = null, string about = "")
    {
        Check(AsFew(found, of, promised), found, of, $"at least {Percent(promised)} are promised. {about}");
        Assert.True(!Draws.Full || found >= (whenFull ?? 0), $"{found} of {of}: {whenFull} are needed. {about}");
    }

    /// <summary>Probability of so many or more.</summary>
    public static double AsMany(int found, int of, double share) => found <= 0 ? 1 : 1 - Binomial.CDF(share, of, found - 1);

    /// <summary>Probability of so many or fewer.</summary>
    public static double AsFew(int found, int of, double share) => found >= of ? 1 : Binomial.CDF(share, of, found);

    private static void Check(double probability, int found, int of, string what)
    {
        Assert.InRange(found, 0, of);
        Assert.True(of > 0, "Nothing was drawn.");
        Assert.True(probability >= Chance,
            string.Create(CultureInfo.InvariantCulture, $"{found} of {of} has a chance of {probability:G2}; {what}"));
    }

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.##} %");
}
