using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Report.Findings;
using SweepStats.Report.Screens;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;

namespace SweepStats.Report.Answer;

/// <summary>How the verdict comes about.</summary>
internal static class RuleWords
{
    internal const string RuleHeading = "How this verdict comes about";

    /// <summary>The rule that <see cref="Verdicts.Judge"/> follows.</summary>
    internal const string TrustRule =
        "One fault is enough: do not rely on the measurement. No fault, but a warning: it can be trusted within limits. "
            + "Neither: it can be trusted, if overload, leakage, drift and putting the specimen back were tested; else what was "
            + "not tested is named. Notes never count.";

    internal const string LimitsCaption = "What the warnings limit";

    internal static readonly string[] LimitColumns = ["Check", "Specimens", "Frequencies"];

    /// <summary>How many faults, warnings and notes there are and which checks they come from, a sentence each.</summary>
    internal static IEnumerable<string> Tally(AnalysisResult result)
    {
        foreach ((Severity severity, string noun) in new[] { (Severity.Fault, "fault"), (Severity.Warning, "warning"),
            (Severity.Note, "note") })
        {
            FindingGroup[] told = [.. FindingGroup.Of(result.Findings.Where(f => f.Severity == severity))];
            yield return told.Length == 0 ? $"No {noun}."
                : $"{Count(told.Length, noun)}, from {string.Join(", ", told.GroupBy(g => g.Code).Select(Source))}.";
        }
    }

    /// <summary>For each warning its check, the specimens and the frequencies that it limits.</summary>
    internal static IEnumerable<IReadOnlyList<string>> Limits(AnalysisResult result) =>
        FindingGroup.Of(result.Findings.Where(f => f.Severity == Severity.Warning))
            .Select(g => (IReadOnlyList<string>)[g.Code, Limited(g, result), LimitedWhere(g)]);

    // One group tells of several specimens at once; how many says how many findings findings.csv has.
    private static string Source(IGrouping<string, FindingGroup> groups)
    {
        Finding[] all = [.. groups.SelectMany(g => g.Findings)];
        int specimens = all.Select(f => f.Specimen).OfType<SpecimenName>().Distinct().Count();
        int lots = all.Select(f => f.Lot).OfType<string>().Distinct().Count(), others = all.Count(f => f.IsOfAll);
        string[] parts = [.. specimens > 0 ? new[] { Count(specimens, "specimen") } : [],
            .. lots > 0 ? new[] { Count(lots, "lot") } : [],
            .. others > 1 ? new[] { $"{Plain(others)} times" } : []];
        return groups.Key + (parts.Length > 0 ? $" ({string.Join(" and ", parts)})" : string.Empty);
    }

    private static string Limited(FindingGroup group, AnalysisResult result)
    {
        int named = group.Findings.Select(f => f.Specimen).Distinct().Count();
        return group.Findings.Any(f => f.IsOfAll) || named == result.Curves.Length ? "all"
            : SummaryWords.SpecimenList(group.Findings);
    }

    private static string LimitedWhere(FindingGroup group)
    {
        if (group.Findings.Any(f => f.Where.IsDefaultOrEmpty))
        {
            return "all";
        }

        string[] places = [.. group.Findings.Select(FindingWords.Stretches).Distinct(StringComparer.Ordinal)];
        return places.Length == 1 ? places[0]
            : $"{SummaryWords.Bands([.. Merged(group.Findings.SelectMany(f => f.Where))])}; not the same for each";
    }

    private static IEnumerable<FrequencyBand> Merged(IEnumerable<FrequencyBand> bands)
    {
        FrequencyBand? open = null;
        foreach (FrequencyBand band in bands.OrderBy(b => b.Start))
        {
            if (open is { } before && band.Start <= before.Stop)
            {
                open = new FrequencyBand(before.Start, band.Stop > before.Stop ? band.Stop : before.Stop);
                continue;
            }

            if (open is { } done)
            {
                yield return done;
            }

            open = band;
        }

        if (open is { } last)
        {
            yield return last;
        }
    }
}
