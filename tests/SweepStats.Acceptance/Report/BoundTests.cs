using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Screens;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Shielding;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class BoundTests
{
    /// <summary>Shielding of 200 dB: nothing but bounds.</summary>
    private static readonly AnalysisResult AllCapped =
        Samples.Run(Samples.Small with { ShieldingStartDb = 200, ShieldingStopDb = 200 }, Samples.Power);

    [Fact]
    public void ACappedReadingIsPrintedWithItsSign()
    {
        ReadingEvidence evidence = AllCapped.Curves[0].Readings[0].Evidence;
        Assert.Equal("≥ 52.3 dB",
            VerdictWords.Reading(new ShieldingReading.AtLeast(ShieldingState.Capped, evidence, new Decibels(52.38))));
        Assert.Equal("≥ 44.1 dB", VerdictWords.Figure(new BandFigure(null, 44.19, null)));
    }

    [Fact]
    public void AFigureWithoutUpperLimitIsABoundEvenWhereAValueSlippedIn() =>
        Assert.Equal("≥ 44.1 dB", VerdictWords.Figure(new BandFigure(50, 44.19, null)));

    [Fact]
    public void WhereEverythingIsCappedNoDecibelValueOfTheSpecimenStandsWithoutASign()
    {
        Assert.All(AllCapped.Curves[0].Readings, r => Assert.IsType<ShieldingReading.AtLeast>(r));
        Page page = new(AllCapped);
        XElement[] rows =
        [
            .. page.Tree.Descendants("section").Where(s => s.Attribute("aria-labelledby")!.Value is "sheet-specimens" or "bands")
                .Descendants("td"),
        ];
        XElement[] figures = [.. rows.Where(td => td.Value.Contains("dB", StringComparison.Ordinal))];
        Assert.True(figures.Length >= 4);
        Assert.All(figures, td => Assert.Matches("^(SE )?≥ ", td.Value));
        Assert.All(SummaryWords.Summary(AllCapped).Where(l => l.Contains("SE", StringComparison.Ordinal)),
            l => Assert.Contains("SE ≥ ", l, StringComparison.Ordinal));
        Assert.All(page.Labels("bands").Where(l => Regex.IsMatch(l, "^.*[0-9] dB$")),
            l => Assert.StartsWith("≥ ", l, StringComparison.Ordinal));
    }

    [Fact]
    public void ChartsDrawCappedReadingsOnlyAsArrows()
    {
        Page page = new(AllCapped);
        foreach (string chart in new[] { "shielding", "shielding-a-a01" })
        {
            XElement[] drawn = [.. page.Chart(chart).Descendants()];
            Assert.DoesNotContain(drawn, e => e.Name.LocalName is "circle" or "ellipse" or "polygon" or "path");
            // Foot, stem and head of an arrow are all there is beside grid and axes: nothing joins one bound to the next.
            XElement[] strokes = [.. drawn.Where(e => e.Name.LocalName == "polyline")];
            XElement[] arrows =
                [.. strokes.Where(e => e.Attribute("style")!.Value.Contains("stroke-width:1.3", StringComparison.Ordinal))];
            Assert.True(arrows.Length >= 30);
            Assert.All(arrows, e => Assert.True(Width(e) <= 9, e.ToString()));
            Assert.All(strokes.Except(arrows),
                e => Assert.Equal(2, e.Attribute("points")!.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length));
        }
    }

    [Fact]
    public void PointsOfACurveKeepBoundsApartFromValues()
    {
        ShieldingCurve curve = Samples.ThreeLots.Curves[0];
        var points = new CurvePoints(curve);
        for (int i = 0; i < curve.Readings.Length; i++)
        {
            Assert.Equal(curve.Readings[i] is ShieldingReading.Measured, double.IsFinite(points.Estimate[i].Y));
            Assert.Equal(curve.Readings[i] is ShieldingReading.Measured, !double.IsNaN(points.Interval[i].Low));
        }

        Assert.Equal(curve.Readings.Count(r => r is ShieldingReading.AtLeast), points.Bounds.Count);
        Assert.InRange(points.Bounds.Count, 5, curve.Readings.Length - 5);
    }

    [Fact]
    public void LimitsAreRoundedAwayFromTheClaim()
    {
        Assert.Equal("≥ 34.2 dB", PrintedLevel.Bound(new Decibels(34.29)));
        Assert.Equal("≥ −0.3 dB", PrintedLevel.Bound(new Decibels(-0.21)));
        Assert.Equal("44.1 to 46.6 dB", PrintedLevel.Interval(44.19, 46.51));
        Assert.Equal("≥ 40.0 dB", PrintedLevel.Bound(new Decibels(39.99999999999)));
    }

    private static double Width(XElement polyline)
    {
        double[] xs = [.. polyline.Attribute("points")!.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(p => double.Parse(p.Split(',')[0], CultureInfo.InvariantCulture))];
        return xs.Max() - xs.Min();
    }
}
