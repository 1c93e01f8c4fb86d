using SweepStats.Files;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>Takes a trace's own name out of what is said of it, so that what holds for many traces can be said once.</summary>
internal static class SharedWording
{
    /// <summary>The doubt with "the column" or "the trace" for the name.</summary>
    public static ReadFault Of(ReadFault doubt, Trace trace) => doubt with { Problem = Problem(doubt.Problem, trace.Column) };

    /// <summary>
    /// An assumption with "the column" for the name of the trace that it is about; no trace, and its own words, where it names
    /// none.
    /// </summary>
    public static (Trace? About, string Text) Of(string assumption, ImmutableArray<Trace> traces)
    {
        // "column Peak" also stands in "column Peak hold": the longest name is meant.
        Trace? about = traces.Where(t => assumption.Contains(Named(t), StringComparison.Ordinal)).MaxBy(t => t.Column.Length);
        return about is null ? (null, assumption)
            : (about, assumption.Replace(Named(about), "the column ", StringComparison.Ordinal));
    }

    private static string Named(Trace trace) => $"column {trace.Column} ";

    private static string Problem(string problem, string name)
    {
        string shared = problem
            .Replace($"column {name}", "the column", StringComparison.Ordinal)
            .Replace($"trace {name}", "the trace", StringComparison.Ordinal);
        if (shared != problem)
        {
            return shared;
        }

        // S-parameters go without such a word before them.
        return problem.StartsWith($"{name} is ", StringComparison.Ordinal)
            ? "the trace" + problem[name.Length..]
            : problem.Replace($"magnitude of {name} ", "magnitude of the trace ", StringComparison.Ordinal);
    }
}
