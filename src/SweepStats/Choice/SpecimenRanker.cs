using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>
/// Ranks the specimens of a campaign by what can be claimed of them, and says which cannot be told from the best.
/// </summary>
/// <remarks>
/// Ranked by the lower limit of the mean over the band, compared by the means themselves: what moves all specimens alike
/// (reference, stated errors) belongs to the claim and not to the comparison. Frequencies where something else transmits, or
/// where the reference does not rise over the floor, are left out for all.
/// </remarks>
public static class SpecimenRanker
{
    /// <summary>Ranks.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="curves">Shielding of its specimens, in the same order.</param>
    /// <param name="properties">What else is known of them.</param>
    /// <param name="asked">What is asked, in which bands, at which level, and the seed of the draws.</param>
    /// <returns>The ranking; null where there are not two candidates.</returns>
    public static SpecimenChoice? Of(
        AlignedCampaign campaign, ImmutableArray<ShieldingCurve> curves, ImmutableArray<SpecimenProperty> properties,
        RankingQuestion asked)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        ArgumentNullException.ThrowIfNull(asked);
        return Of(campaign, new CurvesAndSweeps(curves, [.. campaign.Covered.Zip(curves, SpecimenSweeps.Of)]), properties, asked);
    }

    internal static SpecimenChoice? Of(
        AlignedCampaign campaign, CurvesAndSweeps specimens, ImmutableArray<SpecimenProperty> properties, RankingQuestion asked,
        int threads = 1)
    {
        bool byPlacement = SpecimenSweeps.RepeatByPlacement(specimens.Sweeps);
        if (specimens.Curves.Count(c => c.Name != asked.Question.Yardstick) < 2)
        {
            return null;
        }

        ImmutableArray<SpecimenName> stayed =
            [.. specimens.Sweeps.Where(s => s.Name != asked.Question.Yardstick && s.Placements.Max() == 0).Select(s => s.Name)];
        ImmutableArray<BandRanking> bands =
        [
            BandRanker.Of(campaign.Grid, specimens,
                new RankedBand(new NamedBand("", campaign.Grid.Band), byPlacement, stayed.IsEmpty), asked,
                threads) with { Name = null },
            .. asked.Bands.Select(
                band => BandRanker.Of(campaign.Grid, specimens, new RankedBand(band, byPlacement, stayed.IsEmpty),
                    asked, threads)),
        ];
        return new SpecimenChoice
        {
            Bands = bands,
            ByPlacement = byPlacement,
            NeverPutBack = stayed,
            Properties = properties,
            // Without groups nobody is as good as another.
            Dominated = stayed.IsEmpty ? Domination.Among(bands, properties, asked.Question) : [],
        };
    }
}
