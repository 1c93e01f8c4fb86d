using SweepStats.Checks;

namespace SweepStats.StudyRuns.Trust;

/// <summary>
/// Measures how often the checks cry out on campaigns in which nothing is wrong, and how often they find a fault of known size.
/// </summary>
/// <remarks>
/// Campaigns go the whole way through the product. The same cell, number of campaigns and seed give the same counts.
/// </remarks>
public static class TrustStudy
{
    /// <summary>Findings on clean campaigns.</summary>
    /// <param name="cell">Circumstances.</param>
    /// <param name="campaigns">Campaigns to draw.</param>
    /// <param name="seed">Seed of all draws.</param>
    public static AlarmTally Clean(CleanCell cell, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        AlarmTally tally = AlarmTally.Empty;
        for (int i = 0; i < campaigns; i++)
        {
            tally = tally.With(cell.Case(i).Run(Seed(seed, i)).Findings);
        }

        return tally;
    }

    /// <summary>How often a fault is found.</summary>
    /// <param name="curve">The fault.</param>
    /// <param name="size">Its size.</param>
    /// <param name="campaigns">Campaigns to draw.</param>
    /// <param name="seed">Seed of all draws.</param>
    public static DetectionRow Detect(FaultCurve curve, double size, int campaigns, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(curve);
        TrustCase faulty = curve.Of(size);
        int found = 0;
        int warned = 0;
        for (int i = 0; i < campaigns; i++)
        {
            Finding[] about = [.. faulty.Run(Seed(seed, i)).Findings.Where(f => f.Code == curve.Code && curve.IsAbout(f))];
            found += about.Length > 0 ? 1 : 0;
            warned += Array.Exists(about, f => f.Severity != Severity.Note) ? 1 : 0;
        }

        return new DetectionRow(curve.Code, curve.Name, curve.Unit, size, campaigns, found, warned);
    }

    private static ulong Seed(ulong seed, int number) => unchecked((seed * 1_000_003) + (ulong)number);
}
