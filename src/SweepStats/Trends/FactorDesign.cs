using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Trends;

/// <summary>The values of the ordered factor, specimen by specimen.</summary>
internal sealed class FactorDesign
{
    // Two values always lie on a line, and one specimen more than parameters and a value shows nothing of scatter.
    private const int FewestValues = 3, FewestSpecimens = 4;

    /// <summary>Specimens and their values, in the same order.</summary>
    public FactorDesign(ImmutableArray<SpecimenName> names, ImmutableArray<double> x)
    {
        (Names, X) = (names, x);
        Values = [.. x.Distinct().Order()];
        Members = [.. Values.Select(v => Enumerable.Range(0, x.Length).Where(i => x[i] == v).ToArray())];
    }

    /// <summary>The specimens.</summary>
    public ImmutableArray<SpecimenName> Names { get; }

    /// <summary>Value of each specimen.</summary>
    public ImmutableArray<double> X { get; }

    /// <summary>Values that differ, rising.</summary>
    public ImmutableArray<double> Values { get; }

    /// <summary>Places of the specimens at each value.</summary>
    public ImmutableArray<int[]> Members { get; }

    /// <summary>Specimens less values: what repeats leave for the scatter.</summary>
    public int PureDegrees => X.Length - Values.Length;

    /// <summary>What is missing for a line: three values that differ, and four specimens.</summary>
    public TrendLack Lack =>
        Values.Length < FewestValues ? TrendLack.Values : X.Length < FewestSpecimens ? TrendLack.Specimens : TrendLack.None;

    /// <summary>What belongs to each specimen, lot by lot, beside its value.</summary>
    public IReadOnlyList<PairGroup> ByLot(double[] y) =>
        [.. Enumerable.Range(0, X.Length).GroupBy(i => Names[i].Lot)
            .Select(lot => new PairGroup([.. lot.Select(i => X[i])], [.. lot.Select(i => y[i])]))];

    /// <summary>Means at each value.</summary>
    public double[] Means(double[] y) => [.. Members.Select(m => m.Average(i => y[i]))];
}
