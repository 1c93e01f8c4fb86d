using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// The path looked at from its two ends does not show the same: a specimen passes both ways alike (reciprocity).
/// </summary>
/// <remarks>
/// Held against each other is what the specimen changes, covered less reference, so that the two receivers need not read alike.
/// </remarks>
internal sealed class TwoWays : ICheck
{
    // Chance of one false difference over all frequencies of a specimen.
    private const double FalseAlarm = 0.005;
    private const double WorthTellingDb = 0.5;

    /// <inheritdoc/>
    public string Code => "two-ways";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.Leakages.Any(l => l.Subtracted) ? "a leakage was taken out of the path that is measured, and not out of the other"
        : !seen.Campaign.Reference.HasReverse || !seen.Campaign.Covered.Any(c => c.Block.HasReverse)
        ? "the files show the path from one end only"
        : seen.Campaign.Reference.SweepCount < 2 || seen.Campaign.Covered.All(c => c.Block.SweepCount < 2)
            ? "it takes two sweeps of each role" : null;

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (UntestedBecause(seen) is not null)
        {
            yield break;
        }

        for (int i = 0; i < seen.Curves.Length; i++)
        {
            SweepBlock block = seen.Campaign.Covered[i].Block;
            if (!block.HasReverse || block.SweepCount < 2)
            {
                continue;
            }

            double[] apart = [.. Enumerable.Range(0, block.PointCount).Select(f => Apart(seen.Campaign.Reference, block, f))];
            int[] here = [.. Enumerable.Range(0, apart.Length).Where(f => Math.Abs(apart[f]) >= WorthTellingDb)];
            if (here.Length > 0)
            {
                ShieldingCurve curve = seen.Curves[i];
                Bias most = Most(here, apart);
                bool matters = here.Any(f => Materiality.Matters(apart[f], curve.Readings[f]));
                yield return Told(seen, curve, here, most) with
                {
                    Severity = matters ? Severity.Warning : Severity.Note,
                    Bias = matters ? most : null,
                };
            }
        }
    }

    // Which of the two is right nobody knows: the shielding may be that of the other way.
    private static Bias Most(int[] here, double[] apart) =>
        new(Math.Max(0, here.Max(f => apart[f])), Math.Max(0, here.Max(f => -apart[f])));

    private static string Ways(Bias most) => string.Join(" and ", new[]
    {
        most.LowerByDb > 0 ? $"up to {Amount.Db(most.LowerByDb)} less" : null,
        most.HigherByDb > 0 ? $"up to {Amount.Db(most.HigherByDb)} more" : null,
    }.OfType<string>());

    private Finding Told(Evidence seen, ShieldingCurve curve, int[] here, Bias most) => new()
    {
        Code = Code,
        Severity = Severity.Note,
        Role = SweepRole.Covered,
        Specimen = curve.Name,
        Where = Stretches.Where(seen.Campaign.Grid, here.Contains),
        Size = new Decibels(Math.Max(most.LowerByDb, most.HigherByDb)),
        Message = $"At {Amount.OutOf(here.Length, curve.Readings.Length)} the shielding is another when the path is looked at "
            + $"from its other end, {Ways(most)}: a specimen passes both ways alike, so leakage, noise or overload stands in "
            + "one of the two.",
        Basis = string.Create(Amount.Print, $"Covered less reference of S21 against that of S12, beyond the scatter of their "
            + $"sweeps at a level that chance passes somewhere in {FalseAlarm * 100:0.#} % of specimens; told from "
            + $"{WorthTellingDb} dB on."),
        NextStep = "Take the smaller shielding of the two for what can be claimed, and look for a way round the specimen; see "
            + "that neither receiver is overloaded.",
    };

    // Difference of the two shieldings in dB where scatter does not explain it; else 0.
    private static double Apart(SweepBlock reference, SweepBlock covered, int f)
    {
        double[] without = Differences(reference, f), with = Differences(covered, f);
        ReadOnlySpan<Contribution> parts = [Error(without), Error(with)];
        double apart = Sample.Mean(without) - Sample.Mean(with);
        double reach = StudentQuantile.Of(1 - (FalseAlarm / 2 / covered.PointCount))
            .At(WelchSatterthwaite.DegreesOfFreedom(parts)) * WelchSatterthwaite.Combined(parts);
        return Math.Abs(apart) > reach ? apart : 0;
    }

    private static double[] Differences(SweepBlock block, int f) =>
        [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j][f] - block.Reverse(j)[f])];

    private static Contribution Error(double[] values) =>
        new(Sample.StandardDeviation(values) / Math.Sqrt(values.Length), values.Length - 1);
}
