namespace SweepStats.Doubts;

/// <summary>Doubts of single readings that stand at an end of what the receiver shows.</summary>
internal static class OverloadDoubts
{
    /// <summary>Doubts of one specimen, one a frequency; empty where there are none.</summary>
    /// <param name="points">Number of frequencies.</param>
    /// <param name="referenceOverloaded">Whether the reference reads too low at a frequency.</param>
    /// <param name="coveredOverloaded">Where the covered level reads too low; empty for nowhere.</param>
    /// <param name="coveredAtBottom">Where the covered level is cut off from below, or does not live; empty for nowhere.</param>
    public static ImmutableArray<ReadingDoubts> Of(
        int points, Func<int, bool> referenceOverloaded, ImmutableArray<bool> coveredOverloaded,
        ImmutableArray<bool> coveredAtBottom)
    {
        ImmutableArray<ReadingDoubts> doubts =
        [
            .. Enumerable.Range(0, points).Select(f =>
                (referenceOverloaded(f) ? ReadingDoubts.ReferenceOverloaded : ReadingDoubts.None)
                | (Holds(coveredOverloaded, f) ? ReadingDoubts.CoveredOverloaded : ReadingDoubts.None)
                | (Holds(coveredAtBottom, f) ? ReadingDoubts.CoveredAtBottom : ReadingDoubts.None)),
        ];
        return doubts.Any(d => d != ReadingDoubts.None) ? doubts : [];
    }

    private static bool Holds(ImmutableArray<bool> points, int f) => !points.IsEmpty && points[f];
}
