using SweepStats.Statistics;

namespace SweepStats.Repeats;

/// <summary>Whether repeats of one level, sweeps or placements, are alike where they follow each other. Immutable.</summary>
public sealed record SerialLevel
{
    // Half of the chance of a false alarm is for what all frequencies share, which shows on few degrees of freedom; the rest
    // shows on many.
    private const double OfWhole = 0.5;
    private const double OfRest = 0.25;
    private const double OfKinds = 0.25;

    private SerialLevel()
    {
    }

    /// <summary>Whether the repeats are placements; else sweeps.</summary>
    public required bool OfPlacements { get; init; }

    /// <summary>Groups of three repeats and more that were looked at.</summary>
    public required int GroupCount { get; init; }

    /// <summary>Repeats in them.</summary>
    public required int RepeatCount { get; init; }

    /// <summary>
    /// Mean ratio of slow to quick changes of what is left at each frequency: 0 for independent repeats, at most cos(π/n).
    /// </summary>
    public required double Ratio { get; init; }

    /// <summary>The same of what all frequencies share.</summary>
    public required double WholeRatio { get; init; }

    /// <summary>Chance of as much likeness among independent repeats, the number of questions allowed for.</summary>
    public required double Probability { get; init; }

    /// <summary>How repeats of each kind scatter; empty where they are taken as independent.</summary>
    internal ImmutableDictionary<RepeatKind, LastingScatter> Lasting { get; private init; } =
        ImmutableDictionary<RepeatKind, LastingScatter>.Empty;

    /// <summary>Looks at all series of one level.</summary>
    /// <param name="series">The series.</param>
    /// <param name="kinds">Kinds that the level holds.</param>
    /// <param name="falseAlarm">Chance below which repeats are taken to go together.</param>
    /// <param name="threads">Threads to use; what is found does not depend on it.</param>
    /// <returns>What was found; null where no series has three repeats that scatter.</returns>
    internal static SerialLevel? Of(
        ImmutableArray<RepeatSeries> series, ImmutableArray<RepeatKind> kinds, double falseAlarm, int threads)
    {
        ImmutableArray<RepeatSeries> own = [.. series.Where(s => kinds.Contains(s.Kind))];
        SerialRows[][] byKind = [.. own.GroupBy(s => s.Kind).Select(k => k.Select(s => s.Rest).ToArray())];
        SerialRows[][] asked =
            [[.. own.Select(s => s.Whole)], [.. own.Select(s => s.Rest)], .. byKind.Length > 1 ? byKind : []];
        SuccessionTest?[] tests = SideBySide.Of(asked.Length, threads, i => SuccessionTest.Of(asked[i]));
        (SuccessionTest? whole, SuccessionTest? rest) = (tests[0], tests[1]);
        if ((whole ?? rest) is null)
        {
            return null;
        }

        double[] single = [.. tests.Skip(2).Select(test => test?.Probability).OfType<double>()];
        double probability = new[]
        {
            (whole?.Probability ?? 1) / OfWhole,
            (rest?.Probability ?? 1) / (OfRest + (single.Length > 0 ? 0 : OfKinds)),
            single.Length > 0 ? single.Min() * single.Length / OfKinds : 1,
        }.Min();
        ImmutableArray<RepeatSeries> telling = [.. own.Where(s => s.Count >= SuccessionRatio.FewestRows && Scatters(s))];
        var found = new SerialLevel
        {
            OfPlacements = kinds.Contains(RepeatKind.Placement),
            GroupCount = telling.Length,
            RepeatCount = telling.Sum(s => s.Count),
            Ratio = rest?.Ratio ?? 0,
            WholeRatio = whole?.Ratio ?? 0,
            Probability = Math.Min(1, probability),
        };
        return probability < falseAlarm ? found with { Lasting = Scatter(own, kinds) } : found;
    }

    // Each kind, and each of its two parts, goes by what all of them say together, unless its own repeats contradict that.
    private static ImmutableDictionary<RepeatKind, LastingScatter> Scatter(
        ImmutableArray<RepeatSeries> series, ImmutableArray<RepeatKind> kinds)
    {
        double[] columns = IndependentColumns.Of([.. series.Select(s => s.Rest)]);
        SerialLikelihood[] whole = [.. series.Select(s => SerialLikelihood.Of(s.Whole, 1))];
        SerialLikelihood[] rest = [.. series.Select((s, i) => SerialLikelihood.Of(s.Rest, columns[i]))];
        SerialLikelihood all = Together([.. whole, .. rest]);
        int most = series.Max(s => s.Count);
        SerialLikelihood Told(SerialLikelihood[] own) => Together(own) is var said && said.Contradicts(all, most) ? said : all;
        return kinds.ToImmutableDictionary(kind => kind, kind =>
        {
            // A kind without a series of its own that scatters is taken to scatter as all.
            int[] own = [.. Enumerable.Range(0, series.Length).Where(i => series[i].Kind == kind && Scatters(series[i]))];
            return LastingScatter.Of(
                own.Length > 0 ? [.. own.Select(i => series[i])] : series,
                Told([.. own.Select(i => whole[i])]),
                Told([.. own.Select(i => rest[i])]));
        });
    }

    private static bool Scatters(RepeatSeries series) => series.Whole.Scatters || series.Rest.Scatters;

    private static SerialLikelihood Together(SerialLikelihood[] parts) =>
        parts.Aggregate(SerialLikelihood.Nothing, (all, one) => all.With(one));
}
