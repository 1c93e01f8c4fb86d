using System.Globalization;
using SweepStats.Checks;
using SweepStats.Report.Screens;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;

namespace SweepStats.Report.Findings;

/// <summary>What every check looked at and how it ended.</summary>
internal static class CheckWords
{
    internal const string LookedAt = "What was looked at";
    internal const string NothingFoundBy = "nothing found";

    // More of them are a list that nobody reads.
    private const int MostNamed = 4;

    internal static readonly string[] CheckColumns = ["Looked for", "Check", "Outcome"];

    private static readonly Dictionary<string, string> Looked = new(StringComparer.Ordinal)
    {
        ["files-unread"] = "Files that could not be read and were left out",
        ["duplicate-sweep"] = "Sweeps that are copies",
        ["near-copy"] = "Sweeps too alike to be two",
        ["wrong-kind"] = "Sweeps that read like those of another kind",
        ["lost-sign"] = "Levels without their minus sign",
        ["wrong-unit"] = "Levels in another unit than is given",
        ["not-in-place"] = "A specimen that shields nothing, as if it was not in place",
        ["nothing-heard"] = "Specimens behind which nothing but noise is heard, as if the source was off",
        ["stray-placement"] = "A placement far from the others of its specimen",
        ["no-floor"] = "A floor that is missing, or declared and not measured",
        ["dead-floor"] = "Floor sweeps that show no noise",
        ["no-life"] = "Sweeps that do not move, or stand at the bottom of the display",
        ["over-input"] = "Levels against the receiver's maximum input",
        ["saturation-plateau"] = "Overload: flat tops",
        ["source-step"] = "A step of the source that shows in more than full",
        ["saturation-step"] = "Overload: a step of the source that does not show in full",
        ["under-ranged"] = "Too little dynamic range for what is asked",
        ["leakage"] = "Ways round the specimen",
        ["two-ways"] = "A path that looks different from its other end",
        ["drift"] = "A level that moves while the sweeps are taken",
        ["reference-once"] = "A reference taken on one side of the specimens only",
        ["floor-moved"] = "A floor that is not where it was measured",
        ["floor-unsteady"] = "Floor sweeps on different levels",
        ["foreign-floor"] = "A floor of other settings than the covered sweeps",
        ["odd-sweep"] = "A sweep unlike those that repeat it",
        ["two-levels"] = "Sweeps that repeat each other on two levels",
        ["restless-sweeps"] = "Sweeps that scatter far more than the others do",
        ["odd-specimen"] = "A specimen that shields far more than the others of its lot",
        ["sweeps-alike"] = "Sweeps that resemble the one before, and are worth fewer repeats",
        ["non-normal"] = "Scatter that intervals from few sweeps do not suppose",
        ["capped"] = "Covered levels that the floor hides",
        ["too-few-repeats"] = "Too few repeats for an interval",
        ["requirement-beyond"] = "A requirement beyond the band that was analysed",
        ["grid-mismatch"] = "Sweeps on different frequencies",
        ["settings-changed"] = "Settings that differ between sweeps that are compared",
        ["negative-shielding"] = "More with the specimen than without it",
        ["ambient"] = "Something that transmits while the source is off",
        ["late-transmitter"] = "Covered levels that stand alone, as of a transmitter that came after the floor",
        ["below-thermal"] = "A floor below thermal noise",
        ["suspected-floor"] = "Covered levels that look like noise far above the floor",
        ["averaging-doubtful"] = "A stated averaging that the scatter of the sweeps does not fit",
        ["near-floor"] = "Covered levels that noise adds to",
        ["quantised"] = "Levels shown in coarse steps",
        ["averaging-unknown"] = "Averaging that is not stated",
        ["placement-effect"] = "Placements that differ by more than sweeps repeat",
        ["placement-unknown"] = "Placements that are not named",
        ["linearity-untested"] = "A test of overload that is missing",
    };

    /// <summary>Which checks could not be made, in one sentence.</summary>
    internal static string Untested(AnalysisResult result)
    {
        string[] codes = [.. result.Checks.Where(c => (c.UntestedBecause ?? c.LeftBecause) is not null).Select(c => c.Code)];
        return codes.Length == 0 ? "Every check could be made."
            : codes.Length > MostNamed ? string.Create(CultureInfo.InvariantCulture,
                $"{codes.Length} of {result.Checks.Length} checks could not be made, or not wholly, for want of sweeps or "
                    + $"statements.")
            : $"Not tested, or not wholly, for want of sweeps or statements: {string.Join("; ", codes.Select(InPassing))}.";
    }

    internal static string InPassing(string code) =>
        LooksFor(code) is { } words ? char.ToLowerInvariant(words[0]) + words[1..] : code;

    /// <summary>What a check looks for, in a few words; null where no words are laid down.</summary>
    internal static string? LooksFor(string code) => Looked.GetValueOrDefault(code);

    /// <summary>Each check with its outcome.</summary>
    internal static IEnumerable<IReadOnlyList<string>> ChecksMade(AnalysisResult result) =>
        result.Checks.Select(c => (IReadOnlyList<string>)[LooksFor(c.Code) ?? c.Code, c.Code, CheckOutcome(result, c)]);

    /// <summary>How a check ended: what it found, "nothing found", or why it could not be made.</summary>
    internal static string CheckOutcome(AnalysisResult result, CheckRun run)
    {
        string[] found = [.. result.Findings.Where(f => f.Code == run.Code).GroupBy(f => f.Severity).OrderByDescending(g => g.Key)
            .Select(g => Told([.. g], SummaryWords.Weight(g.Key).ToLowerInvariant()))];
        string told = found.Length > 0 ? "found: " + string.Join(", ", found) : NothingFoundBy;
        return run.UntestedBecause is { } reason ? $"could not be tested: {reason}"
            : run.LeftBecause is { } left ? $"{told}; beyond that nothing could be looked at: {left}" : told;
    }

    // Counted as the page and the rule of the verdict tell them: one for all the specimens that it concerns.
    private static string Told(Finding[] findings, string noun)
    {
        int specimens = findings.Select(f => f.Specimen).OfType<SpecimenName>().Distinct().Count();
        return Count(FindingGroup.Of(findings).Count(), noun)
            + (specimens > 1 ? $" ({Count(specimens, "specimen")})" : string.Empty);
    }

    /// <summary>
    /// The checks for the console: those that found nothing in one line, and a line for each that could not be made.
    /// </summary>
    internal static IEnumerable<string> ChecksInBrief(AnalysisResult result)
    {
        string[] clear = [.. result.Checks.Where(c => CheckOutcome(result, c) == NothingFoundBy).Select(c => c.Code)];
        if (clear.Length > 0)
        {
            yield return $"Looked for and not found: {string.Join(", ", clear)}";
        }

        foreach (CheckRun run in result.Checks.Where(c => c.UntestedBecause is not null))
        {
            yield return $"Could not be tested ({run.Code}): {PlainText.Of(run.UntestedBecause!)}";
        }

        foreach (CheckRun run in result.Checks.Where(c => c.LeftBecause is not null))
        {
            yield return $"Looked at in part ({run.Code}): {PlainText.Of(run.LeftBecause!)}";
        }
    }
}
