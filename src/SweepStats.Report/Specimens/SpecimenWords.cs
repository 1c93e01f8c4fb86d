using SweepStats.Bands;
using SweepStats.Report.Answer;
using SweepStats.Report.Pages;
using SweepStats.Report.Setup;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Specimens;

/// <summary>What can be said of each specimen, a row each.</summary>
internal static class SpecimenWords
{
    // A limit for most of the band lies so far below the one for all of it only where its repeats are too few.
    private const double FarBelowDb = 3;

    // Wider than this and below 0 dB, an interval is no result.
    private const double WiderThanDb = 10;

    internal const string SpecimensHeading = "Each specimen";

    internal static string FiguresCaption(AnalysisResult result) =>
        $"Figures over {Band(result.Campaign.Grid.Band)}, with {Level(result.Plan.Confidence)} confidence for each statement by "
            + "itself; "
            + "blocked shares go with the figure at the left of them";

    internal static string[] BandColumnsOf(AnalysisResult result) =>
    [
        "Specimen", "Everywhere at least", "Field blocked", "Power blocked", "Mean", "Nine tenths of the band reach", "Capped",
        .. result.Bands.Any(b => b.ShareMeeting is not null) ? ["Share that meets the requirement"] : Array.Empty<string>(),
    ];

    internal static IReadOnlyList<string> BandRow(AnalysisResult result, BandStatement band)
    {
        var least = new BandFigure(null, band.AtLeast?.Value, null);
        return
        [
            SpecimenLabel(band.Name), band.AtLeast is { } claim ? Bound(claim) : "no claim",
            PageWords.Blocked(least, db => db.FieldBlocked), PageWords.Blocked(least, db => db.PowerBlocked),
            FigureOf(band, band.MeanDb), FigureOf(band, band.TenthPercentileDb),
            PageWords.CappedOf(band, result.Floor is not null),
            .. result.Bands.All(b => b.ShareMeeting is null) ? Array.Empty<string>()
                : [VerdictWords.NothingRelied(result) ? "not shown"
                    : band.ShareMeeting is { } share ? VerdictWords.Share(share) : Nothing],
        ];
    }

    /// <summary>
    /// A figure of the band, without limits that lie far below what holds everywhere: those come of so few repeats that they say
    /// nothing, and a reader takes them for a result.
    /// </summary>
    internal static string FigureOf(BandStatement band, BandFigure figure)
    {
        if (!SaysNothing(band, figure))
        {
            return VerdictWords.Figure(figure);
        }

        return figure.Value is { } value ? $"{Ratio(value)}, too few repeats for limits"
            : band.AtLeast is null ? "no bound above 0 dB" : "no more than “everywhere”: too few repeats";
    }

    private static bool SaysNothing(BandStatement band, BandFigure figure) => figure.Low is { } low
        && (low < band.AtLeast?.Value - FarBelowDb || (low < 0 && (figure.Value is not { } value || value - low > WiderThanDb)));

    /// <summary>Where the rest of a long table stands.</summary>
    internal static string RestInFile(int rows, string file) => $"{Count(rows, "more row")}: the rest stands in {file}.";

    /// <summary>A sentence with the specimens that it holds for.</summary>
    internal static string OfSpecimens(IReadOnlyList<SpecimenName> names, string sentence) =>
        $"{Listed([.. names.Select(SpecimenLabel)], SweepWords.MostSweepsNamed)}: {sentence}";
}
