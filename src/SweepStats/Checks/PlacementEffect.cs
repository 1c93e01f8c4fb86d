using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Putting the specimen back moves the level by more than sweeps repeat.</summary>
/// <remarks>
/// Variance ratio placement : sweep on the mean level of each sweep over the frequencies that all placements of its specimen have
/// clear of the floor; all specimens together, each about its own mean.
/// </remarks>
internal sealed class PlacementEffect : ICheck
{
    private const double FalseAlarm = 0.01;
    private const double WorthTellingDb = 0.1;

    /// <inheritdoc/>
    public string Code => "placement-effect";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        Scatters(seen).Any() ? null : "no specimen has two placements of two sweeps each, clear of the floor";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        var specimens = Scatters(seen).ToList();
        if (specimens.Count == 0)
        {
            yield break;
        }

        var ratio = new VarianceRatio(
            specimens.Sum(s => s.BetweenSumOfSquares), specimens.Sum(s => s.BetweenDegreesOfFreedom),
            specimens.Sum(s => s.WithinSumOfSquares), specimens.Sum(s => s.WithinDegreesOfFreedom));
        // The mean square of a specimen's placements holds their variance as often as it has sweeps; pooled by degrees of
        // freedom, so do the mean squares.
        double size = specimens.Sum(s => s.BetweenDegreesOfFreedom * s.EffectiveGroupSize) / ratio.UpperDegreesOfFreedom;
        double within = ratio.LowerSumOfSquares / ratio.LowerDegreesOfFreedom;
        double placement = Math.Sqrt(Math.Max(0, ((ratio.UpperSumOfSquares / ratio.UpperDegreesOfFreedom) - within) / size));
        if (ratio.Probability < FalseAlarm && placement >= WorthTellingDb)
        {
            int once = seen.Curves.Count(c => c.PlacementCount is null or 1);
            yield return new Finding
            {
                Code = Code,
                Severity = once > 0 ? Severity.Warning : Severity.Note,
                Role = SweepRole.Covered,
                Size = new Decibels(placement),
                Biases = Once(seen, placement),
                Message = string.Create(Amount.Print, $"Taking the specimen off and putting it back moves the level by "
                    + $"{placement:0.0#} dB (one standard deviation), sweeps of one placement only by "
                    + $"{Math.Sqrt(within):0.0#} dB. ")
                    + (once > 0 ? $"The intervals of {Amount.Count(once, "specimen", "specimens")} with one placement, or with "
                        + "none named, do not cover that." : "The intervals cover it: they count placements."),
                Basis = string.Create(Amount.Print, $"Variance ratio placement : sweep {ratio.F:0.0} on "
                    + $"{ratio.UpperDegreesOfFreedom} and {ratio.LowerDegreesOfFreedom} degrees of freedom, "
                    + $"{Amount.Count(specimens.Count, "specimen", "specimens")}; told where chance explains it in less than "
                    + $"{FalseAlarm:P0}."),
                NextStep = once > 0
                    ? "Put every specimen on at least three times and name the placements."
                    : "More placements narrow the intervals, more sweeps of each hardly do; a frame that presses the edges "
                        + "alike each time makes the effect smaller.",
            };
        }
    }

    // One placement lies within two standard deviations of what it would be on average, in 95 of 100.
    private static ImmutableArray<PlacedBias> Once(Evidence seen, double placement) =>
    [
        .. seen.Curves.Where(c => c.PlacementCount is null or 1)
            .SelectMany(
            c => c.Readings.Select(r => new PlacedBias(c.Name, r.Evidence.At, new Bias(2 * placement, 2 * placement)))),
    ];

    private static IEnumerable<OneWayAnova> Scatters(Evidence seen)
    {
        ILookup<SpecimenName?, RepeatGroup> placements =
            seen.Repeats.Where(g => g.Placement is not null).ToLookup(g => g.Specimen);
        return seen.Campaign.Covered.Select(c => Scatter(c, [.. placements[c.Name]])).OfType<OneWayAnova>();
    }

    private static OneWayAnova? Scatter(SpecimenBlock specimen, List<RepeatGroup> groups)
    {
        int[] points = groups.Count < 2 ? []
            : [.. groups.Select(g => g.Points.AsEnumerable()).Aggregate((a, b) => a.Intersect(b))];
        if (points.Length == 0)
        {
            return null;
        }

        List<double> levels = [];
        List<int> placements = [];
        for (int j = 0; j < specimen.Block.SweepCount; j++)
        {
            int placement = groups.FindIndex(g => g.Placement == specimen.Block.Sweeps[j].Placement);
            if (placement >= 0)
            {
                levels.Add(points.Average(f => specimen.Block[j][f]));
                placements.Add(placement);
            }
        }

        return OneWayAnova.Of([.. levels], [.. placements]);
    }
}
