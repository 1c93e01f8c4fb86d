using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Sweeps of the reference, or of one specimen, that repeat each other scatter far more than all others do as a whole: a cable
/// that was loose for some of them, or a source that did not hold its level.
/// </summary>
/// <remarks>
/// The same sweep of each placement may be off, so that the placements agree; of two sweeps nothing shows which is right, and
/// levels on three steps are no two. All groups of a specimen together show it beside calm ones, the middle of which stays
/// calm as long as half are. What drift, two levels or single odd sweeps explain is told by these.
/// </remarks>
internal sealed class RestlessSweeps : ICheck
{
    // Less hardly changes what is claimed; and six times the deviation is thirty-six times the variance, which chance makes of
    // two degrees of freedom in less than a thousandth (judgement, no source).
    private const double WorthTellingDb = 1, Deviations = 6;
    private const int FewestFreedom = 2;

    private const int MostNamed = 3;

    public string Code => "restless-sweeps";

    public string? UntestedBecause(Evidence seen) => Series.In(seen).Count(s => s.Freedom >= FewestFreedom) > 1 ? null
        : "no two of the reference and of specimens with named placements have three sweeps that repeat each other";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        Series[] all = [.. Series.In(seen).Where(s => s.Freedom >= FewestFreedom)];
        if (all.Length < 2)
        {
            return [];
        }

        HashSet<SpecimenName?> parted = [.. RepeatSplits.Among(seen.Campaign, seen.Floor).Select(s => s.Specimen)];
        double middle = Sample.Median([.. all.Select(s => s.DeviationDb)]);
        double calm = Math.Min(middle, all.FirstOrDefault(s => s.Specimen is null)?.DeviationDb ?? middle);
        double CalmDb(Series s) => s.Specimen is null ? CoveredDb(all) : calm;
        return all.Where(s => s.DeviationDb >= Math.Max(WorthTellingDb, Deviations * CalmDb(s)) && !parted.Contains(s.Specimen)
            && (s.Specimen is not null || !Drift.TellsOfReference(seen))).Select(s => Told(s, CalmDb(s)));
    }

    private static double CoveredDb(Series[] all) => Sample.Median(
        [.. all.Where(s => s.Specimen is not null).Select(s => s.DeviationDb).DefaultIfEmpty(double.PositiveInfinity)]);

    private Finding Told(Series restless, double calmDb)
    {
        RepeatedSweep[] lowest = [.. restless.Groups.Select(g => g.MinBy(s => s.Offset.Value)!)];
        double half = restless.RangeDb / 2;
        string whose = restless.Specimen is { } name ? $"Sweeps of {name}" : "Reference sweeps";
        return new()
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = restless.Specimen is null ? SweepRole.Reference : SweepRole.Covered,
            Specimen = restless.Specimen,
            Size = new Decibels(restless.DeviationDb),
            Bias = new Bias(half, half),
            Misleads = true,
            Message = $"{whose} that repeat each other scatter by {Amount.Db(restless.DeviationDb)} as a whole, where others "
                + $"scatter by {Amount.Db(calmDb)}.",
            Basis = $"Standard deviation of the mean levels of sweeps within placements, {restless.Freedom} degrees of "
                + $"freedom; told from {Amount.Db(WorthTellingDb)} and {Deviations:0} times the others on. They lie "
                + $"{Amount.Db(restless.RangeDb)} apart at most.",
            NextStep = "Look what was different at the lowest ("
                + $"{Amount.Names([.. lowest.Select(s => s.Sweep.Name).Order(NaturalOrder.Instance)], MostNamed)}), or at the "
                + "others: a cable loose, the source not settled, a gap at the edge. Exclude the sweeps that were wrong with "
                + "that reason in sweeps.csv, and take them again.",
        };
    }

    /// <summary>Sweeps of the reference, or of one specimen, by placement; those told as odd left out.</summary>
    private sealed record Series(SpecimenName? Specimen, RepeatedSweep[][] Groups)
    {
        public int Freedom => Groups.Sum(g => g.Length - 1);

        public double DeviationDb => Math.Sqrt(
            Groups.Sum(g => (g.Length - 1) * Math.Pow(Sample.StandardDeviation(Offsets(g)), 2)) / Freedom);

        public double RangeDb => Groups.Max(g => Offsets(g).Max() - Offsets(g).Min());

        public static IEnumerable<Series> In(Evidence seen)
        {
            HashSet<Sweep> odd = [.. seen.OddRepeats.Select(o => o.Sweep.Sweep)];
            // Without named placements covered sweeps may each be a putting back.
            return seen.Repeats
                .Where(g => g.Role == SweepRole.Reference || (g.Role == SweepRole.Covered && g.Placement is not null))
                .GroupBy(g => g.Specimen)
                .Select(of => new Series(of.Key, [.. of.Select(g => g.Sweeps.Where(s => !odd.Contains(s.Sweep)).ToArray())
                    .Where(g => g.Length > 1)]));
        }

        private static double[] Offsets(RepeatedSweep[] group) => [.. group.Select(s => s.Offset.Value)];
    }
}
