using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Parameters that hold no level, each with its doubt, and never in the way of the others.</summary>
public sealed class TouchstoneDoubts : IDisposable
{
    private const string OnePath = "! one-path analyser\n# MHz S RI R 50\n1 .1 0 .01 0 0 0 0 0\n2 .1 0 .01 0 0 0 0 0\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void AParameterThatIsZeroThroughoutIsBlankAndTheOthersAreRead()
    {
        TraceReading reading = Look("t.s2p", OnePath);
        Assert.Empty(reading.Faults);
        Assert.Equal(["S11", "S21", "S12", "S22"], reading.Traces.Select(t => t.Column));
        Assert.Equal([false, false, true, true], reading.Traces.Select(t => t.Blank is not null));
        Assert.Equal("every magnitude is exactly 0: it was not measured", reading.Traces[2].Blank);
        Assert.All(reading.Traces[3].Levels, l => Assert.Equal(double.NegativeInfinity, l));
        ReadFault doubt = Assert.Single(reading.Traces[3].Doubts);
        Assert.Equal("t.s2p:3: S22 is blank: every magnitude is exactly 0: it was not measured; measure it; name S12 in place "
            + "of S21 only if the source was at port 2", doubt.ToString());
        Assert.Empty(reading.Traces[1].Doubts);
    }

    [Fact]
    public void ACampaignReadsTheTransmissionOfAOnePathAnalyserAndRefusesTheBlankParameter()
    {
        _folder.With("t.s2p", OnePath);
        Assert.Equal("S21", Assert.Single(_folder.Trace("t.s2p").Traces).Column);
        TraceReading named = _folder.Trace("t.s2p", new TraceReadOptions { Columns = ["s11", "S22"] });
        Assert.Empty(named.Traces);
        Assert.Contains("S22 is blank", Assert.Single(named.Faults).Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("RI", "0 0")]
    [InlineData("MA", "0 90")]
    [InlineData("MA", "-0.0 0")]
    [InlineData("DB", "-inf 0")]
    [InlineData("DB", "-Infinity 0")]
    public void AZeroAmongOtherPointsIsBelowRangeWithItsLine(string format, string zero)
    {
        Trace trace =
            Look("t.s2p", $"# MHz S {format} R 50\n1 1 0 1 0 1 0 1 0\n\n2 1 0 {zero} 1 0 1 0\n3 1 0 {zero} 1 0 1 0\n").Traces[1];
        Assert.True(double.IsFinite(trace.Levels[0]));
        Assert.Equal([double.NegativeInfinity, double.NegativeInfinity], trace.Levels.Skip(1));
        Assert.Null(trace.Blank);
        ReadFault doubt = Assert.Single(trace.Doubts);
        Assert.Equal(4, doubt.Line);
        Assert.StartsWith("the magnitude of S21 is not positive", doubt.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void ANegativeMagnitudeIsADoubtAndNoLevel()
    {
        Trace trace = Look("t.s2p", "# MHz S MA R 50\n1 1 0 .1 0 1 0 1 0\n2 1 0 -.1 0 1 0 1 0\n").Traces[1];
        Assert.Equal([-20, double.NegativeInfinity], trace.Levels.AsEnumerable());
        Assert.Null(trace.Blank);
        Assert.Equal((3, "the magnitude of S21 is not positive, which has no level in dB"),
            (Assert.Single(trace.Doubts).Line, trace.Doubts[0].Problem));
    }

    [Fact]
    public void AMagnitudeBeyondAllNumbersIsADoubtAndNoLevel()
    {
        Trace trace = Look("t.s2p", "# MHz S RI R 50\n1 1 0 1 0 1 0 1 0\n2 1 0 1.7e308 1.7e308 1 0 1 0\n").Traces[1];
        Assert.Equal("the magnitude of S21 is too large for a number", Assert.Single(trace.Doubts).Problem);
        Assert.DoesNotContain(trace.Levels, double.IsPositiveInfinity);
    }

    [Fact]
    public void ALevelThatNoReceiverResolvesAtEveryPointIsBlank()
    {
        TraceReading reading = Look("t.s2p", "# MHz S DB R 50\n1 -1 0 -200 45 -199 0 -300 0\n2 -2 0 -200 45 -198 0 -300 0\n");
        Assert.Equal([null, "every level is -200.0 dB: it was not measured", null,
            "every level is -300.0 dB: it was not measured"], reading.Traces.Select(t => t.Blank));
        Assert.Equal(2, Assert.Single(reading.Traces[1].Doubts).Line);
        Assert.Equal([-200.0, -200.0], reading.Traces[1].Levels.AsEnumerable());
    }

    [Fact]
    public void AReflectionAloneIsShownWithADoubtUnlessItIsNamed()
    {
        const string Text = "# MHz S DB R 50\n1 -3 0\n2 -4 0\n";
        Trace seen = Assert.Single(Look("t.s1p", Text).Traces);
        Assert.Equal(("S11", "S11"), (seen.Column, seen.Quantity));
        Assert.Equal([-3.0, -4.0], seen.Levels.AsEnumerable());
        ReadFault doubt = Assert.Single(seen.Doubts);
        Assert.Equal("a one-port file holds a reflection, not an attenuation", doubt.Problem);
        Assert.Contains("column = S11", doubt.Remedy, StringComparison.Ordinal);
        Assert.Empty(Assert.Single(Look("t.s1p", Text, "s11").Traces).Doubts);
    }

    [Theory]
    [InlineData("41 0 41 0 1 0", true)]
    [InlineData("41 0 1 0 1 0", false)]
    [InlineData("40 0 40 0 40 0", false)]
    public void GainBeyondAllPartsIsRemarkedWhereMostPointsHaveIt(string pairs, bool remarked)
    {
        string[] n = pairs.Split(' ');
        TraceReading reading =
            Look("t.s2p", $"# MHz S DB R 50\n1 0 0 {n[0]} 0 0 0 0 0\n2 0 0 {n[2]} 0 0 0 0 0\n3 0 0 {n[4]} 0 0 0 0 0\n");
        Assert.Equal(remarked
            ? ["most levels of S21 are above +40 dB: raw ratios of receivers, or an option line with the wrong format "
                + "(DB, MA, RI)"] : [], reading.Assumptions.AsEnumerable());
        Assert.All(reading.Traces, t => Assert.Empty(t.Doubts));
    }

    private static TraceReading Look(string name, string text, params string[] columns) =>
        TraceFile.Look(Encoding.UTF8.GetBytes(text), name, new TraceReadOptions { Columns = [.. columns] });
}
