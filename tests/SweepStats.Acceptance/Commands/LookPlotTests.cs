using SweepStats.Cli.Plot;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class LookPlotTests
{
    private static readonly string[] AsciiRamp =
    [
        "   -80 dBm |                                                           *****",
        "           |                                                 ***********",
        "           |                                        **********",
        "           |                                *********",
        "           |                       **********",
        "           |             ***********",
        "           |     *********",
        "  -100 dBm |******",
        "            30 MHz                                                    50 MHz",
    ];

    [Fact]
    public void ARampRisesThroughTheWholeFieldInDots()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        Assert.Equal(
        [
            "   -80 dBm |                                                        ⢀⣀⣠⠤⠴⠒⠚⠉",
            "           |                                                ⣀⣀⡤⠤⠖⠒⠚⠉⠉",
            "           |                                        ⣀⣀⡤⠤⠖⠒⠋⠉⠁",
            "           |                                ⣀⣀⡤⠤⠖⠒⠋⠉⠁",
            "           |                       ⢀⣀⣠⠤⠴⠒⠚⠉⠉⠁",
            "           |               ⢀⣀⣠⠤⠴⠒⠚⠉⠉",
            "           |       ⣀⣀⡤⠤⠴⠒⠚⠉⠉",
            "  -100 dBm |⣀⡤⠤⠖⠒⠋⠉⠁",
            "            30 MHz                                                    50 MHz",
        ],
        LookFolder.Picture(folder.Look("a.csv").Out, "level_dbm"));
    }

    [Fact]
    public void WhereDotsCannotBeShownStarsStandForThem()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        Assert.Equal(AsciiRamp, LookFolder.Picture(folder.LookInAscii("a.csv"), "level_dbm"));
        Assert.Equal(AsciiRamp, LookFolder.Picture(folder.Look("a.csv", "--ascii").Out, "level_dbm"));
    }

    [Fact]
    public void NothingButAsciiIsPrintedWhereNothingElseIsKnown()
    {
        using LookFolder folder = new LookFolder().With("a.csv", "frequency_hz,Pegel ü [dBµV]\n1000000,-60\n2000000,-61\n");
        string output = folder.LookInAscii("a.csv");
        Assert.Contains("  dBuV  ", output, StringComparison.Ordinal);
        Assert.DoesNotContain(output, c => !char.IsAscii(c));
    }

    [Fact]
    public void MoreThanTwoDecadesAreDrawnLogarithmically()
    {
        // A straight line over the logarithm of frequency; its middle point lies at 1 of 1 000 parts of the linear axis.
        using LookFolder folder =
            new LookFolder().With("a.csv", "frequency_hz,level_dbm\n1000,-100\n31622.7766016838,-90\n1000000,-80\n");
        string[] picture = LookFolder.Picture(folder.Look("a.csv", "--ascii").Out, "level_dbm");
        IsTheRamp(picture);
        Assert.Equal("            1 kHz                        (log)                         1 MHz", picture[^1]);
    }

    [Fact]
    public void AGridFromZeroIsDrawnLinearly()
    {
        using LookFolder folder = new LookFolder().With("a.csv", "frequency_hz,level_dbm\n0,-100\n500000,-90\n1000000,-80\n");
        string[] picture = LookFolder.Picture(folder.Look("a.csv", "--ascii").Out, "level_dbm");
        Assert.Equal(AsciiRamp[..^1], picture[..^1]);
        Assert.Equal("            0 Hz                                                       1 MHz", picture[^1]);
    }

    [Fact]
    public void ASpikeOfOnePointAmongThousandsIsSeen()
    {
        using LookFolder folder = new LookFolder().With("a.csv",
            "frequency_hz,level_dbm\n"
                + string.Concat(Enumerable.Range(0, 10_001).Select(i => $"{1_000_000 + i},{(i == 4000 ? -40 : -100)}\n")));
        string[] picture = LookFolder.Picture(folder.Look("a.csv", "--ascii").Out, "level_dbm");
        Assert.All(picture[..7], line => Assert.Equal(1, line.Count(c => c == '*')));
        Assert.Equal(64, picture[7].Count(c => c == '*'));
    }

    [Fact]
    public void AFlatTraceIsALineInTheMiddleWithOneLabel()
    {
        using LookFolder folder = new LookFolder().With("a.csv", "frequency_hz,level_dbm\n1000000,-60\n2000000,-60\n");
        string[] picture = LookFolder.Picture(folder.Look("a.csv", "--ascii").Out, "level_dbm");
        Assert.Equal("  -60 dBm |" + new string('*', 64),
            Assert.Single(picture, line => line.Contains('*', StringComparison.Ordinal)));
    }

    [Fact]
    public void ALevelThatIsNotFiniteBreaksNothing()
    {
        using LookFolder folder = new LookFolder().With("a.s2p",
            "# Hz S RI R 50\n1000000 1 0 0 0 0.1 0 1 0\n2000000 1 0 0.1 0 0.1 0 1 0\n3000000 1 0 0.01 0 0.1 0 1 0\n");
        (int code, string output, _) = folder.Look("a.s2p");
        Assert.Equal(2, code);
        Assert.Matches(@"S21 +S21 +dB +3 +1 MHz +3 MHz +not finite +-40 +-40 +-20", output);
        Assert.Contains("  S21: not usable as a sweep: line 2: ", output, StringComparison.Ordinal);
        Assert.Empty(LookFolder.Picture(output, "S21"));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void ALevelThatIsNotFiniteLeavesAGap(double level)
    {
        var envelope = Envelope.Of([1, 2, 3, 4, 5], [-1, -2, level, -4, -5], 5);
        Assert.Null(envelope[2]);
        Assert.Equal((-1.5, -1), envelope[0]!.Value);
        Assert.Equal((-2, -1.5), envelope[1]!.Value);
        Assert.Equal((-5, -4.5), envelope[4]!.Value);
    }

    [Fact]
    public void LevelsOfTheWholeRangeOfNumbersDoNotOverflow()
    {
        var trace = new Trace("a", "level", LevelUnit.DecibelMilliwatts, new FrequencyAxis([1e6, 2e6, 3e6]),
            [-1.7e308, 0, 1.7e308]);
        string[] picture = [.. new TracePlot(ascii: true).Of(trace, 8)];
        IsTheRamp(picture);
    }

    [Theory]
    [InlineData("frequency_hz,level_dbm\n1000000,-60\n", 0)]
    [InlineData("frequency_hz,level_dbm\n3000000,-60\n1000000,-61\n2000000,-60\n", 2)]
    public void OnePointOrFrequenciesThatDoNotRiseGiveNoPicture(string text, int expected)
    {
        using LookFolder folder = new LookFolder().With("a.csv", text);
        (int code, string output, _) = folder.Look("a.csv");
        Assert.Equal(expected, code);
        Assert.Contains("level_dbm", output, StringComparison.Ordinal);
        Assert.DoesNotContain("|", output, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePictureCanBeLeftOut()
    {
        using LookFolder folder = new LookFolder().With("a.csv", LookFolder.Ramp);
        Assert.DoesNotContain("|", folder.Look("a.csv", "--no-plot").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void OfATwoPortFileTheTransmissionIsDrawnFirstAndThreeAtMost()
    {
        using LookFolder folder =
            new LookFolder().With("a.s2p", "# Hz S DB R 50\n1000000 -1 0 -20 0 -21 0 -2 0\n2000000 -3 0 -25 0 -26 0 -4 0\n");
        string[] names = [.. folder.Look("a.s2p").Out.ReplaceLineEndings("\n").Split('\n').Where(line => line.Length == 5)];
        Assert.Equal(["  S21", "  S11", "  S12"], names);
    }

    // Within a column: what lies exactly between two rows may fall to either.
    private static void IsTheRamp(string[] picture)
    {
        Assert.Equal(AsciiRamp.Length, picture.Length);
        Assert.All(picture[..^1].Zip(AsciiRamp), rows =>
        {
            (string line, string ramp) = (rows.First.Split('|')[1], rows.Second.Split('|')[1]);
            Assert.InRange(line.IndexOf('*', StringComparison.Ordinal) - ramp.IndexOf('*', StringComparison.Ordinal), -1, 1);
            Assert.InRange(line.Length - ramp.Length, -1, 1);
        });
    }
}
