using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Files that are marked otherwise than usual: units in full, bars, several levels in a line, steps, other comments, ranges as
/// blocks; all invented.
/// </summary>
public sealed class OtherMarkings : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("Frequency Units = Megahertz\nAmplitude Units = decibel-milliwatts\nStart of "
        + "data\n30\t-60.5\n60\t-61\n90\t-62.25\n")]
    [InlineData("X Unit: Megahertz (MHz)\nY Unit: Decibel Milliwatt (dBm)\n30,-60.5\n60,-61\n90,-62.25\n")]
    [InlineData("Frequency (kilohertz);Level (decibel-milliwatt)\n30000;-60.5\n60000;-61\n90000;-62.25\n")]
    [InlineData("# levels in decibels above 1 milliwatt, frequencies in Hertz\n30000000,-60.5\n60000000,-61\n90000000,-62.25\n")]
    [InlineData("Frequency,Level\nGigahertz,decibel-milliwatts\n0.03,-60.5\n0.06,-61\n0.09,-62.25\n")]
    [InlineData("# Axis 1 = Frequency / MHz\n# Axis 2 = Power level / dBm\n30;-60.5\n60;-61\n90;-62.25\n")]
    [InlineData("Achse 1: Frequenz / GHz\nAchse 2: Pegel in dBm\n0,03;-60,5\n0,06;-61,0\n0,09;-62,25\n")]
    [InlineData("! Column 2: Frequency, kHz\n! Column 1: Level in dBm\n-60.5,30000\n-61,60000\n-62.25,90000\n")]
    [InlineData("Frequency | Level\nMHz       | dBm\n----------+------\n30        | -60.5\n60        | -61\n90        | "
        + "-62.25\n")]
    [InlineData("| Frequenz (MHz) | Pegel (dBm) |\n|---------------:|:-----------:|\n| 30 | -60,5 |\n| 60 | -61,0 |\n| 90 | "
        + "-62,25 |\n")]
    [InlineData("Curtain B, RBW = 9 kHz\nf/MHz|L/dBm\n=====|=====\n30|-60.5\n60|-61\n90|-62.25\n")]
    public void ThreeRowsAreRead(string text) => IsRead(text, [30e6, 60e6, 90e6], [-60.5, -61, -62.25]);

    [Theory]
    [InlineData("Start: 30 MHz; Stop: 90 MHz; Points: 7; Level unit: dBm\n-60 -61 -62\n-63 -64 -65\n-66\n")]
    [InlineData("Start,30 MHz\nStop,90 MHz\nPoints,7\nUnit,dBm\n-60,-61,-62,-63\n-64,-65,-66\n")]
    [InlineData("Start: 30 MHz\nSchrittweite: 10 MHz\nPunkte: 7\nEinheit: dBm\n-60,0;-61,0;-62,0;-63,0\n-64,0;-65,0;-66,0\n\n")]
    [InlineData("# f0 = 30 MHz\n# df = 10 MHz\n# N = 7\n# level/dBm\n-60\n-61\n-62\n-63\n-64\n-65\n-66\n")]
    [InlineData("First frequency: 30 MHz\nIncrement: 10000 kHz\nLevel unit: dBm\n-60\n-61\n-62\n-63\n-64\n-65\n-66\n")]
    [InlineData("f_0 = 0.03 GHz; Δf = 10 MHz; count = 7\nLevel (dBm)\n-60\n-61\n-62\n-63\n-64\n-65\n-66\n")]
    [InlineData("XStart,3.0E+07\nXStop,9.0E+07\nXUnit,Hz\nYUnit,dBm\nNumberOfValues,7\nValues\n-60,\n-61,\n-62,\n-63,\n-64,\n"
        + "-65,\n-66,\n")]
    public void SevenLevelsAreRead(string text) =>
    IsRead(text, [30e6, 40e6, 50e6, 60e6, 70e6, 80e6, 90e6], [-60, -61, -62, -63, -64, -65, -66]);

    [Theory]
    [InlineData("# f0 = 30 MHz\n# df = 10 MHz\n# N = 8\n# level/dBm\n-60\n-61\n-62\n-63\n-64\n-65\n-66\n",
        "the file states 8 points and holds 7 levels")]
    [InlineData("# f0 = 30 MHz\n# df = 10\n# N = 3\n# level/dBm\n-60\n-61\n-62\n", "but not both with a unit")]
    [InlineData("# f0 = 30 MHz\n# span = 10 MHz\n# df = 1 MHz\n# level/dBm\n-60\n-61\n-62\n", "neither start nor stop is stated")]
    [InlineData("Start: 1 MHz\nStep: 1 MHz\nSweep Type: Log\nUnit: dBm\n-60\n-61\n-62\n", "a step does not tell its frequencies")]
    [InlineData("Start: 30 MHz; Stop: 90 MHz; Points: 8; Level unit: dBm\n-60 -61 -62\n-63 -64 -65\n-66\n",
        "the number of columns is 1 here")]
    [InlineData("Frequency (kHz);Level (decibel volts)\n30000;-60.5\n60000;-61\n90000;-62.25\n",
        "does not say the unit of level")]
    [InlineData("Frequency (MHz),Level (dBm)\n30,-60.5\n'60,-61\n90,-62.25\n", "")]
    [InlineData("Frequency (MHz),Level (dBm)\n30,-60.5\n--,-61\n90,-62.25\n", "")]
    [InlineData("Frequency (MHz),Level (dBm)\n30,-60.5\n--;--\n60,-61\n90,-62.25\n", "")]
    [InlineData("Frequency (MHz),Level (dBm)\n30,-60.5\n'60,-61'\n90,-62.25\n", "")]
    [InlineData("| f (MHz) | L (dBm) |\n| 30 | -60.5 |\n| 60 | -61 \n| 90 | -62.25 |\n| 95 | -62 |\n", "")]
    [InlineData("| f (MHz) | L (dBm) |\n| 30 | -60.5 |\n| 60 | |\n| 90 | -62.25 |\n| 95 | -62 |\n", "")]
    [InlineData("Start: 30 MHz\nStop: 90 MHz\nPoints: 9\nUnit: dBm\n90 -60 -61\n60 -62 -63\n30 -64 -65\n", "")]
    [InlineData("Frequency (MHz),Level (dBm)\n30,-60.5\n--60,-61\n90,-62.25\n", "")]
    public void WhatIsLeftOpenIsRefused(string text, string why)
    {
        TraceReading reading = Read(text);
        string told = string.Join('\n', reading.Faults) + string.Join('\n', reading.Traces.SelectMany(t => t.Doubts));
        Assert.True(told.Length > 0 && told.Contains(why, StringComparison.Ordinal), told);
        Assert.All(reading.Traces, t => Assert.True(t.Unit is null or LevelUnit.DecibelMilliwatts));
    }

    [Theory]
    [InlineData("//")]
    [InlineData("--")]
    [InlineData("'")]
    [InlineData("REM ")]
    public void OtherMarksOfCommentsArePassedOver(string mark)
    {
        string text = $"{mark} 1, 2, 3: cable numbers\nFreq [MHz],Amp [dBm]\n30,-60.5\n{mark} noted 10:31, and at "
            + $"10:32\n60,-61\n90,-62.25\n{mark} page 61, 2 of them\n";
        TraceReading reading = IsRead(text, [30e6, 60e6, 90e6], [-60.5, -61, -62.25]);
        Assert.Contains(reading.Assumptions, a => a.StartsWith("3 lines, the first of them line 1,", StringComparison.Ordinal)
            && a.EndsWith("were taken for comments", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Datum;Zeit;Einheit;88,0;88,5;89,0\n;;;MHz;MHz;MHz\n17.02.2026;09:00:00;dBm;-47,5;-45,25;-44\n17.02.2026;09:01:"
        + "00;dBm;-34,5;-31,25;-39\n", "17.02.2026 09:00:00")]
    [InlineData("Sweep,Level unit,88,88.5,89\nUnit,,MHz,MHz,MHz\nfirst,dBm,-47.5,-45.25,-44\nsecond,dBm,-34.5,"
        + "-31.25,-39\n", "first")]
    [InlineData("Time\t88000\t88500\t89000\n\t[kHz]\t[kHz]\t[kHz]\n09:00 dBm\t-47.5\t-45.25\t-44\n09:01 "
        + "dBm\t-34.5\t-31.25\t-39\n", "09:00 dBm")]
    public void ARowOfUnitsBelowTheFrequenciesIsRead(string text, string first)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.Equal([[-47.5, -45.25, -44], [-34.5, -31.25, -39]], reading.Traces.Select(t => t.Levels.ToArray()));
        Assert.All(reading.Traces, t => Assert.Equal([88e6, 88.5e6, 89e6], t.Axis.Hertz.ToArray()));
        Assert.Equal(first, reading.Traces[0].Column);
        Assert.All(reading.Traces, t => Assert.Equal(LevelUnit.DecibelMilliwatts, t.Unit));
    }

    [Fact]
    public void TwoUnitsInHeadingAndRowBelowAreRefused() =>
        Assert.Contains("another unit of "
            + "frequency",
            string.Join('\n',
                Read("Frequency (kHz),88,88.5,89\nx,MHz,MHz,MHz\nA (dBm),-47.5,-45.25,-44\nB (dBm),-34.5,-31.25,-39\n").Faults),
            StringComparison.Ordinal);

    [Theory]
    [InlineData("Range 1: 30 MHz to 33 MHz", "Range 2: 33 MHz to 37 MHz")]
    [InlineData("Segment 1 (30 - 33 MHz)", "Segment 2 (33 - 37 MHz)")]
    [InlineData("Bereich 1: 30 MHz bis 33 MHz", "Bereich 2: 33 MHz bis 37 MHz")]
    [InlineData("Band 1 from 30000 kHz to 33 MHz", "Band 2 from 33000 kHz to 37 MHz")]
    public void RangesAsBlocksAreJoined(string one, string two)
    {
        TraceReading reading =
            IsRead(Blocks(one, two, -63), [30e6, 31e6, 32e6, 33e6, 35e6, 36e6, 37e6], [-60, -61, -62, -63, -65, -66, -67]);
        Assert.Contains(reading.Assumptions, a => a.Contains("the frequency 33000000 Hz stands twice", StringComparison.Ordinal));
    }

    [Fact]
    public void ABorderWithTwoValuesIsRefused() =>
    Assert.NotEmpty(Read(Blocks("Range 1: 30 MHz to 33 MHz", "Range 2: 33 MHz to 37 MHz", -93)).Faults);

    [Fact]
    public void RowsThatEndElsewhereThanTheirLastRangeAreRefused() =>
        Assert.NotEmpty(Read(Blocks("Range 1: 30 MHz to 33 MHz", "Range 2: 33 MHz to 3.7 GHz", -63)).Faults);

    private static string Blocks(string one, string two, int border) =>
        $"{one}\nFrequency [MHz]\tLevel [dBm]\n30\t-60\n31\t-61\n32\t-62\n33\t-63\n\n{two}\nFrequency [MHz]\tLevel "
            + $"[dBm]\n33\t{border}\n35\t-65\n36\t-66\n37\t-67\n";

    private TraceReading IsRead(string text, double[] hertz, double[] levels)
    {
        TraceReading reading = Read(text);
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(hertz, trace.Axis.Hertz.ToArray());
        Assert.Equal(levels, trace.Levels.ToArray());
        Assert.Equal(LevelUnit.DecibelMilliwatts, trace.Unit);
        Assert.Empty(trace.Doubts);
        return reading;
    }

    private TraceReading Read(string text) => _folder.With("t.csv", text).Trace("t.csv");
}
