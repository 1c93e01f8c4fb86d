using System.Globalization;
using SweepStats.Cli.Look;
using SweepStats.Files.Summaries;
using SweepStats.Report.Text;

namespace SweepStats.Cli.Compare;

/// <summary>What differs between two results, in lines: the answer first, then why, then the figures.</summary>
/// <param name="Earlier">The one result.</param>
/// <param name="Later">The other.</param>
/// <param name="Differences">What differs.</param>
internal sealed record DifferencesText(ResultSummary Earlier, ResultSummary Later, SummaryDifferences Differences)
{
    /// <summary>What the command line calls them, the earlier first.</summary>
    public required IReadOnlyList<string> Folders { get; init; }

    private const int MostNamed = 3, MostWords = 6, LongestWord = 40;

    /// <summary>The lines, from which results these are to how far the figures moved; two where nothing differs.</summary>
    public IEnumerable<string> Lines() => Differences.AreNone ? [Head(), Same()] :
    [
        Head(), .. Answers(), Files(), .. Changed("Plan", Differences.Plan),
        .. Changed("Findings", [.. Differences.Checks.Select(Known)]), .. Changed("Left out", Differences.Excluded),
        .. Names("Specimens", Differences.Specimens), .. Decided(),
        .. Changed("Not told from the best", Differences.Foremost), .. FigureTable.Of(Differences.Figures),
    ];

    private string Head() => $"{PrintedText.Of(Folders[1])} ({Named(Later)}) against {PrintedText.Of(Folders[0])} "
        + $"({(Later.Title == Earlier.Title ? Moment(Earlier) : Named(Earlier))})"
        + (Later.Version == Earlier.Version ? "." : $", of versions {Shown(Later.Version)} and {Shown(Earlier.Version)}.");

    private static string Named(ResultSummary of) => $"{Shown(of.Title)}, {Moment(of)}";

    private static string Moment(ResultSummary of) =>
        of.GeneratedAt.ToUniversalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) + " UTC";

    private string Same() => "Nothing that is compared differs: "
        + $"trust {Shown(Later.Trust)}, requirement {Shown(Later.Requirement)}, "
        + $"{Printed.Count(Later.Specimens.Length, "specimen")}, {Printed.Count(Later.Inputs.Length, "file")}.";

    private IEnumerable<string> Answers() => Differences.Verdict.IsEmpty
        ? [$"The verdict is as before: trust {Shown(Later.Trust)}, requirement {Shown(Later.Requirement)}."]
        : Differences.Verdict.Select(change => $"{Capital(change.Name)}: {Shown(change.Later)}, was {Shown(change.Earlier)}.");

    // Many specimens that went the same way are one line.
    private IEnumerable<string> Decided() => Differences.Outcomes.GroupBy(change => (change.Later, change.Earlier))
        .Select(same => $"Decided: {Listed([.. same.Select(c => Shown(c.Name))], MostNamed)}: {Shown(same.Key.Later)}, "
            + $"was {Shown(same.Key.Earlier)}.");

    private string Files() => Differences.Files.AreNone ? $"Both rest on the same {Printed.Count(Later.Inputs.Length, "file")}."
        : string.Join(' ', Names("Files", Differences.Files));

    private static IEnumerable<string> Names(string of, NameChanges changes)
    {
        if (!changes.AreNone)
        {
            string[] kinds = [.. Kind("changed", changes.Changed), .. Kind("new", changes.New), .. Kind("gone", changes.Gone)];
            yield return $"{of}: {string.Join("; ", kinds)}.";
        }
    }

    private static IEnumerable<string> Kind(string kind, ImmutableArray<string> names) => names.IsEmpty ? []
        : [$"{names.Length} {kind} ({Listed([.. names.Select(Shown)], MostNamed)})"];

    private static IEnumerable<string> Changed(string of, ImmutableArray<WordChange> changes) => changes.IsEmpty ? []
        : [$"{of}: {Listed([.. changes.Select(Told)], MostWords, "; ")}."];

    // A check that a version of the program did not have found nothing, and looked for nothing either.
    private static WordChange Known(WordChange check) =>
        check with { Earlier = check.Earlier ?? "not looked for", Later = check.Later ?? "not looked for" };

    // Long values that differ behind what is shown of them.
    private static string Told(WordChange change) => Shown(change.Later) == Shown(change.Earlier)
        ? $"{Shown(change.Name)} changed"
        : $"{Shown(change.Name)} {Shown(change.Later)}, was {Shown(change.Earlier)}";

    private static string Listed(string[] words, int most, string between = ", ") => words.Length <= most
        ? string.Join(between, words) : $"{string.Join(between, words[..most])}{between}{words.Length - most} more";

    private static string Shown(string? word) => word is null ? "none"
        : PrintedText.Of(word.Length <= LongestWord ? word : word[..(LongestWord - 1)] + "…");

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
