using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Sweeps;

/// <summary>What receivers' words mean. Common practice, no source.</summary>
public sealed class DetectorWordsTests
{
    [Theory]
    [InlineData("peak"), InlineData("PEAK"), InlineData("Pos"), InlineData("POS PEAK"), InlineData("Positive Peak"),
        InlineData("+Peak"), InlineData("Peak+"), InlineData("Peak(+)")]
    [InlineData("Max Peak"), InlineData("MAXPEAK"), InlineData("Pk"), InlineData("PK+"), InlineData("+pk"),
        InlineData("Quasi-Peak"), InlineData("quasi peak"), InlineData("QuasiPeak")]
    [InlineData("QP"), InlineData("QPE"), InlineData("CISPR QP"), InlineData("Normal"), InlineData("NORM"),
        InlineData("Auto Peak"), InlineData("AUTOPEAK"), InlineData("Rosenfell")]
    [InlineData("peak detector"), InlineData("Detector: POSitive"), InlineData(" max_peak "), InlineData("Peak 1")]
    public void DetectorsThatKeepTheHighest(string word) => Assert.Equal(Averaging.Peak, Of(detector: word));

    [Theory]
    [InlineData("neg"), InlineData("Negative"), InlineData("NEGATIVE PEAK"), InlineData("Neg-Peak"), InlineData("Min Peak"),
        InlineData("minpeak"), InlineData("-Peak"), InlineData("PK-")]
    [InlineData("\u2212peak"), InlineData("Peak (-)")]
    public void DetectorsThatKeepTheLowest(string word) => Assert.Equal(Averaging.Lowest, Of(detector: word));

    [Theory]
    [InlineData("Max Hold"), InlineData("MAXH"), InlineData("MAXHOLD"), InlineData("MaxHold"), InlineData("Maximum hold"),
        InlineData("Max-Hold"), InlineData("Max Hold (100 sweeps)"), InlineData("Trace 1: MAX HOLD")]
    [InlineData("peak hold")]
    public void TracesHeldAtTheirMaximum(string word) => Assert.Equal(Averaging.Peak, Of(trace: word));

    [Theory]
    [InlineData("Min Hold"), InlineData("MINH"), InlineData("minhold"), InlineData("Minimum Hold"), InlineData("min-hold")]
    public void TracesHeldAtTheirMinimum(string word) => Assert.Equal(Averaging.Lowest, Of(trace: word));

    [Theory]
    [InlineData("RMS", null), InlineData("rms detector", null), InlineData("RMS", "AVG"), InlineData("RMS", "Average"),
        InlineData("Average (RMS)", null), InlineData("Average Power", null)]
    [InlineData("Power Avg", null), InlineData(null, "Power"), InlineData(null, "Power average"),
        InlineData("Average", "Power (RMS)"), InlineData("Sample", "PWR AVG"), InlineData("RMS", "100")]
    public void AveragesOfPower(string? detector, string? averaging) => Assert.Equal(Averaging.Power, Of(detector, averaging));

    [Theory]
    [InlineData(null, "Log-Power"), InlineData(null, "LOG-PWR"), InlineData(null, "Log Power Average"),
        InlineData(null, "Video"), InlineData(null, "Video average"), InlineData("Sample", "log-pwr (video)"),
        InlineData("Average", "LogPwr")]
    [InlineData(null, "dB")]
    public void AveragesInDecibels(string? detector, string? averaging) => Assert.Equal(Averaging.Log, Of(detector, averaging));

    [Theory]
    [InlineData("Sample", null, null), InlineData("SAMP", "Off", null), InlineData("sample detector", null, "Clear Write"),
        InlineData("Sample", "1", "WRIT"), InlineData("SMPL", "none", "View")]
    public void SingleLooks(string detector, string? averaging, string? trace) =>
        Assert.Equal(Averaging.Sample, Of(detector, averaging, trace));

    [Theory]
    [InlineData(null, null, null), InlineData("", " ", null), InlineData(null, null, "Clear/Write"),
        InlineData(null, null, "CLRW"), InlineData(null, "Off", "Normal"), InlineData("Auto", null, null)]
    [InlineData("Average", null, null), InlineData("AVG", null, null), InlineData("CISPR Average", null, null),
        InlineData(null, "100", null), InlineData(null, "Linear", null), InlineData(null, "Voltage", null)]
    [InlineData("Sample", "100", null), InlineData("Sample", "100/100", "Clear Write"), InlineData("Sample", null, "Average"),
        InlineData("RMS", "Log-Power", null), InlineData("Peak/Average", null, null)]
    [InlineData("CISPR RMS", null, null), InlineData("Spitzenwert", null, null), InlineData("RMS", null, "Halten"),
        InlineData("Sample", null, "T1"), InlineData("multipeak", null, null)]
    public void WordsThatDoNotSayForCertainGiveNothing(string? detector, string? averaging, string? trace) =>
        Assert.Equal(Averaging.Unknown, Of(detector, averaging, trace));

    [Theory]
    [InlineData("RMS", "Power", "Max Hold", Averaging.Peak)]
    [InlineData("Sample", null, "Min Hold", Averaging.Lowest)]
    [InlineData("Peak", "Log-Power", "Average", Averaging.Peak)]
    [InlineData("Negative Peak", "100", "Average", Averaging.Lowest)]
    [InlineData("Peak", null, "Min Hold", Averaging.Lowest)]
    [InlineData("Negative Peak", null, "Max Hold", Averaging.Lowest)]
    [InlineData("Spitzenwert", null, "Max Hold", Averaging.Peak)]
    public void AHeldTraceGoesBeforeTheDetectorAndAKeptLookBeforeItsAverage(string detector, string? averaging, string trace,
        Averaging meant) =>
        Assert.Equal(meant, Of(detector, averaging, trace));

    [Fact]
    public void EveryWordIsReadWhateverItsCaseAndSigns()
    {
        foreach (string word in new[] { "positive peak", "min hold", "log power average", "rms", "sample" })
        {
            Averaging plain = Of(word);
            Assert.All([word.ToUpperInvariant(), word.Replace(" ", string.Empty, StringComparison.Ordinal),
                word.Replace(' ', '-'), word.Replace(' ', '_'), $"\"{word}\""],
                worded => Assert.Equal(plain, Of(worded)));
        }
    }

    private static Averaging Of(string? detector = null, string? averaging = null, string? trace = null) =>
        DetectorWords.Of(new ReceiverSettings { Detector = detector, Averaging = averaging, TraceMode = trace });
}
