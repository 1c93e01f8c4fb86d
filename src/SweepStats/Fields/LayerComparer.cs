using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Lots;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Fields;

/// <summary>What each further layer adds, where specimens of a lot state how many layers of its cloth they are.</summary>
/// <remarks>
/// Difference of the means over log frequency of two specimens that share reference and floor, as specimens are compared for
/// choosing: reference and stated errors drop out, the floor's stays as far as it acts on them differently. Of several specimens
/// with as many layers the mean is taken. The comparison is of these specimens, by how their sweeps (or placements) repeat.
/// </remarks>
public static class LayerComparer
{
    /// <summary>Name of the property that states the layers.</summary>
    public const string Property = "layers";

    private const int Most = 1000;

    /// <summary>Whether a number can be one of layers: whole, from 1 to 1000.</summary>
    public static bool IsCount(double number) => number >= 1 && number <= Most && number == Math.Floor(number);

    /// <summary>The steps of each lot, by lot, from few layers to many.</summary>
    /// <param name="campaign">The sweeps.</param>
    /// <param name="curves">Shielding of each specimen.</param>
    /// <param name="properties">What is known of the specimens.</param>
    /// <param name="confidence">Level of the limits.</param>
    public static ImmutableArray<LayerStep> Of(
        AlignedCampaign campaign, ImmutableArray<ShieldingCurve> curves, ImmutableArray<SpecimenProperty> properties,
            Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        LayeredSpecimen[] layered = [.. curves.Zip(campaign.Covered, (c, b) => LayeredSpecimen.Of(c, b, properties))
            .OfType<LayeredSpecimen>()];
        bool byPlacement = layered.Length > 0 && SpecimenSweeps.RepeatByPlacement(layered.Select(s => s.Sweeps));
        return [.. layered.GroupBy(s => s.Curve.Name.Lot).OrderBy(g => g.Key, NaturalOrder.Instance)
            .SelectMany(lot => Steps(campaign.Grid, [.. lot], byPlacement, confidence))];
    }

    private static IEnumerable<LayerStep> Steps(
        FrequencyGrid grid, LayeredSpecimen[] lot, bool byPlacement, Confidence confidence)
    {
        LayeredSpecimen[][] groups = [.. lot.GroupBy(s => s.Layers).OrderBy(g => g.Key).Select(g => g.ToArray())];
        return groups.Zip(groups.Skip(1), (few, more) => Step(grid, few, more, byPlacement, confidence));
    }

    private static LayerStep Step(FrequencyGrid grid, LayeredSpecimen[] few, LayeredSpecimen[] more, bool byPlacement,
        Confidence confidence)
    {
        LayeredSpecimen[] both = [.. few, .. more];
        HashSet<int> compared = [.. Enumerable.Range(0, grid.Count).Where(f => Array.TrueForAll(both, s => s.IsBounded(f)))];
        var step = new LayerStep(few[0].Curve.Name.Lot, few[0].Layers, more[0].Layers)
        {
            PointCount = compared.Count,
            LeftOut = grid.Count - compared.Count
        };
        if (compared.Count == 0)
        {
            return step;
        }

        double[] weights = LogWeights.OfPart(grid, grid.Band, compared.Contains);
        CandidateFigure[] figures =
            CandidateFigures.Of([.. both.Select(s => s.Sweeps)], [.. both.Select(s => s.Curve)], weights, byPlacement);
        CandidateMean[] means = [.. figures.Select(f => f.Mean)];
        CandidateMean before = Mean(means[..few.Length]), after = Mean(means[few.Length..]);
        BandFigure added = YardstickDifference.Of(after, before, confidence);
        return step with
        {
            BeforeDb = before.Value,
            AddedDb = figures[0].DeviationDb is null ? new BandFigure(added.Value, null, null) : added,
        };
    }

    private static CandidateMean Mean(CandidateMean[] means)
    {
        double error = Math.Sqrt(means.Sum(m => m.StandardError * m.StandardError)) / means.Length;
        return new CandidateMean(means.Average(m => m.Value), error, means.Min(m => m.DegreesOfFreedom), means.Any(m => m.Open))
        {
            CommonScatter = means.All(m => m.CommonScatter),
            Shared = means.Average(m => m.Shared),
            Shift = means.Average(m => m.Shift),
        };
    }
}
