using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Compares the lots of one campaign.</summary>
/// <remarks>
/// The specimen is what counts as independent: lots are compared by the scatter of their specimens, frequency by frequency
/// (<see cref="CensoredAnova"/>, false discovery over the frequencies) and as whole curves (<see cref="CurveAnova"/>); both
/// together answer for the band. Lots may scatter by unequal amounts (<see cref="UnequalScatter"/>): two specimens that scatter
/// three times as much as the six of another lot were taken for different in 25 % by Fisher's F, and are in 3 %. A lot of one
/// specimen shows no scatter: it is allowed twice that of the others. A capped specimen counts as "above its bound", never as a
/// value. Scatter by level is estimated from the sweeps by restricted likelihood.
/// </remarks>
public static class LotComparer
{
    /// <summary>Compares.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="curves">Shielding of its specimens, in the same order.</param>
    /// <param name="bands">Parts of the band to compare them in, beside the whole.</param>
    /// <param name="question">What is asked of the lots.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static LotComparison Of(
        AlignedCampaign campaign, ImmutableArray<ShieldingCurve> curves, ImmutableArray<NamedBand> bands, LotQuestion question,
        int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        ArgumentNullException.ThrowIfNull(question);
        var specimens = new CurvesAndSweeps(curves, [.. campaign.Covered.Zip(curves, SpecimenSweeps.Of)]);
        return Of(campaign, specimens, bands, question, threads);
    }

    internal static LotComparison Of(
        AlignedCampaign campaign, CurvesAndSweeps specimens, ImmutableArray<NamedBand> bands, LotQuestion question, int threads)
    {
        var pieces = new LotSpecimens(campaign.Grid, specimens.Sweeps);
        LotFrequency[] frequencies = new FrequencyComparer(pieces, specimens.Curves, question).All(threads);
        ImmutableArray<LotFrequency> adjusted = Adjusted(frequencies);
        var comparer = new LotBandComparer(pieces, specimens.Curves, frequencies, question, threads);
        ImmutableArray<LotBand> compared =
        [
            comparer.Over(new NamedBand("", campaign.Grid.Band)) with { Name = null },
            .. bands.Select(comparer.Over),
        ];
        return new LotComparison
        {
            Lots = pieces.Lots,
            Question = question,
            Frequencies = adjusted,
            // Single frequencies speak only where the whole does, so that one answer never contradicts the other.
            Stretches = compared[0].Probability <= question.FalseAlarm
                ? LotStretch.Of(adjusted, pieces.Lots, question.FalseAlarm) : [],
            Bands = compared,
        };
    }

    private static ImmutableArray<LotFrequency> Adjusted(LotFrequency[] frequencies)
    {
        int[] tested = [.. Enumerable.Range(0, frequencies.Length).Where(f => frequencies[f].Probability is not null)];
        double[] adjusted = FalseDiscovery.Adjusted([.. tested.Select(f => frequencies[f].Probability!.Value)]);
        ImmutableArray<LotFrequency>.Builder all = ImmutableArray.CreateBuilder<LotFrequency>(frequencies.Length);
        all.AddRange(frequencies);
        for (int i = 0; i < tested.Length; i++)
        {
            all[tested[i]] = all[tested[i]] with { Adjusted = adjusted[i] };
        }

        return all.ToImmutable();
    }
}
