using SweepStats.Bands;
using SweepStats.Sweeps;

namespace SweepStats.Report;

/// <content>What can be said of each specimen, a row each.</content>
public static partial class Wording
{
    internal const string SpecimensHeading = "Each specimen";

    internal static string FiguresCaption(AnalysisResult result) =>
        $"Figures over {Band(result.Campaign.Grid.Band)}, with {Level(result.Plan.Confidence)} confidence for each statement by itself; "
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
            Blocked(least, db => db.FieldBlocked), Blocked(least, db => db.PowerBlocked),
            Figure(band.MeanDb), Figure(band.TenthPercentileDb), CappedOf(band, result.Floor is not null),
            .. result.Bands.All(b => b.ShareMeeting is null) ? Array.Empty<string>()
                : [band.ShareMeeting is { } share ? Share(share) : Nothing],
        ];
    }

    /// <summary>Where the rest of a long table stands.</summary>
    internal static string RestInFile(int rows, string file) => $"{Count(rows, "more row")}: the rest stands in {file}.";

    /// <summary>A sentence with the specimens that it holds for.</summary>
    internal static string OfSpecimens(IReadOnlyList<SpecimenName> names, string sentence) =>
        $"{Listed([.. names.Select(SpecimenLabel)], MostSweepsNamed)}: {sentence}";
}
