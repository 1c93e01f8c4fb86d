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
        FigureRow[] claims = Placed(result, -Apart, Claim), means = Placed(result, Apart, Mean);
        if (claims.Length + means.Length == 0)
        {
            return null;
        }

        double? required = result.Plan.Requirement is { } line ? RequirementLine.Constant(line, result.Campaign.Grid) : null;
        PlotModel model = Frame.Model(SpecimenChartWords.BandsTitle, PrintedFrequency.Band(result.Campaign.Grid.Band),
            Values(claims.Concat(means), required + result.Plan.GuardBand.Value), Rows(result)).With([
            .. Asked(result, required),
            new BandRows { Colour = Ink.Blue, Figures = claims, Title = SpecimenChartWords.ClaimLegend },
            new BandRows { Colour = Ink.Black, Figures = means, Title = SpecimenChartWords.MeanLegend(result.Plan.Confidence) },
        ]);
        return new Chart(
            name, ChartKind.Bands, SpecimenChartWords.BandsTitle, SpecimenChartWords.BandsDescription(result.Bands), model,
            Surroundings + (RowHeight * Math.Max(2, result.Bands.Length)));
    }

    private static FigureRow[] Placed(AnalysisResult result, double off,
        Func<BandStatement, double, IEnumerable<FigureRow>> figure) =>
        [.. result.Bands.SelectMany((band, i) => figure(band, i + off))];

    private static IEnumerable<FigureRow> Claim(BandStatement band, double row) =>
        band.AtLeast is { } claim ? [new(row, null, claim.Value, null)] : [];

    private static IEnumerable<FigureRow> Mean(BandStatement band, double row) =>
        band.MeanDb is { Low: not null } or { Value: not null }
            ? [new(row, band.MeanDb.Value, band.MeanDb.Low ?? band.MeanDb.Value!.Value, band.MeanDb.High)] : [];

    private static IEnumerable<Trace> Asked(AnalysisResult result, double? required)
    {
        DataPoint[] Upright(double decibels) => [new(decibels, -0.5), new(decibels, result.Bands.Length - 0.5)];
        if (required is { } asked)
        {
            yield return RequirementLine.Of(Upright(asked),
                SpecimenChartWords.RequiredLine(result.Plan.Requirement!, result.Campaign.Grid));
            if (result.Plan.Rule is { GuardBand.Value: > 0 } rule)
            {
                yield return RequirementLine.Guarded(Upright(asked + rule.GuardBand.Value), rule);
            }
        }
    }

    private static LinearAxis Values(IEnumerable<FigureRow> figures, double? required) =>
        DecibelScale.Axis("Shielding (dB)",
            figures.SelectMany(f => new[] { f.Low, f.High ?? f.Low }).Concat(required is { } r ? [r] : []), 0.24).AtBottom();

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
