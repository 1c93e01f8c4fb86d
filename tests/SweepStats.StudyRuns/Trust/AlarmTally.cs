using System.Collections.Immutable;
using SweepStats.Checks;

namespace SweepStats.StudyRuns.Trust;

/// <summary>How often each check spoke up. Immutable.</summary>
/// <param name="Campaigns">Campaigns looked at.</param>
/// <param name="AnyWarned">Those with a warning or fault of any check.</param>
/// <param name="Warned">Those with a warning or fault, by the check's code.</param>
/// <param name="Noted">Those with a note, by the check's code.</param>
public sealed record AlarmTally(int Campaigns, int AnyWarned, ImmutableSortedDictionary<string, int> Warned,
    ImmutableSortedDictionary<string, int> Noted)
{
    /// <summary>Nothing looked at yet.</summary>
    public static AlarmTally Empty { get; } = new(
        0, 0, ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal),
        ImmutableSortedDictionary.Create<string, int>(StringComparer.Ordinal));

    /// <summary>With the findings of one more campaign.</summary>
    public AlarmTally With(ImmutableArray<Finding> findings)
    {
        string[] warned = [.. findings.Where(f => f.Severity != Severity.Note).Select(f => f.Code).Distinct()];
        string[] noted = [.. findings.Where(f => f.Severity == Severity.Note).Select(f => f.Code).Distinct()];
        return new AlarmTally(Campaigns + 1, AnyWarned + (warned.Length > 0 ? 1 : 0), More(Warned, warned), More(Noted, noted));
    }

    private static ImmutableSortedDictionary<string, int> More(ImmutableSortedDictionary<string, int> counts, string[] codes) =>
        codes.Aggregate(counts, (all, code) => all.SetItem(code, all.GetValueOrDefault(code) + 1));
}
