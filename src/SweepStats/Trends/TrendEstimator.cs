using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Trends;

/// <summary>What an ordered factor does to the shielding, and how far along it the requirement is met.</summary>
/// <remarks>
/// The specimen is the independent unit: lines are those of least squares through one value a specimen, frequency by frequency
/// and for the mean over a band. Specimens that are
/// one cloth measured at several values go together more than that; where lots hold specimens at several values, lots that lie
/// apart show it.
/// Nothing is said beyond the values measured. Unit: dB, and dB for each unit of the factor.
/// </remarks>
public static class TrendEstimator
{
    /// <summary>Finds the trend.</summary>
    /// <param name="curves">Shielding of the specimens.</param>
    /// <param name="grid">Their frequencies.</param>
    /// <param name="values">What the campaign says of its specimens: each one's value of the factor among it.</param>
    /// <param name="plan">Name of the factor, bands, requirement, levels.</param>
    /// <param name="findings">What the checks found: what could move the shielding beyond its limits can overturn a
    /// decision.</param>
    /// <returns>The trend; null where the plan names no factor, or there is nothing but the yardstick.</returns>
    /// <exception cref="ArgumentException">A specimen has no value of the factor.</exception>
    public static FactorTrend? Of(
        ImmutableArray<ShieldingCurve> curves, FrequencyGrid grid, ImmutableArray<SpecimenProperty> values, AnalysisPlan plan,
        ImmutableArray<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(plan);
        ImmutableArray<ShieldingCurve> specimens = [.. curves.Where(c => c.Name != plan.Choice.Yardstick)];
        if (plan.Lots.OrderedBy is not { } factor || specimens.IsEmpty)
        {
            return null;
        }

        Dictionary<SpecimenName, double> of = values.Where(v => v.Name == factor && v.Number is not null)
            .ToDictionary(v => v.Specimen, v => v.Number!.Value);
        foreach (SpecimenName name in specimens.Select(c => c.Name).Where(name => !of.ContainsKey(name)))
        {
            throw new ArgumentException($"The specimen {name} has no value of {factor}.", nameof(values));
        }

        specimens = [.. specimens.OrderBy(c => of[c.Name])];
        var design = new FactorDesign([.. specimens.Select(c => c.Name)], [.. specimens.Select(c => of[c.Name])]);
        return Of(factor, design, new TrendFrequencies(design, specimens, grid), plan, findings);
    }

    private static FactorTrend Of(
        string factor, FactorDesign design, TrendFrequencies at, AnalysisPlan plan, ImmutableArray<Finding> findings)
    {
        var whole = new NamedBand(string.Empty, at.Grid.Band);
        ImmutableArray<TrendBand> bands =
            [.. plan.NamedBands.Prepend(whole).Select(band => TrendBands.Of(design, at, band, plan.Confidence))];
        double falseAlarm = 1 - plan.Confidence.Level;
        bool apart = bands[0].LotsApartProbability <= falseAlarm;
        FactorLevel?[] levels =
            [.. Enumerable.Range(0, at.Grid.Count)
                .Select(f => design.Lack != TrendLack.None || apart ? null : at.LevelAt(f, bands[0].IsStraight, falseAlarm))];
        var asked = plan.Rule is { } rule ? new RequirementAlong(rule, design, at.Grid, levels, findings) : null;
        double[] means = TrendBands.Means(at, whole);
        double[] groups = design.Means(means);
        return new FactorTrend
        {
            Factor = factor,
            Confidence = plan.Confidence,
            Specimens = [.. design.Names.Select((name, i) => new FactorSpecimen(name, design.X[i], means[i]))],
            Groups =
            [
                .. design.Values.Select((value, g) =>
                    new FactorGroup(value, design.Members[g].Length, groups[g], asked?.OutcomeAt(value))),
            ],
            Lack = design.Lack,
            Bands = bands,
            Frequencies = [.. levels.Select((level, f) => Frequency(plan, at, f, level) with
            {
                MetUpTo = asked?.At(f)?.MetUpTo,
                NotMetFrom = asked?.At(f)?.NotMetFrom,
            })],
            Requirement = asked?.Told(at, apart, design),
        };
    }

    private static TrendFrequency Frequency(AnalysisPlan plan, TrendFrequencies at, int f, FactorLevel? level) => new()
    {
        At = at.Grid[f],
        Capped = at.Bounds[f].Count(b => b),
        Line = at.Lines[f] is { } line ? new TrendLine(line, at.StraightAt(f), plan.Confidence) : null,
        StraightAdjusted = at.StraightAdjusted[f],
        Required = plan.Requirement?.At(at.Grid[f]),
        Basis = level is null ? TrendBasis.Nothing : level.Between ? TrendBasis.Line : TrendBasis.Groups,
        Level = level,
        ValuesDb = [.. at.Values[f]],
    };
}
