using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Fields;

/// <summary>What is left of a pulse behind each specimen, by the measured shielding as a filter.</summary>
/// <remarks>
/// Supposes a linear specimen, a plane wave, and that behind and in front of the specimen levels stand for the same component of
/// the field. Between readings the curve runs straight; where nothing is known within the band, no shielding is taken (0 dB). See
/// <see cref="SpecimenPulse"/> for limits.
/// </remarks>
public static class PulseEstimator
{
    /// <summary>One for each specimen, in their order.</summary>
    /// <param name="measured">Curves, and what was found against them.</param>
    /// <param name="question">The pulse, the assumption asked for, and the level of limits.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static ImmutableArray<ResidualPulse> Of(PulseBasis measured, PulseQuestion question, int threads)
    {
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(question);
        if (measured.Trust == Trust.Untrustworthy)
        {
            return [.. measured.Curves.Select(c => new ResidualPulse(c.Name, FieldSilence.Untrustworthy))];
        }

        AlignedCampaign campaign = measured.Campaign;
        var band = new MeasuredBand(campaign.Grid, new PulseGrid(question.Pulse, Lowest(campaign.Grid)));
        // Its room and tables are larger than what is told of a specimen.
        using var filters = new ThreadLocal<PulseFilter>(() => new PulseFilter(band.Bins));
        ResidualPulse Left(int i) =>
            new SpecimenPulse(measured.Curves[i], PulseReading.Of(measured.Curves[i], measured.Findings), band, question)
            .Left(filters.Value!, Turns(campaign.Reference, campaign.Covered[i].Block, band));
        return [.. SideBySide.Of(measured.Curves.Length, threads, Left)];
    }

    private static double Lowest(FrequencyGrid grid) => grid.Hertz[0] > 0 || grid.Count == 1 ? grid.Hertz[0] : grid.Hertz[1];

    private static Complex[]? Turns(SweepBlock reference, SweepBlock covered, MeasuredBand band) =>
        reference.HasPhases && covered.HasPhases ? MeasuredPhase.Of(reference, covered, band) : null;
}
