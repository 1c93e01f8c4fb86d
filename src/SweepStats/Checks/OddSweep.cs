using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>One sweep differs from those that repeat it by more than they differ among each other.</summary>
/// <remarks>
/// Two conditions must hold. Against the scatter of all repeats together (reference and covered; floor sweeps by themselves), which few sweeps of one group do
/// not show well; and against its own group alone, since groups need not scatter alike. Asked of the offset of the whole sweep and of its shape.
/// </remarks>
internal sealed class OddSweep : ICheck
{
    // With fewer than five sweeps even the farthest cannot be told from chance.
    private const int Fewest = 5;
    private const double FalseAlarmTogether = 0.02;
    private const double FalseAlarmOfGroup = 0.05;

    // Of ten sweeps and more a second may be odd; with fewer the test alarms more often than it says.
    private const int SweepsForEachOutlier = 10;

    // Less does not change what is claimed.
    private const double WorthTellingDb = 0.5;

    public string Code => "odd-sweep";

    public string? UntestedBecause(Evidence seen)
    {
        List<RepeatGroup> enough = [.. seen.Repeats.Where(g => g.Sweeps.Length >= Fewest)];
        return enough.Exists(g => g.Role != SweepRole.Floor) ? null
            : "no five reference or covered sweeps of one placement repeat each other" + (enough.Count > 0 ? "; floor sweeps were looked at" : string.Empty);
    }

    public IEnumerable<Finding> Inspect(Evidence seen) =>
        seen.Repeats.GroupBy(g => g.Role == SweepRole.Floor).SelectMany(family => Odd([.. family]));

    private IEnumerable<Finding> Odd(IReadOnlyList<RepeatGroup> family)
    {
        HashSet<RepeatedSweep> off = [];
        foreach ((RepeatGroup group, RepeatedSweep sweep, string basis) in Outliers(family, s => s.Offset.Value))
        {
            if (Math.Abs(sweep.Offset.Value) >= WorthTellingDb && off.Add(sweep))
            {
                string side = sweep.Offset.Value > 0 ? "above" : "below";
                yield return Found(group, sweep.Sweep, Math.Abs(sweep.Offset.Value), $"{sweep.Sweep.Name} lies {Amount.Db(Math.Abs(sweep.Offset.Value))} {side} the other {group.Sweeps.Length - 1} sweeps as a whole.", basis);
            }
        }

        // Root mean squares of many points scatter in proportion to themselves: on a logarithmic scale evenly.
        foreach ((RepeatGroup group, RepeatedSweep sweep, string basis) in Outliers(family, s => Math.Log(Math.Max(s.Shape.Value, 1e-9))))
        {
            double usual = Sample.Median([.. group.Sweeps.Select(s => s.Shape.Value)]);
            double strange = Math.Sqrt(Math.Max(0, (sweep.Shape.Value * sweep.Shape.Value) - (usual * usual)));
            if (strange >= WorthTellingDb && off.Add(sweep))
            {
                yield return Found(group, sweep.Sweep, strange, $"{sweep.Sweep.Name} has another shape than the other {group.Sweeps.Length - 1} sweeps: frequency by frequency it differs by {Amount.Db(strange)} more than they do among each other.", basis);
            }
        }
    }

    private static IEnumerable<(RepeatGroup Group, RepeatedSweep Sweep, string Basis)> Outliers(IReadOnlyList<RepeatGroup> family, Func<RepeatedSweep, double> figure)
    {
        double[][] figures = [.. family.Select(g => g.Sweeps.Select(figure).ToArray())];
        int sweeps = figures.Sum(f => f.Length);
        foreach (GroupedOutlier outlier in GroupedOutliers.Of(figures, Math.Max(1, sweeps / Fewest), FalseAlarmTogether))
        {
            RepeatGroup group = family[outlier.Group];
            if (group.Sweeps.Length >= Fewest)
            {
                var alone = GeneralisedEsd.Of(figures[outlier.Group], Math.Max(1, group.Sweeps.Length / SweepsForEachOutlier), FalseAlarmOfGroup);
                int rank = alone.Outliers.ToList().IndexOf(outlier.Place);
                if (rank >= 0)
                {
                    yield return (group, group.Sweeps[outlier.Place], Basis(outlier, sweeps, alone, rank));
                }
            }
        }
    }

    private static string Basis(GroupedOutlier outlier, int sweeps, GeneralisedEsd alone, int rank) => string.Create(
        CultureInfo.InvariantCulture,
        $"Against the scatter of {sweeps} repeated sweeps t = {outlier.T:0.0} on {outlier.DegreesOfFreedom} degrees of freedom, probability {outlier.Probability:0.0e+0}; in its own group extreme studentised deviate {alone.Statistics[rank]:0.00} against {alone.CriticalValues[rank]:0.00}. Told from {WorthTellingDb} dB on.");

    private Finding Found(RepeatGroup group, Sweep sweep, double size, string message, string basis) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = group.Role,
        Specimen = group.Specimen,
        Sweep = sweep.Name,
        Size = new Decibels(size),
        Message = message + " It stays in the result, and widens its intervals.",
        Basis = basis,
        NextStep = "Look what was different (a cable touched, a person in the way, a setting). If you know, exclude the sweep with that reason in sweeps.csv and take it again; if not, take more sweeps.",
    };
}
