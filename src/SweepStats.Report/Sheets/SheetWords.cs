using System.Globalization;
using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Report.Answer;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Report.Sheets;

/// <summary>Sentences of the two sheets: what stands here is signed, so every one of them is short and true by itself.</summary>
internal static class SheetWords
{
    internal const string Blank = "______";
    internal const string Mark = "Drawn by rehearse, not measured";
    internal const string VerdictHeading = "Verdict";
    internal const string TableHeading = "Each specimen";
    internal const string LimitsHeading = "What limits it, and what to do";
    internal const string TrendHeading = "Trend";
    internal const string LotsHeading = "Lots";
    internal const string ChoiceHeading = "Choice";
    internal const string SetupHeading = "Set-up and method";
    internal const string SignedHeading = "Signed";
    internal const string AnnexHeading = "Annex";
    internal const string AnnexMeans =
        "Everything behind the two sheets, a subject each. Open what you want to read; all is printed.";
    internal const string Standards =
        "After IEEE Std 299-2006 (set-up, repeated reference), JCGM 100:2008, 101:2008 (uncertainty), 106:2012 (decision).";

    internal static readonly string[] Cautions =
    [
        "For the measured specimens, geometry and set-up only. No proof that persons or equipment are protected.",
        "Local codes, exposure limits and licensed practice prevail.",
    ];

    internal static readonly string[] Signatures = ["Measured by", "Checked by"];
    internal static readonly string[] SignatureParts = ["name", "date", "signature"];

    internal static string SheetNumber(int sheet) => sheet == 1 ? "Sheet 1 of 2" : "Sheet 2 of 2";

    /// <summary>What the picture shows, as its title.</summary>
    internal static string PictureTitle(AnalysisResult result)
    {
        BandStatement[] claimed = [.. result.Bands.Where(b => b.AtLeast is not null)];
        string face = result.Verdict.Trust == Trust.Untrustworthy ? "At face value only: " : string.Empty;
        if (claimed.MinBy(b => b.AtLeast!.Value.Value) is not { AtLeast: { } least } weakest)
        {
            return face + "No claim holds over the whole band.";
        }

        string where =
            $"{Named(weakest.Name)}{(weakest.WeakestAt is { } at ? $" at {PrintedFrequency.Frequency(at)}" : string.Empty)}";
        string claim = $"SE {PrintedLevel.Bound(least)} ({Printed.Level(result.Plan.Confidence)})";
        int without = result.Bands.Length - claimed.Length;
        return face + (without > 0
            ? $"No claim holds for {Printed.Count(without, "specimen")}. The lowest of the others: {claim}, {where}."
            : result.Bands.Length == 1 ? $"{claim}, weakest: {where}."
            : $"Every specimen: {claim}. Weakest: {where}.");
    }

    /// <summary>How to read the picture, as far as it shows each thing.</summary>
    internal static IEnumerable<string> PictureKey(AnalysisResult result, ShieldingCurve drawn)
    {
        string name = Named(drawn.Name);
        if (drawn.Readings.Any(r => r is ShieldingReading.Measured))
        {
            yield return $"Line: {name}.";
        }

        if (drawn.Readings.Any(r => r is ShieldingReading.Unrepeated))
        {
            yield return $"Dotted: {name}, {SpecimenChartWords.UnrepeatedLegend}.";
        }

        yield return result.Curves.Length == 1 ? $"Band: its {Printed.Level(result.Plan.Confidence)} interval."
            : $"Band: lowest to highest of {Printed.Count(result.Curves.Length, "specimen")}.";
        if (result.Curves.Any(c => c.Readings.Any(r => r is ShieldingReading.AtLeast)))
        {
            yield return "Arrow: at least so much.";
        }

        if (result.Curves.Any(c => c.Readings.Any(r => r.Evidence.DynamicRange is not null)))
        {
            yield return "Background: as far as this set-up can see.";
        }

        if (VerdictWords.Unmeasured(result.Campaign.Grid) is { } gaps)
        {
            yield return gaps;
        }

        if (result.Plan.Requirement is { } asked)
        {
            yield return $"Dashed: required {VerdictWords.Required(asked, result.Campaign.Grid)}.";
        }
    }

    /// <summary>The picture for a person who cannot see it.</summary>
    internal static string PictureShows(AnalysisResult result, SpecimenName drawn) =>
        $"Shielding over frequency, {PrintedFrequency.Band(result.Campaign.Grid.Band)}. {PictureTitle(result)} "
            + $"Drawn by itself: {PrintedNames.SpecimenLabel(drawn)}.";

    /// <summary>The course of a curve in words.</summary>
    internal static string Course(ShieldingCurve curve)
    {
        double[] values = [.. curve.Readings.OfType<ShieldingReading.Measured>().Select(m => m.Shielding.Value.Value)];
        int bounds = curve.Readings.Count(r => r is ShieldingReading.AtLeast);
        string known = values.Length == 0 ? "no value"
            : $"{PrintedLevel.Ratio(values.Min())} to {PrintedLevel.Ratio(values.Max())}";
        string open = bounds == 0 ? string.Empty : $", {Printed.Count(bounds, "bound")}";
        return $"{PrintedNames.SpecimenLabel(curve.Name)} over frequency: {known}{open}";
    }

    internal static string[] TableColumns(AnalysisResult result) =>
    [
        "Specimen", "Everywhere at least", .. result.Plan.Requirement is null ? Array.Empty<string>() : ["Requirement"],
        "Weakest at", "Band mean", "Over frequency",
    ];

    internal static string TableCaption(AnalysisResult result) =>
        (result.Verdict.Trust == Trust.Untrustworthy ? "At face value only, not to be claimed. " : string.Empty)
            + $"“≥” is a lower bound. Each statement holds by itself at {Printed.Level(result.Plan.Confidence)}.";

    /// <summary>What can be said of the specimens that the table leaves out.</summary>
    internal static string Others(AnalysisResult result, IReadOnlyCollection<BandStatement> others)
    {
        var names = others.Select(o => o.Name).ToHashSet();
        string[] stand =
            [.. result.Verdict.Specimens.Where(s => names.Contains(s.Name)).GroupBy(s => s.Outcome).OrderBy(g => g.Key)
            .Select(g => $"{Printed.Plain(g.Count())} {RequirementWords.Stands(result, g.First().Name)}")];
        int silent = others.Count(o => o.AtLeast is null);
        string claim = silent == others.Count ? "nothing is claimed of them"
            : $"each at least {PrintedLevel.Ratio(others.Where(o => o.AtLeast is not null).Min(o => o.AtLeast!.Value.Value))}"
                + (silent == 0 ? string.Empty : $" but {Printed.Plain(silent)}, of which nothing is claimed");
        string asked = stand.Length == 0 ? string.Empty : $"; requirement: {string.Join(", ", stand)}";
        return $"The other {Printed.Count(others.Count, "specimen")}: {claim}{asked}. All in bands.csv.";
    }

    /// <summary>What would test a doubt.</summary>
    internal static string ToTest(UntestedDoubt doubt) => doubt switch
    {
        UntestedDoubt.Overload =>
            "Next: Step the source down by 10 dB and take these sweeps as linearity sweeps, with their source_dbm.",
        UntestedDoubt.Leakage => "Next: Put a solid metal plate in place of the specimen and take plate sweeps.",
        UntestedDoubt.PuttingBack => "Next: Take each specimen off, put it back, and name the placements.",
        _ => "Next: Take the reference before and after the specimens, and let the sweeps carry their times.",
    };

    internal static string MoreFindings(int count) => $"{Printed.Count(count, "more finding")}: “What to do next” in the annex.";

    /// <summary>The candidates for a person who cannot see them.</summary>
    internal static string ChoiceShows(SpecimenChoice choice, BandRanking band) =>
        $"Mean shielding, {(choice.MayRank ? "best first" : "no winner named")}: "
            + $"{string.Join("; ", band.Ranking.Take(ChoicePicture.Most).Select(Candidate))}.";

    internal static string ChoiceKey(SpecimenChoice choice, BandRanking band)
    {
        string[] parts =
        [
            ChoicePicture.Rows(band).Any(r => ChoicePicture.Fills(choice, r)) ? "Filled: may be best. Each group by lower limit."
                : "Values with their intervals, none shown to be the best.",
            .. band.Ranking.Length <= ChoicePicture.Most ? Array.Empty<string>()
                : [$"{Printed.Count(band.Ranking.Length - ChoicePicture.Most, "more specimen")}: choice.csv."],
        ];
        return string.Join(' ', parts);
    }

    /// <summary>How to read the picture of the lots, as far as it shows each thing; null where it explains itself.</summary>
    internal static string? LotsKey(AnalysisResult result)
    {
        string[] parts =
        [
            .. result.Lots.Frequencies.Any(f => f.Lots.Any(l => l.Bound)) ? ["No line: only bounds there."]
                : Array.Empty<string>(),
            .. result.Lots.Lots.Length > LotsPicture.Most
                ? [$"Named: the {Printed.Plain(LotsPicture.Most)} lots farthest from the mean; grey: the others."]
                : Array.Empty<string>(),
        ];
        return parts.Length == 0 ? null : string.Join(' ', parts);
    }

    // Longer names would take the room of the table; the annex has them in full.
    private const int LongestName = 34;

    private const int DigestShown = 16;

    /// <summary>Days on which sweeps were taken, as they state it; null where none does.</summary>
    internal static string? Days(AnalysisResult result) =>
        Taken(result) is [_, ..] taken ? Between(Day(taken.Min()), Day(taken.Max())) : null;

    /// <summary>The day of each sweep that states its time, where it was taken.</summary>
    internal static DateOnly[] Taken(AnalysisResult result)
    {
        IEnumerable<Sweep> sweeps =
            result.Campaign.Covered.SelectMany(c => c.Block.Sweeps).Concat(result.Campaign.Reference.Sweeps);
        return [.. sweeps.Select(s => s.TakenAt).OfType<DateTimeOffset>().Select(time => DateOnly.FromDateTime(time.DateTime))];
    }

    /// <summary>
    /// When it was measured: as stated, and what the sweeps carry where that differs; null where neither is known.
    /// </summary>
    internal static string? Measured(AnalysisResult result) => result.Identity.Date is not { } stated ? Days(result)
        : StatedDays.Contradicted(result) is { } taken ? $"{stated} – but the sweeps carry {taken}" : stated;

    /// <summary>A text of at most so many letters, cut between words and marked where it is.</summary>
    internal static string Cut(string text, int longest)
    {
        string plain = PlainText.Short(text, longest);
        int blank = plain.LastIndexOf(' ');
        bool whole = plain.Length == PlainText.Of(text).Trim().Length;
        return whole || blank < longest / 2 ? plain : plain[..blank].TrimEnd(',', ';', ':') + " …";
    }

    /// <summary>The beginning of the hash over all input files, and where the whole of it stands.</summary>
    internal static string Digest(string digest) =>
        $"input files: SHA-256 {(digest.Length <= DigestShown ? digest : digest[..DigestShown])}… (inputs_sha256 in "
            + "summary.json)";

    private static string Candidate(RankedSpecimen specimen) =>
        $"{PrintedNames.SpecimenLabel(specimen.Name)} {VerdictWords.Figure(specimen.MeanDb)}";

    private static string Named(SpecimenName name) => ShortNames.Ends(name.ToString(), LongestName);

    private static string Between(string first, string last) => first == last ? first : $"{first} to {last}";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
