using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Readings scatter otherwise than the t interval supposes.</summary>
/// <remarks>
/// What is left of reference and covered sweeps without their offsets, each point against the scatter of its neighbourhood, since
/// scatter changes over frequency; all groups together. With so many values the test sees what does not matter, so the shape must
/// also be plainly another.
/// </remarks>
internal sealed class NonNormal : ICheck
{
    private const double FalseAlarm = 0.001;

    // Means of a few readings are near normal for less.
    private const double PlainExcess = 1;
    private const double PlainSkewness = 0.5;

    // Of two sweeps each rest is the other's mirror image.
    private const int FewestSweeps = 3;
    private const int MostValues = 100_000;
    private const int FewestValues = 100;

    /// <inheritdoc/>
    public string Code => "non-normal";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => IsClipped(seen) ? "flat tops hide how the readings scatter"
        : AreEnough(seen, Coarsest(seen)) ? null
        : AreEnough(seen, coarsest: 0) ? "levels come in steps too coarse to show how they scatter"
        : $"there are fewer than {FewestValues} readings clear of the floor of {FewestSweeps} sweeps and more that repeat "
            + "each other";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        double[] values = Values(seen);
        if (values.Length < FewestValues)
        {
            yield break;
        }

        // What is not plain to see is not told, however sure: most campaigns need no test.
        (double skewness, double excess) = Moments.SkewnessAndExcess(values);
        if ((Math.Abs(skewness) > PlainSkewness || excess > PlainExcess)
            && AndersonDarling.Of(values) is { Probability: < FalseAlarm } test)
        {
            double lopsided = ScatterSkewness.Of(Groups(seen), g => new StandardisedRests(g, Coarsest(seen)).All());
            bool matters = Math.Abs(lopsided) >= ScatterSkewness.Material;
            yield return new Finding
            {
                Code = Code,
                Severity = matters ? Severity.Warning : Severity.Note,
                Message = "Readings do not scatter evenly about their mean: "
                    + $"{(excess > PlainExcess ? "a few lie far off, most close by"
                        : "one side reaches farther than the other")}. "
                    + (matters ? "An interval from few sweeps may miss the truth more often than it says."
                        : "The intervals hold all the same."),
                Basis = string.Create(Amount.Print, $"Anderson and Darling's A² {test.Statistic:0.0} from {values.Length} "
                    + $"readings against the scatter of their neighbourhood; skewness {skewness:0.00}, excess {excess:0.00} "
                    + $"(told from {PlainSkewness} or {PlainExcess} on). Skewness of reference less covered {lopsided:0.00}; "
                    + $"beyond {ScatterSkewness.Material} fewer than 92 % of 95 % intervals from 3 to 10 sweeps hold, with less "
                    + $"92 to 98 %."),
                NextStep = (matters ? string.Empty : "Nothing, unless the cause is wanted. ")
                    + "Look for what comes and goes: a loose connector, a cable that moves, another transmitter, a source that "
                    + "hops. Mend it and take the sweeps again; else take at least ten.",
            };
        }
    }

    private static bool IsClipped(Evidence seen) => new SaturationPlateau().Inspect(seen).Any();

    // Steps of q make any scatter below about q/2 look uneven: q/√12 of rounding and q/2 of scatter add up to twice the rounding,
    // q/√3.
    private static double Coarsest(Evidence seen) => 2 * seen.Curves.Select(c => c.RoundingDb).DefaultIfEmpty().Max();

    private static double[] Values(Evidence seen)
    {
        if (IsClipped(seen))
        {
            return [];
        }

        double coarsest = Coarsest(seen);
        RepeatGroup[] repeats = [.. Groups(seen)];
        StandardisedRests[] groups =
            SideBySide.Of(repeats.Length, seen.Threads, i => new StandardisedRests(repeats[i], coarsest));
        int step = (groups.Sum(g => g.Count) / MostValues) + 1, next = 0;
        List<double> thinned = [];
        foreach (StandardisedRests group in groups)
        {
            for (; next < group.Count; next += step)
            {
                thinned.Add(group[next]);
            }

            next -= group.Count;
        }

        return [.. thinned];
    }

    // Counted as far as needed: the first group mostly has enough.
    private static bool AreEnough(Evidence seen, double coarsest)
    {
        int count = 0;
        return Groups(seen).Any(g => (count += new StandardisedRests(g, coarsest).Count) >= FewestValues);
    }

    private static IEnumerable<RepeatGroup> Groups(Evidence seen) =>
        seen.Repeats.Where(g => g.Role != SweepRole.Floor && g.Sweeps.Length >= FewestSweeps);
}
