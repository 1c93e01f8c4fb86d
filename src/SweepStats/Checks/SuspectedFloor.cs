using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Where no floor was measured: covered sweeps that no longer look like each other have probably reached the receiver's noise.</summary>
/// <remarks>
/// Antennas, cables and rooms give the reference a shape over frequency that repeats from sweep to sweep, and the covered sweeps inherit it: window by window
/// they resemble each other by r = A²/(A² + s²), A the reference's shape and s the covered scatter. In noise s stays and the resemblance goes. Where the shape
/// is too small against the scatter nothing can be told.
/// </remarks>
internal sealed class SuspectedFloor : ICheck
{
    private const int FewestHalfWidth = 20;

    // Shapes of antennas and cables stretch over a good part of the band, however finely it was swept; windows overlap by nine tenths.
    private const int HalfWidthsOfBand = 7;
    private const int StepsOfHalfWidth = 5;
    private const double TellableResemblance = 0.2;
    private const double ClearOfDeclaredDb = 10;

    // One-sided, 99 %: the resemblance that may still hide behind chance.
    private const double UpperScore = 2.326;

    public string Code => "suspected-floor";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Floor is { Source: FloorSource.Measured })
        {
            yield break;
        }

        double[][] reference = Rows(seen.Campaign.Reference);
        foreach (SpecimenBlock specimen in seen.Campaign.Covered.Where(c => c.Block.SweepCount >= 2))
        {
            double[][] covered = Rows(specimen.Block);
            int half = Math.Max(FewestHalfWidth, seen.Campaign.Grid.Count / HalfWidthsOfBand);
            bool[] lost = Lost(reference, covered, half);
            for (int f = 0; f < lost.Length; f++)
            {
                lost[f] &= seen.Floor is not { } declared || covered.Average(s => s[f]) >= declared.LevelDb[f] + ClearOfDeclaredDb;
            }

            int count = lost.Count(l => l);
            if (count > half / 2)
            {
                double highest = Enumerable.Range(0, lost.Length).Where(f => lost[f]).Average(f => covered.Average(s => s[f]));
                yield return new Finding
                {
                    Code = Code,
                    Severity = Severity.Warning,
                    Role = SweepRole.Covered,
                    Specimen = specimen.Name,
                    Where = Stretches.Where(seen.Campaign.Grid, f => lost[f]),
                    Message = string.Create(CultureInfo.InvariantCulture, $"At {Amount.OutOf(count, lost.Length)} the covered sweeps do not show the reference's shape, nor resemble each other: what they show there, about {highest:0} on the level scale, is probably the receiver's own noise."),
                    Basis = string.Create(CultureInfo.InvariantCulture, $"Correlation of {covered.Length} covered sweeps with each other over {(2 * half) + 1} neighbouring frequencies, straight line taken out: its 99 % upper limit is below half of what the reference's shape would give there."),
                    NextStep = "Take floor sweeps: source off, all receiver settings as they are, three at least. Where they come out at this level, the shielding is at least what is shown, not equal to it.",
                };
            }
        }
    }

    private static double[][] Rows(SweepBlock block) => [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j].ToArray())];

    private static bool[] Lost(double[][] reference, double[][] covered, int half)
    {
        var lost = new bool[reference[0].Length];
        int step = half / StepsOfHalfWidth;
        for (int point = step / 2; point < lost.Length; point += step)
        {
            if (IsLost(reference, covered, (Math.Max(0, point - half), Math.Min(lost.Length, point + half + 1))))
            {
                lost.AsSpan(point - (step / 2), Math.Min(step, lost.Length - point + (step / 2))).Fill(true);
            }
        }

        return lost;
    }

    private static bool IsLost(double[][] reference, double[][] covered, (int First, int End) window)
    {
        (int first, int count) = (window.First, window.End - window.First);
        if (count < FewestHalfWidth)
        {
            return false;
        }

        double[][] shapes = [.. reference.Select(s => Straightened(s.AsSpan(first, count)))];
        double[][] looks = [.. covered.Select(s => Straightened(s.AsSpan(first, count)))];
        double shape = SharedVariance(shapes);
        double scatter = OwnVariance(looks);
        double expected = shape / (shape + scatter);
        if (!(expected >= TellableResemblance))
        {
            return false;
        }

        var alike = PairwiseCorrelation.Of(looks);
        double limit = Math.Tanh(alike.FisherMean + (UpperScore / Math.Sqrt(alike.Pairs * (Independent(looks) - 3))));
        return limit < expected / 2;
    }

    // Two numbers go with the straight line; of neighbours that resemble each other by ρ fewer count: m(1 − ρ²)/(1 + ρ²).
    private static double Independent(double[][] rows)
    {
        double alike = Math.Clamp(Autocorrelation.Lag1(rows[0]), 0, 0.95);
        return Math.Max(5, (rows[0].Length - 2) * (1 - (alike * alike)) / (1 + (alike * alike)));
    }

    private static double[] Straightened(ReadOnlySpan<double> row)
    {
        double[] x = [.. Enumerable.Range(0, row.Length).Select(i => (double)i)];
        RegressionLine line = RegressionLine.Of(x, row);
        double[] rest = row.ToArray();
        for (int i = 0; i < rest.Length; i++)
        {
            rest[i] -= line.Intercept + (line.Slope.Value * i);
        }

        return rest;
    }

    // Mean product of different sweeps: their own scatter drops out.
    private static double SharedVariance(double[][] rows)
    {
        if (rows.Length < 2)
        {
            return Deviations.Product(rows[0], rows[0]) / rows[0].Length;
        }

        double sum = 0;
        for (int j = 1; j < rows.Length; j++)
        {
            for (int i = 0; i < j; i++)
            {
                sum += Deviations.Product(rows[i], rows[j]) / rows[0].Length;
            }
        }

        return Math.Max(0, sum / (rows.Length * (rows.Length - 1) / 2));
    }

    private static double OwnVariance(double[][] rows) =>
        Math.Max(0, rows.Average(r => Deviations.Product(r, r) / r.Length) - SharedVariance(rows));
}
