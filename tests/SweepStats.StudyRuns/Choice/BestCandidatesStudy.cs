using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.StudyRuns.Choice;

/// <summary>By which scatter candidates are compared.</summary>
public enum ScatterRule
{
    /// <summary>That of all candidates together, for each of them.</summary>
    Usual,

    /// <summary>Each candidate's own.</summary>
    Own,

    /// <summary>Its own where that is larger, else that of all.</summary>
    Larger,
}

/// <summary>Candidates drawn as normal repeats.</summary>
/// <param name="Candidates">How many.</param>
/// <param name="Repeats">Repeats of each, of standard deviation 1.</param>
/// <param name="Spread">Standard deviation between candidates; 0 makes all alike, and the first counts as the best.</param>
/// <param name="BestScatters">How many times as much the best one scatters.</param>
public sealed record RepeatsCell(int Candidates, int Repeats, double Spread, double BestScatters);

/// <summary>How often the set held the best, and its size.</summary>
/// <param name="Rule">Scatter compared by.</param>
/// <param name="Held">Sets that hold it.</param>
/// <param name="MedianSize">Candidates in the set, median.</param>
public sealed record RepeatsRow(ScatterRule Rule, Tally Held, double MedianSize);

/// <summary>
/// Holds sets of candidates that cannot be told from the best against drawn repeats, without sweeps round them.
/// </summary>
public static class BestCandidatesStudy
{
    private const double Level = 0.05;

    /// <summary>The set-ups.</summary>
    public static ImmutableArray<RepeatsCell> Cells { get; } =
    [
        .. from candidates in new[] { 2, 3, 9, 25 } from repeats in new[] { 2, 3, 5 } from times in new[] { 1.0, 2, 3 }
            select new RepeatsCell(candidates, repeats, 0, times),
        .. from times in new[] { 1.0, 3 } select new RepeatsCell(9, 3, 2, times),
    ];

    /// <summary>Draws sets of candidates and counts, one row a rule.</summary>
    public static ImmutableArray<RepeatsRow> Run(RepeatsCell cell, int sets, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        ScatterRule[] rules = Enum.GetValues<ScatterRule>();
        var found = new (bool Held, int Size)[sets][];
        Parallel.For(0, sets, i =>
        {
            (double[][] repeats, int best) = Draw(cell, new RandomSource(seed + (ulong)i));
            found[i] = [.. rules.Select(rule =>
            {
                bool[] stays = BestCandidates.Among(Candidates(repeats, rule), Level);
                return (stays[best], stays.Count(s => s));
            })];
        });
        return [.. rules.Select((rule, r) => new RepeatsRow(rule, Tally.Over(found.Select(f => (bool?)f[r].Held)),
            Sample.Median([.. found.Select(f => (double)f[r].Size)])))];
    }

    private static (double[][] Repeats, int Best) Draw(RepeatsCell cell, RandomSource random)
    {
        double[] truth = [.. Enumerable.Range(0, cell.Candidates).Select(_ => cell.Spread * random.Normal())];
        int best = Array.IndexOf(truth, truth.Max());
        return ([.. truth.Select((t, c) => Enumerable.Range(0, cell.Repeats)
            .Select(_ => t + ((c == best ? cell.BestScatters : 1) * random.Normal())).ToArray())], best);
    }

    private static CandidateMean[] Candidates(double[][] repeats, ScatterRule rule)
    {
        int count = repeats[0].Length, freedom = repeats.Length * (count - 1);
        double[] squares = [.. repeats.Select(r => Math.Pow(Sample.StandardDeviation(r), 2))];
        double usual = squares.Average();
        return [.. repeats.Select((r, i) =>
        {
            bool own = rule == ScatterRule.Own || (rule == ScatterRule.Larger && squares[i] > usual);
            return new CandidateMean(Sample.Mean(r), Math.Sqrt((own ? squares[i] : usual) / count), own ? count - 1 : freedom,
                false) { CommonScatter = !own };
        })];
    }
}
