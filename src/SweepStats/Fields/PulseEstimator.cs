using System.Collections.Immutable;
using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Checks;
using SweepStats.Shielding;
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
    /// <param name="campaign">The sweeps, for their phases.</param>
    /// <param name="curves">Shielding of each specimen.</param>
    /// <param name="known">What the checks found, and whether the measurement can be trusted.</param>
    /// <param name="asked">The pulse and the assumptions, and the level of limits.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static ImmutableArray<ResidualPulse> Of(
        AlignedCampaign campaign, ImmutableArray<ShieldingCurve> curves, (ImmutableArray<Finding> Findings, Trust Trust) known,
        (PulseQuestion Question, Confidence Confidence) asked, int threads)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        if (known.Trust == Trust.Untrustworthy)
        {
            return [.. curves.Select(c => new ResidualPulse(c.Name, FieldSilence.Untrustworthy))];
        }

        var grid = new PulseGrid(asked.Question.Pulse, Lowest(campaign.Grid));
        var band = new MeasuredBand(campaign.Grid, grid);
        return [.. SideBySide.Of(curves.Length, threads,
            i => new SpecimenPulse(curves[i], (grid, band), asked, PulseReading.Of(curves[i], known.Findings))
            .Left(Turns(campaign.Reference, campaign.Covered[i].Block, band, grid)))];
    }

    private static double Lowest(FrequencyGrid grid) => grid.Hertz[0] > 0 || grid.Count == 1 ? grid.Hertz[0] : grid.Hertz[1];

    private static Complex[]? Turns(SweepBlock reference, SweepBlock covered, MeasuredBand band, PulseGrid grid) =>
        reference.HasPhases && covered.HasPhases ? MeasuredPhase.Of(reference, covered, band, grid) : null;
}
