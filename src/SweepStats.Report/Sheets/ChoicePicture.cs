using OxyPlot.Axes;
using SweepStats.Choice;
using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;

namespace SweepStats.Report.Sheets;

/// <summary>Mean shielding of the foremost candidates with intervals; those not to be told from the best are filled.</summary>
internal static class ChoicePicture
{
    private const double Width = 440;
    private const double Height = 250;
    private const int LongestName = 16;

    /// <summary>More rows than this do not fit.</summary>
    public const int Most = 12;

    /// <summary>Whether something is known of a candidate.</summary>
    public static bool Shows(BandRanking band) => band.Ranking.Any(r => Low(r) is not null);

    /// <summary>The candidates drawn.</summary>
    public static RankedSpecimen[] Rows(BandRanking band) => [.. band.Ranking.Where(r => Low(r) is not null).Take(Most)];

    /// <summary>Whether one is drawn filled: it has a value and cannot be told from the best.</summary>
    public static bool Fills(SpecimenChoice choice, RankedSpecimen row) =>
        choice.MayRank && row is { Group: 1, MeanDb.Value: not null };

    /// <summary>Draws the candidates of <see cref="Rows"/> on one scale; there has to be one.</summary>
    public static void Write(HtmlWriter html, SpecimenChoice choice, BandRanking band)
    {
        RankedSpecimen[] rows = Rows(band);
        LinearAxis scale = DecibelScale.Axis(string.Empty, rows.SelectMany(Ends));
        var space = new RowSpace(Width, Height, scale.Minimum, scale.Maximum);
        var row = new RowPlot(html, space, SheetWords.ChoiceShows(choice, band));
        row.Scale(scale.MajorStep, "Mean where all have a value (dB)");
        IReadOnlyList<string> names = ShortNames.Of([.. rows.Select(r => r.Name.ToString())], LongestName);
        double step = (space.Bottom - RowSpace.Top) / rows.Length;
        for (int i = 0; i < rows.Length; i++)
        {
            row.Row(names[i], RowSpace.Top + ((i + 0.5) * step), rows[i].MeanDb, Fills(choice, rows[i]));
        }

        row.End();
    }

    private static double[] Ends(RankedSpecimen row) => [Low(row)!.Value, row.MeanDb.High ?? row.MeanDb.Value ?? Low(row)!.Value];

    private static double? Low(RankedSpecimen specimen) => specimen.MeanDb.Low ?? specimen.MeanDb.Value;
}
