using SweepStats.Alignment;
using SweepStats.Clipping;
using SweepStats.Floor;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Planning;

/// <summary>
/// Takes from a campaign what a plan needs to know: how placements and sweeps scatter, how far the reference stands over the
/// floor.
/// </summary>
/// <remarks>
/// Variances between placements and between the sweeps of one are taken apart at each frequency, pooled over specimens, and
/// averaged over the frequencies that stand 15 dB over the floor and are not cut off from above; what noise adds there is taken
/// out. Differences of variances are cut at 0 after averaging, not before, so that chance does not pass for a spread. Levels in
/// dB.
/// </remarks>
public static class PilotComponents
{
    // As far over the floor as the interval asks of levels that are to show the scatter of the signal.
    private const double ClearDb = 15;

    /// <summary>
    /// The components of a campaign; null where its reference was not repeated, or stands nowhere 15 dB over the floor or is
    /// clipped throughout.
    /// </summary>
    /// <param name="campaign">Sweeps on their common grid.</param>
    /// <param name="floor">The floor; null where none is known: then all frequencies count. Of one whose detector keeps a look
    /// only the level is used.</param>
    /// <param name="uncertainties">Uncertainties that repeats do not show.</param>
    /// <param name="together">Whether repeats go together in the order taken; unless given they count as independent.</param>
    public static PlanBasis? Of(
        AlignedCampaign campaign, NoiseFloor? floor, ImmutableArray<UncertaintyEntry> uncertainties,
        SerialCorrelation? together = null)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        if (campaign.Reference.SweepCount < 2)
        {
            return null;
        }

        // A limit that all sweeps stand at hides how much they scatter.
        CampaignClipping clipped = ClippingSearch.In(campaign, campaign.Floor);
        if (Reference(campaign.Reference, floor, clipped.Reference) is not { } reference)
        {
            return null;
        }

        // A detector that keeps one look does not show how an average would read, and a plan is for an average.
        NoiseFloor? averaged = floor?.Kept == KeptLook.Average ? floor : null;
        bool placed = campaign.Covered.Any(c => c.Block.Placements().Max() > 0);
        var sweeps = new PlannedRepeats(together?.Lasting(placed ? RepeatKind.WithinPlacement : RepeatKind.Covered));
        (double? sweep, double? placement) = Covered(campaign, floor, reference, clipped, sweeps);
        return new PlanBasis
        {
            ReferenceDeviationDb = Math.Sqrt(reference),
            SweepDeviationDb = Math.Sqrt(sweep ?? reference),
            PlacementDeviationDb = placement is { } variance ? Math.Sqrt(variance) : null,
            PlacementsHidden = placement is null && placed,
            RangeDb = Range(campaign.Reference, averaged),
            Noise = averaged?.Noise ?? [],
            FloorError = averaged is null ? Contribution.None : Middle(averaged),
            FloorFrequencies = averaged is { Source: FloorSource.Measured } ? averaged.LevelDb.Length : null,
            FloorHalfWidthDb = averaged?.HalfWidthDb ?? 0,
            RoundingDb = campaign.Covered.Select(c => c.Block).Append(campaign.Reference).Max(DisplayStep.Deviation),
            TypeB = new SystematicError(uncertainties),
            ReferenceRepeats = new PlannedRepeats(together?.Lasting(RepeatKind.Reference)),
            SweepRepeats = sweeps,
            PlacementRepeats = new PlannedRepeats(together?.Lasting(RepeatKind.Placement)),
        };
    }

    private static double? Reference(SweepBlock block, NoiseFloor? floor, ClippedReadings clipped)
    {
        int[] same = new int[block.SweepCount];
        List<double> variances = [];
        foreach (int f in Points(block.PointCount, floor))
        {
            double noise = NoiseVariance(block, floor, f);
            if (!double.IsNaN(noise) && !clipped.IsAt(f))
            {
                var scatter = new PooledScatter();
                scatter.Add(block, same, f);
                variances.Add(scatter.Within!.Value - noise);
            }
        }

        return variances.Count == 0 ? null : Mean(variances);
    }

    private static (double? Sweep, double? Placement) Covered(
        AlignedCampaign campaign, NoiseFloor? floor, double referenceVariance, CampaignClipping clipping, PlannedRepeats sweeps)
    {
        List<double> within = [], between = [];
        (SweepBlock Block, int[] Placement, ClippedReadings Clipped)[] specimens =
            [.. campaign.Covered.Zip(clipping.Covered, (c, clipped) => (c.Block, c.Block.Placements(), clipped))];
        foreach (int f in Points(campaign.Grid.Count, floor))
        {
            var scatter = new PooledScatter();
            double noise = 0;
            int counted = 0;
            foreach ((SweepBlock block, int[] placement, ClippedReadings clipped) in specimens)
            {
                if (NoiseVariance(block, floor, f) is var added && !double.IsNaN(added) && !clipped.IsAt(f))
                {
                    scatter.Add(block, placement, f);
                    (noise, counted) = (noise + added, counted + 1);
                }
            }

            if (scatter.Within is { } w)
            {
                within.Add(w - (noise / counted));
            }

            if (scatter.Between is { } b)
            {
                // Placements of one sweep each cannot tell the two apart: sweeps are taken to scatter as the reference does.
                // Sweeps that go together scatter the mean of a placement by more than their own scatter shows.
                double own = scatter.Within ?? (referenceVariance + (noise / counted));
                between.Add((b - (sweeps.Factor((int)Math.Round(scatter.Size)) * own)) / scatter.Size);
            }
        }

        return (within.Count > 0 ? Mean(within) : null, between.Count > 0 ? Mean(between) : null);
    }

    // What noise adds to the variance of a reading; not a number where the level is not clear of the floor.
    private static double NoiseVariance(SweepBlock block, NoiseFloor? floor, int f)
    {
        if (floor is null)
        {
            return 0;
        }

        double rise = Level(block, f) - floor.LevelDb[f];
        return rise < ClearDb ? double.NaN : floor.Noise.Min(n => Variance(n, n.SnrInDecibels(rise)));
    }

    private static double Variance(DetectorNoise noise, double snrDb) =>
        noise.Kept == KeptLook.Average ? NoisyLevel.Variance(noise, snrDb) : noise.LogCumulants(snrDb).Variance;

    private static double? Range(SweepBlock reference, NoiseFloor? floor) =>
        Points(reference.PointCount, floor) is var points && floor is not null && points.Length > 0
            ? points.Min(f => Level(reference, f) - floor.LevelDb[f])
            : null;

    private static Contribution Middle(NoiseFloor floor)
    {
        int[] points = Points(floor.LevelDb.Length, floor);
        return points.Length == 0
            ? Contribution.None
            : new Contribution(
                Sample.Median([.. points.Select(f => floor.StandardErrorDb[f])]),
                Sample.Median([.. points.Select(f => floor.DegreesOfFreedom[f])]));
    }

    private static int[] Points(int count, NoiseFloor? floor) =>
        [.. Enumerable.Range(0, count).Where(f => floor is null || !floor.Ambient[f])];

    private static double Level(SweepBlock block, int f) => Enumerable.Range(0, block.SweepCount).Average(j => block[j][f]);

    private static double Mean(List<double> variances) => variances.Count == 0 ? 0 : Math.Max(0, Sample.Mean([.. variances]));
}
