using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Bands;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;

namespace SweepStats.Report.Specimens;

/// <summary>What can be said of each specimen over the whole band: the claim, and the band mean with its interval.</summary>
internal static class BandChart
{
    private const int RowHeight = 46;
    private const int Surroundings = 170;

    /// <summary>Half a row's distance between claim and mean.</summary>
    private const double Apart = 0.18;

    /// <summary>The chart; null where no specimen allows a figure.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        List<FigureRow> claims = [];
        List<FigureRow> means = [];
        for (int i = 0; i < result.Bands.Length; i++)
        {
            BandStatement band = result.Bands[i];
            if (band.AtLeast is { } claim)
            {
                claims.Add(new(i - Apart, null, claim.Value, null));
            }

            if (band.MeanDb is { Low: not null } or { Value: not null })
            {
                means.Add(new(i + Apart, band.MeanDb.Value, band.MeanDb.Low ?? band.MeanDb.Value!.Value, band.MeanDb.High));
            }
        }

        if (claims.Count + means.Count == 0)
        {
            return null;
        }

        double? required = result.Plan.Requirement is { } line ? RequirementLine.Constant(line, result.Campaign.Grid) : null;
        PlotModel model = Frame.Model(SpecimenChartWords.BandsTitle, PrintedFrequency.Band(result.Campaign.Grid.Band),
            Values(claims.Concat(means), required + result.Plan.GuardBand.Value), Rows(result)).With(
            required is { } asked ? RequirementLine.Of([new(asked, -0.5), new(asked, result.Bands.Length - 0.5)],
                SpecimenChartWords.RequiredLine(result.Plan.Requirement!, result.Campaign.Grid)) : null,
            required is { } limit && result.Plan.Rule is { GuardBand.Value: > 0 } rule
                ? RequirementLine.Guarded([new(limit + rule.GuardBand.Value, -0.5),
                    new(limit + rule.GuardBand.Value, result.Bands.Length - 0.5)], rule) : null,
            claims.Count > 0
                ? new BandRows { Colour = Ink.Blue, Figures = claims, Title = SpecimenChartWords.ClaimLegend } : null,
            means.Count > 0 ? new BandRows
            {
                Colour = Ink.Black,
                Figures = means,
                Title = SpecimenChartWords.MeanLegend(result.Plan.Confidence),
            } : null);
        return new Chart(
            name, ChartKind.Bands, SpecimenChartWords.BandsTitle, SpecimenChartWords.BandsDescription(result.Bands), model,
            Surroundings + (RowHeight * Math.Max(2, result.Bands.Length)));
    }

    private static LinearAxis Values(IEnumerable<FigureRow> figures, double? required)
    {
        LinearAxis axis = DecibelScale.Axis("Shielding (dB)",
            figures.SelectMany(f => new[] { f.Low, f.High ?? f.Low }).Concat(required is { } r ? [r] : []), 0.24);
        axis.Position = AxisPosition.Bottom;
        return axis;
    }

    private static CategoryAxis Rows(AnalysisResult result)
    {
        var axis = new CategoryAxis { Position = AxisPosition.Left, StartPosition = 1, EndPosition = 0 };
        axis.Labels.AddRange(Frame.Names([.. result.Bands.Select(b => b.Name.ToString())]));

        axis.Minimum = -0.5;
        axis.Maximum = result.Bands.Length - 0.5;
        Frame.Dress(axis);
        axis.MajorGridlineStyle = LineStyle.None;
        axis.MajorTickSize = 0;
        return axis;
    }
}
