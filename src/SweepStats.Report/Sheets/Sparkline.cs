using System.Globalization;
using System.Text;
using SweepStats.Report.Pages;
using SweepStats.Shielding;

namespace SweepStats.Report.Sheets;

/// <summary>
/// The course of a specimen's shielding in the height of a line of text: bounds as dots, the requirement dashed.
/// </summary>
internal sealed class Sparkline
{
    private const double Width = 120;
    private const double Height = 20;
    private const int MostColumns = 60;

    private readonly double _low;
    private readonly double _high;

    private Sparkline(double low, double high) => (_low, _high) = (low, high);

    /// <summary>One scale for the specimens of a table, so that they can be held against each other.</summary>
    public static Sparkline Among(IEnumerable<ShieldingCurve> curves, IEnumerable<double> asked)
    {
        IEnumerable<double> known = curves.SelectMany(c => c.Readings).Select(RangeOfSpecimens.Known).Concat(asked);
        double[] seen = [.. known.Where(double.IsFinite).DefaultIfEmpty(0)];
        return new Sparkline(seen.Min(), Math.Max(seen.Max(), seen.Min() + 1));
    }

    /// <summary>Draws a specimen, the lowest of readings that share a column; what is asked in dB, null for nothing.</summary>
    public void Write(HtmlWriter html, ShieldingCurve curve, double? asked)
    {
        html.Picture("spark", Width, Height, SheetWords.Course(curve));
        if (asked is { } level)
        {
            html.Open("path", new Attr("class", "asked"), new Attr("d", $"M0 {Number(Y(level))}H{Number(Width)}")).Close();
        }

        var line = new StringBuilder();
        var dots = new StringBuilder();
        bool drawn = false;
        foreach (IGrouping<int, int> column in Columns(curve))
        {
            ShieldingReading lowest = column.Select(i => curve.Readings[i]).MinBy(Known)!;
            string at = At(column.Key, Columns(curve.Readings.Length), lowest);
            bool value = lowest is ShieldingReading.Measured or ShieldingReading.Unrepeated;
            line.Append(!value ? string.Empty : drawn ? $"L{at}" : $"M{at}h0");
            dots.Append(lowest is ShieldingReading.AtLeast ? $"M{at}h0" : string.Empty);
            drawn = value;
        }

        Path(html, "line", line);
        Path(html, "dots", dots);
        html.Close();
    }

    private string At(int column, int columns, ShieldingReading reading) =>
        $"{Number((column + 0.5) * Width / columns)} {Number(Y(RangeOfSpecimens.Known(reading)))}";

    private static int Columns(int readings) => Math.Min(MostColumns, readings);

    private static IEnumerable<IGrouping<int, int>> Columns(ShieldingCurve curve)
    {
        int readings = curve.Readings.Length;
        return Enumerable.Range(0, readings).GroupBy(i => (int)((long)i * Columns(readings) / readings));
    }

    // What is not known is not the lowest.
    private static double Known(ShieldingReading reading) =>
        RangeOfSpecimens.Known(reading) is var known && double.IsNaN(known) ? double.PositiveInfinity : known;

    private static void Path(HtmlWriter html, string kind, StringBuilder path)
    {
        if (path.Length > 0)
        {
            html.Open("path", new Attr("class", kind), new Attr("d", path.ToString())).Close();
        }
    }

    private double Y(double decibels)
    {
        double share = (Math.Clamp(decibels, _low, _high) - _low) / (_high - _low);
        return double.IsFinite(share) ? Height - 2 - ((Height - 4) * share) : Height;
    }

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
