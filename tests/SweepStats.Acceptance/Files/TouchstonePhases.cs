using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Traces;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Phases and levels from the other end in Touchstone files. Values by hand: the angle of 3 + 4i is atan(4/3) =
/// 53.130102354155979°.
/// </summary>
public sealed class TouchstonePhases : IDisposable
{
    private const double Pythagorean = 53.130102354155979;

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("# MHz S DB R 50\n1 -1 10 -20 -97.5 -21 190 -4 40\n2 -1 11 -20 359 -22 -360 -4 41\n", -97.5, 359)]
    [InlineData("# MHz S MA R 50\n1 .9 10 .1 -97.5 .2 190 .5 40\n2 .9 11 .1 359 .2 -360 .5 41\n", -97.5, 359)]
    [InlineData("# MHz S RI R 50\n1 1 0 .03 .04 1 0 1 0\n2 1 0 -.03 .04 1 0 1 0\n", Pythagorean, 180 - Pythagorean)]
    [InlineData("# MHz S RI R 50\n1 1 0 -.04 -.03 1 0 1 0\n2 1 0 .04 -.03 1 0 1 0\n", -90 - Pythagorean, Pythagorean - 90)]
    [InlineData("# MHz S RI R 50\n1 1 0 0 -2 1 0 1 0\n2 1 0 -2 0 1 0 1 0\n", -90, 180)]
    [InlineData("[Version] 2.0\n# MHz S DB\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of Frequencies] "
        + "2\n[Network Data]\n1 -1 10 -21 190 -20 -97.5 -4 40\n2 -1 11 -22 -360 -20 359 -4 41\n[End]\n", -97.5, 359)]
    public void TheAngleOfTheTransmissionIsKeptInDegrees(string text, double first, double second)
    {
        Trace trace = Assert.Single(Read("t.s2p", text).Traces);
        Assert.Equal("S21", trace.Quantity);
        Assert.Equal(first, trace.Phases[0], 9);
        Assert.Equal(second, trace.Phases[1], 9);
    }

    [Fact]
    public void OneComplexNumberHasOnePhaseInEveryFormat()
    {
        var random = new Random(11);
        var parts = new StringBuilder("# MHz S RI R 50\n");
        var angles = new StringBuilder("# MHz S MA R 50\n");
        var decibels = new StringBuilder("# MHz S DB R 50\n");
        for (int i = 1; i <= 500; i++)
        {
            double size = Math.Pow(10, random.NextDouble() * -6);
            double angle = (random.NextDouble() * 360) - 180;
            (double sine, double cosine) = Math.SinCos(angle * Math.PI / 180);
            parts.Append(CultureInfo.InvariantCulture, $"{i} 1 0 {size * cosine:R} {size * sine:R} 1 0 1 0\n");
            angles.Append(CultureInfo.InvariantCulture, $"{i} 1 0 {size:R} {angle:R} 1 0 1 0\n");
            decibels.Append(CultureInfo.InvariantCulture, $"{i} 0 0 {20 * Math.Log10(size):R} {angle:R} 0 0 0 0\n");
        }

        Trace[] traces = [.. new[] { parts, angles, decibels }.Select(t => Assert.Single(Read("t.s2p", t.ToString()).Traces))];
        for (int i = 0; i < 500; i++)
        {
            Assert.InRange(traces[0].Phases[i] - traces[1].Phases[i], -1e-9, 1e-9);
            Assert.Equal(traces[1].Phases[i], traces[2].Phases[i]);
            Assert.Equal(traces[0].Levels[i], traces[1].Levels[i], 9);
        }
    }

    // The pairs are numbered as they stand, so that a place taken wrongly shows.
    [Theory]
    [InlineData("t.s1p", "1 -11 1", "11")]
    [InlineData("t.s2p", "1 -11 1 -21 2 -12 3 -22 4", "11 21 12 22")]
    [InlineData("t.s3p", "1 -11 1 -12 2 -13 3\n-21 4 -22 5 -23 6\n-31 7 -32 8 -33 9", "11 12 13 21 22 23 31 32 33")]
    [InlineData("t.s4p", "1 -11 1 -12 2 -13 3 -14 4\n-21 5 -22 6 -23 7 -24 8\n-31 9 -32 10 -33 11 -34 12\n-41 13 -42 14 -43 "
        + "15 -44 16", "11 12 13 14 21 22 23 24 31 32 33 34 41 42 43 44")]
    public void EveryParameterHasItsOwnAngleAndTheLevelOfItsMirrorImage(string name, string row, string order)
    {
        ImmutableArray<Trace> traces = Look(name, "# GHz S DB R 50\n" + row + "\n").Traces;
        Assert.Equal(order, string.Join(' ', traces.Select(t => t.Column[1..])));
        for (int i = 0; i < traces.Length; i++)
        {
            Assert.Equal(i + 1.0, Assert.Single(traces[i].Phases));
            (char to, char from) = (traces[i].Column[1], traces[i].Column[2]);
            Assert.Equal(to == from ? [] : [-double.Parse($"{from}{to}", CultureInfo.InvariantCulture)],
                traces[i].ReverseLevels.AsEnumerable());
        }
    }

    [Fact]
    public void ANamedParameterBringsTheLevelOfItsOtherEnd()
    {
        TraceReading reading =
            Look("t.s3p", "# GHz S DB R 50\n1 -11 1 -12 2 -13 3\n-21 4 -22 5 -23 6\n-31 7 -32 8 -33 9\n", "S32", "s13");
        Assert.Equal(["S32", "S13"], reading.Traces.Select(t => t.Column));
        Assert.Equal([-23.0, -31], reading.Traces.Select(t => Assert.Single(t.ReverseLevels)));
        Assert.Equal([8.0, 3], reading.Traces.Select(t => Assert.Single(t.Phases)));
    }

    [Theory]
    [InlineData("# MHz S RI R 50\n1 1 0 .3 .4 0 0 1 0\n2 1 0 .3 .4 0 0 1 0\n")]
    [InlineData("# MHz S RI R 50\n1 1 0 .3 .4 .3 .4 1 0\n2 1 0 .3 .4 0 0 1 0\n")]
    [InlineData("# MHz S DB R 50\n1 0 1 -20 2 -200 3 0 4\n2 0 1 -20 2 -200 3 0 4\n")]
    [InlineData("[Version] 2.0\n# MHz S DB\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] "
        + "1\n[Matrix Format] Lower\n[Network Data]\n1 -11 1 -21 2 -22 3\n[End]\n")]
    public void AnOtherEndThatWasNotMeasuredEverywhereIsNotKept(string text)
    {
        Trace through = Read("t.s2p", text).Traces.Single(t => t.Quantity == "S21");
        Assert.Empty(through.ReverseLevels);
        Assert.NotEmpty(through.Phases);
    }

    [Theory]
    [InlineData("# MHz S DB R 50\n1 -1 0 -20 0 -3 0 -4 0\n2 -1 0 -21 0 -3 0 -4 0\n")]
    [InlineData("# MHz S RI R 50\n1 1 0 .1 0 1 0 1 0\n2 1 0 -.1 0 1 0 1 0\n")]
    public void AnglesThatAreAllZeroAreNoPhase(string text) => Assert.Empty(Assert.Single(Read("t.s2p", text).Traces).Phases);

    [Fact]
    public void PhasesReachTheSweepsOfACampaign()
    {
        const string Rows = "# MHz S MA R 50\n1 .9 0 .1 30 .2 40 .9 0\n2 .9 0 .01 -30 .2 50 .9 0\n";
        _folder.With("reference/r.s2p", Rows).With("covered/A/A1/c.s2p", Rows)
            .With("floor/f.csv", "frequency_hz,level_db\n1000000,-90\n2000000,-91\n");
        CampaignReading reading = _folder.Read();
        Assert.Equal("", string.Join('\n', reading.Faults));
        Sweep covered = reading.Campaign!.Sweeps.Single(s => s.Role == SweepRole.Covered);
        Assert.Equal([30.0, -30], covered.Phases.AsEnumerable());
        Assert.Equal([20 * Math.Log10(.2), 20 * Math.Log10(.2)], covered.ReverseLevels.AsEnumerable());
        Sweep floor = reading.Campaign.Sweeps.Single(s => s.Role == SweepRole.Floor);
        Assert.True(floor.Phases.IsEmpty && floor.ReverseLevels.IsEmpty);
    }

    private TraceReading Read(string name, string text)
    {
        TraceReading reading = _folder.With(name, text).Trace(name);
        Assert.Equal("", string.Join('\n', reading.Faults));
        return reading;
    }

    private static TraceReading Look(string name, string text, params ImmutableArray<string> columns) =>
        TraceFile.Look(Encoding.UTF8.GetBytes(text), name, new TraceReadOptions { Columns = columns });
}
