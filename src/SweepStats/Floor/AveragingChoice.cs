using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>Decides how the receiver is taken to average, from what is stated and what the floor shows.</summary>
/// <remarks>
/// Files that keep a look go before everything: nobody who states an average can have known of it. Then comes what the campaign
/// states, then what all files state alike. Where files contradict each other nothing is taken. What the floor readings show goes
/// before any average that is stated: averages do not lean that way.
/// </remarks>
public static class AveragingChoice
{
    /// <summary>How the receiver averages.</summary>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="stated">What the campaign states; unknown where it states nothing.</param>
    public static AveragingInUse Of(AlignedCampaign campaign, Averaging stated)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        FileWords files = FileWords.Of(campaign);
        FloorSkewness? skewness = campaign.Floor is { } floor ? FloorSkewness.Of(floor) : null;
        (Averaging averaging, AveragingSource source) = Told(files, stated, campaign);
        bool recognised = averaging is not (Averaging.Peak or Averaging.Lowest) && skewness?.Shape == NoiseShape.Highest;
        return new AveragingInUse
        {
            Averaging = recognised ? Averaging.Peak : averaging,
            Source = recognised ? AveragingSource.Recognised : source,
            Stated = stated,
            Files = files,
            Skewness = skewness,
        };
    }

    private static (Averaging Averaging, AveragingSource Source) Told(FileWords files, Averaging stated, AlignedCampaign campaign)
    {
        Averaging alike = files.Alike;
        return files.Disagree ? (Averaging.Unknown, AveragingSource.Unknown)
            : alike is Averaging.Peak or Averaging.Lowest ? (alike, AveragingSource.Files)
            : stated != Averaging.Unknown ? (stated, AveragingSource.Stated)
            : alike == Averaging.Unknown || Smoothed(alike, campaign.Floor) ? (Averaging.Unknown, AveragingSource.Unknown)
            : (alike, AveragingSource.Files);
    }

    // A sample detector behind a narrow video filter shows averages in dB: its word says how a look is taken, and not what is
    // done with it.
    private static bool Smoothed(Averaging alike, SweepBlock? floor) =>
        alike == Averaging.Sample && floor is not null
        && SingleLookScatter.Contradicts(NoiseFloorEstimator.Estimate(floor, Averaging.Unknown));
}
