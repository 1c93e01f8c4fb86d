using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>The frequencies that are analysed, and how the sweeps are brought onto them.</summary>
/// <param name="Grid">The frequencies.</param>
/// <param name="Interpolation">What was interpolated; null where every sweep has all of the frequencies.</param>
internal sealed record AnalysedGrid(FrequencyGrid Grid, Interpolation? Interpolation)
{
    // A floor reading so many steps of the covered sweeps away says nothing of the floor here (common sense, no source).
    private const double FarthestSteps = 5;

    /// <summary>The frequencies that all sweeps share; null where there are none.</summary>
    public static AnalysedGrid? Shared(ImmutableArray<Sweep> sweeps, FrequencyBand? band) =>
        sweeps.IsEmpty ? null : CommonGrid.Of([.. sweeps.Select(s => s.Grid)], band) is { } grid
            ? new AnalysedGrid(grid, null) : null;

    /// <summary>
    /// The frequencies of the covered sweeps with the fewest, as far as the levels of the others can be told there; null where
    /// there are none.
    /// </summary>
    public static AnalysedGrid? Interpolated(ImmutableArray<Sweep> sweeps, FrequencyBand? band)
    {
        double[][] covered =
            [.. sweeps.Where(s => s.Role == SweepRole.Covered).Select(s => s.Grid).Distinct().Select(g => In(g, band))];
        double[] asked = covered.Where(c => c.Length > 0).MinBy(c => c.Length) ?? [];
        GridCurve[] curves = [.. sweeps.GroupBy(s => (s.Role, s.Lot, s.Specimen, s.Grid)).Select(g => new GridCurve([.. g]))];
        var kept = ImmutableArray.CreateBuilder<double>();
        double half = 0;
        foreach (double hertz in asked)
        {
            if (ErrorDb(curves, hertz, FarthestSteps * Step(asked)) is { } error && error <= Interpolation.LargestDb)
            {
                kept.Add(hertz);
                half = Math.Max(half, error);
            }
        }

        return kept.Count == 0 ? null : new AnalysedGrid(new FrequencyGrid(kept.ToImmutable()), new Interpolation
        {
            SweepCount = curves.Where(c => kept.Any(c.IsBetween)).Sum(c => c.SweepCount),
            HalfWidthDb = half,
            FrequenciesLeftOut = asked.Length - kept.Count,
            BetweenSpecimens = covered.Length > 1,
        }).OrPlain();
    }

    /// <summary>For each frequency its place in a sweep.</summary>
    public ImmutableArray<GridPlace> Places(Sweep sweep) => Interpolation is null
        ? GridPlaces.Shared(Grid, sweep.Grid)
        : [.. Grid.Hertz.ToArray().Select(hertz => GridPlaces.Of(sweep.Grid, hertz, sweep.Role == SweepRole.Floor)!.Value)];

    // The farthest of the reference and the farthest of the covered curves; null where a sweep does not reach.
    private static double? ErrorDb(GridCurve[] curves, double hertz, double farthest)
    {
        double reference = 0;
        double covered = 0;
        foreach (GridCurve curve in curves)
        {
            if (curve.BoundDb(hertz) is not { } bound || (curve.Role == SweepRole.Floor && curve.AwayFrom(hertz) > farthest))
            {
                return null;
            }

            reference = curve.Role == SweepRole.Reference ? Math.Max(reference, bound) : reference;
            covered = curve.Role == SweepRole.Covered ? Math.Max(covered, bound) : covered;
        }

        return reference + covered;
    }

    private static double Step(double[] hertz) =>
        hertz.Length < 2 ? double.PositiveInfinity : (hertz[^1] - hertz[0]) / (hertz.Length - 1);

    private static double[] In(FrequencyGrid grid, FrequencyBand? band) =>
        [.. grid.Hertz.ToArray().Where(hertz => band is not { } limits || limits.Contains(new Hertz(hertz)))];

    private AnalysedGrid OrPlain() =>
        Interpolation is { SweepCount: 0, FrequenciesLeftOut: 0 } ? this with { Interpolation = null } : this;
}
