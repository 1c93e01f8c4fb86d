using System.Globalization;
using OxyPlot;
using OxyPlot.Axes;
using OxyPlot.Legends;
using SweepStats.Report.Text;

namespace SweepStats.Report.Drawing;

/// <summary>What all charts share: type, margins, grid, and a legend below that is there only where a line has a name.</summary>
internal static class Frame
{
    /// <summary>Names in a chart longer than this are cut; the page has them in full.</summary>
    public const int LongestName = 28;

    /// <summary>Type of all charts: whichever of these the viewer has.</summary>
    public const string Font = "Arial, Helvetica, sans-serif";

    private const double LabelSize = 13;

    /// <summary>A chart without series yet: title and subtitle above, and these axes.</summary>
    public static PlotModel Model(string title, string? subtitle, params ReadOnlySpan<Axis> axes)
    {
        var model = new PlotModel
        {
            Culture = CultureInfo.InvariantCulture,
            DefaultFont = Font,
            DefaultFontSize = LabelSize,
            TextColor = Ink.Black,
            Background = OxyColors.White,
            PlotAreaBorderColor = Ink.Black,
            PlotAreaBorderThickness = new OxyThickness(1, 0, 0, 1),
            Padding = new OxyThickness(ChartTitle.Edge, ChartTitle.Room, 26, 8),
        };
        model.Annotations.Add(new ChartTitle { Title = title, Subtitle = subtitle });
        foreach (Axis axis in axes)
        {
            model.Axes.Add(axis);
        }

        return model;
    }

    /// <summary>Adds series in order, but for those with nothing to draw; those further back are drawn first.</summary>
    public static PlotModel With(this PlotModel model, params IEnumerable<ChartSeries?> series)
    {
        foreach (ChartSeries one in series.OfType<ChartSeries>().Where(s => !s.IsEmpty))
        {
            model.Series.Add(one);
        }

        if (model.Series.Any(s => s.Title is not null) && model.Legends.Count == 0)
        {
            model.Legends.Add(new Legend
            {
                LegendPlacement = LegendPlacement.Outside,
                LegendPosition = LegendPosition.BottomLeft,
                LegendOrientation = LegendOrientation.Horizontal,
                LegendFontSize = LabelSize,
                LegendSymbolLength = 34,
                LegendItemSpacing = 26,
                LegendLineSpacing = 5,
                LegendBorderThickness = 0,
                LegendMargin = 2,
                LegendPadding = 4,
            });
        }

        return model;
    }

    /// <summary>The same axis along the bottom.</summary>
    public static T AtBottom<T>(this T axis)
        where T : Axis
    {
        axis.Position = AxisPosition.Bottom;
        return axis;
    }

    /// <summary>Both ends of a level line along an axis.</summary>
    public static DataPoint[] Across(Axis along, double level) => [new(along.Minimum, level), new(along.Maximum, level)];

    /// <summary>Gives an axis the ink, grid and type of all charts.</summary>
    public static void Dress(Axis axis)
    {
        axis.AxislineColor = Ink.Black;
        axis.TicklineColor = Ink.Black;
        axis.MinorTicklineColor = Ink.Grey;
        axis.MajorGridlineStyle = LineStyle.Solid;
        axis.MajorGridlineColor = Ink.Faint;
        axis.MajorGridlineThickness = 0.8;
        axis.TickStyle = TickStyle.Outside;
        axis.FontSize = LabelSize;
        axis.TitleFontSize = LabelSize;
        axis.AxisTitleDistance = 14;
        axis.IntervalLength = 70;
    }

    /// <summary>A name that fits a chart and that the library does not read as sub- or superscript.</summary>
    public static string Name(string text) => Literal(PlainText.Short(text, LongestName));

    /// <summary>Several such names, shortened so that they stay different.</summary>
    public static IReadOnlyList<string> Names(IReadOnlyList<string> texts) =>
        [.. ShortNames.Of(texts, LongestName).Select(Literal)];

    /// <summary>Text that the library does not read as sub- or superscript.</summary>
    public static string Literal(string text) =>
        text.Replace("_{", "_ {", StringComparison.Ordinal).Replace("^{", "^ {", StringComparison.Ordinal);
}
