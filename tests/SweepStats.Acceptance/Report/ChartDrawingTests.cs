using OxyPlot;
using SweepStats.Report.Drawing;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class ChartDrawingTests
{
    [Fact]
    public void ALongLineIsThinnedAndKeepsEveryExtreme()
    {
        var random = new Random(5);
        List<ScreenPoint> line =
            [.. Enumerable.Range(0, 20_000).Select(i => new ScreenPoint(i * 0.04, random.NextDouble() * 300))];
        line[7001] = new ScreenPoint(line[7001].X, -50);
        line[12_345] = new ScreenPoint(line[12_345].X, 900);
        List<ScreenPoint> kept = Decimation.Line(line);
        Assert.True(kept.Count <= 4 * 801);
        Assert.Contains(line[7001], kept);
        Assert.Contains(line[12_345], kept);
        Assert.Equal(line[0], kept[0]);
        Assert.Equal(line[^1], kept[^1]);
        Assert.Equal(kept.OrderBy(p => p.X), kept);
    }

    [Fact]
    public void AThinnedBandHoldsTheWholeBand()
    {
        var random = new Random(6);
        List<ScreenPoint> edge = [.. Enumerable.Range(0, 9000).Select(i => new ScreenPoint(i * 0.1, random.NextDouble() * 300))];
        List<ScreenPoint> upper = Decimation.Edge(edge, upper: true);
        Assert.True(upper.Count < edge.Count);
        foreach (ScreenPoint p in edge)
        {
            Assert.Contains(upper, u => Math.Floor(u.X) == Math.Floor(p.X) && u.Y <= p.Y);
        }
    }

    [Fact]
    public void AShortLineIsLeftAsItIs()
    {
        List<ScreenPoint> line = [.. Enumerable.Range(0, Decimation.Threshold).Select(i => new ScreenPoint(0, i))];
        Assert.Same(line, Decimation.Line(line));
    }

    // Widths in thousandths from the published metrics of the sans serif family (from memory): H 722, i 222, blank 278, 0 556.
    [Fact]
    public void TextIsMeasuredInPixelsWithoutAnyFont()
    {
        var measurer = new TextMeasurer();
        Assert.Equal((722 + 222) * 20 / 1000.0, measurer.MeasureText("Hi", null, 20, 400).Width, 9);
        Assert.Equal((556 + 278 + 556) * 12 / 1000.0, measurer.MeasureText("0 0", "whatever", 12, 400).Width, 9);
        Assert.Equal(0, measurer.MeasureText(string.Empty, null, 12, 400).Width);
    }

    [Fact]
    public void TheFrequencyAxisIsLogarithmicOnlyWhereTheSweepIsWide()
    {
        Assert.Contains("Frequency (logarithmic)", new Page(Samples.ThreeLots).Labels("shielding"));
        Page narrow = new(Samples.Run(Samples.Small with { Band = new(new(2.4e9), new(2.5e9)) }, Samples.Power));
        Assert.Contains("Frequency (GHz)", narrow.Labels("shielding"));
        Assert.Contains("2.4", narrow.Labels("shielding"));
    }

    [Fact]
    public void BothEndsOfAWideSweepAreLabelled()
    {
        IReadOnlyList<string> labels = new Page(Samples.ThreeLots).Labels("shielding-a-a01");
        Assert.Contains("30 MHz", labels);
        Assert.Contains("1 GHz", labels);
        Assert.Contains("required: 40 dB", labels);
        Assert.Contains("at least this much", labels);
    }

    [Fact]
    public void ASingleSweepIsLabelledAsWithoutInterval()
    {
        Page page = new(Samples.Run(Samples.Small with { ReferenceSweeps = 1, CoveredSweeps = 1 }, Samples.Power));
        Assert.Contains("one sweep: no interval", page.Labels("shielding-a-a01"));
        Assert.DoesNotContain("95 % interval", page.Labels("shielding-a-a01"));
    }

}
