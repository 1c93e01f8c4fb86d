namespace SweepStats.Planning;

/// <summary>How much range the claim "SE is at least R" needs.</summary>
/// <param name="forecast">What campaigns show.</param>
/// <param name="claimDb">R, to be claimed at the forecast's one-sided level.</param>
/// <param name="shieldingDb">What the specimen truly shields.</param>
public sealed class ClaimForecast(ResultForecast forecast, double claimDb, double shieldingDb)
{
    // No receiver shows more; a claim that fails here fails for want of repeats, not of range.
    private const double PlentyDb = 200;
    private const double StepDb = 0.05;

    private double? _plenty;

    /// <summary>Share of campaigns in which the claim succeeds.</summary>
    /// <param name="rangeDb">Displayed reference less displayed floor.</param>
    public double Share(double rangeDb) => forecast.ClaimShare(claimDb, shieldingDb, rangeDb);

    /// <summary>The same where range is no concern.</summary>
    public double ShareWithPlenty => _plenty ??= Share(EnoughDb);

    private double EnoughDb => PlentyDb + Math.Max(0, shieldingDb);

    /// <summary>
    /// Least displayed reference less displayed floor in dB, to 0.05 dB upwards; null where no range is enough.
    /// </summary>
    /// <remarks>
    /// Two binomial deviations of the drawn share are asked for on top, so that what is promised is kept and not only met on
    /// average.
    /// </remarks>
    /// <param name="probability">Share of campaigns in which the claim is to succeed.</param>
    public double? RangeNeededDb(double probability)
    {
        double asked = probability + (2 * Math.Sqrt(probability * (1 - probability) / forecast.Campaigns));
        double enough = EnoughDb, few = 0;
        if (ShareWithPlenty < asked)
        {
            return null;
        }

        while (enough - few > StepDb)
        {
            double middle = (enough + few) / 2;
            (enough, few) = forecast.Reaches(asked, claimDb, shieldingDb, middle) ? (middle, few) : (enough, middle);
        }

        return enough;
    }
}
