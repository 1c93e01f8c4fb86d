namespace SweepStats.StudyRuns;

/// <summary>How often something happened. Immutable.</summary>
/// <param name="Count">Times it did.</param>
/// <param name="Of">Times it could have.</param>
public readonly record struct Tally(int Count, int Of)
{
    /// <summary>Share of the times, 0 to 1; not a number where there were none.</summary>
    public double Share => (double)Count / Of;

    /// <summary>Counts what is known; null is not counted.</summary>
    internal static Tally Over(IEnumerable<bool?> trials)
    {
        bool[] known = [.. trials.OfType<bool>()];
        return new Tally(known.Count(k => k), known.Length);
    }
}
