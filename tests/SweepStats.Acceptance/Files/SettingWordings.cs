using SweepStats.Files.Traces;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>How files word their settings, and what of it is not used and said. Every sample is invented.</summary>
public sealed class SettingWordings : IDisposable
{
    private const string Rows = "Frequency (Hz),Level (dBm)\n1000000,-50\n2000000,-51\n3000000,-52\n";
    private const string GermanRows = "Frequenz (MHz);Pegel (dBm)\n1,5;-50,5\n2,5;-51\n3,5;-52\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("rbw_hz,9000\n", 9e3)]
    [InlineData("RBW [kHz];9\n", 9e3)]
    [InlineData("RBW in kHz: 9\n", 9e3)]
    [InlineData("RBW/kHz,9\n", 9e3)]
    [InlineData("RBW;9 kHz;AUTO\n", 9e3)]
    [InlineData("RBW: AUTO 9 kHz\n", 9e3)]
    [InlineData("RBW AUTO 9 kHz\n", 9e3)]
    [InlineData("RBW: 9 kHz (auto)\n", 9e3)]
    [InlineData("RBW: 9 kHz (6 dB)\n", 9e3)]
    [InlineData("RBW,9,kHz,Gaussian\n", 9e3)]
    [InlineData("RBW: 9 (kHz)\n", 9e3)]
    [InlineData("RBW: 9.000000e+03 Hz\n", 9e3)]
    [InlineData("RBW: 0,1 MHz\n", 1e5)]
    [InlineData("RBW 0,1 MHz\n", 1e5)]
    [InlineData("RBW: 0,125 MHz\n", 125e3)]
    [InlineData("RBW: 1,000,000 Hz\n", 1e6)]
    [InlineData("RBW: 10k\n", 10e3)]
    [InlineData("RBW=1M\n", 1e6)]
    [InlineData("IF BW: 100 Hz\n", 100)]
    [InlineData("Auflösebandbreite: 120 kHz\n", 120e3)]
    [InlineData("ZF-Bandbreite;1;kHz\n", 1e3)]
    [InlineData("Largeur de bande de résolution: 10 kHz\n", 10e3)]
    [InlineData("Ancho de banda de resolución: 30 kHz\n", 30e3)]
    [InlineData("Larghezza di banda di risoluzione: 3 kHz\n", 3e3)]
    [InlineData("# floor of the cabin, taken with RBW 100 kHz and att 10 dB\n", 100e3)]
    [InlineData("Cabin floor RBW 100kHz\n", 100e3)]
    [InlineData("RBW,100 kHz,VBW,300 kHz,SWT,0.2 s\n", 100e3)]
    [InlineData("Bench,3,RBW,100 kHz\n", 100e3)]
    [InlineData("RBW: 100 kHz VBW: 300 kHz\n", 100e3)]
    [InlineData("Trace 1\nRBW,30 kHz\n", 30e3)]
    [InlineData("# RBW: 30 kHz | VBW: 300 kHz | SWT: 20 ms\n", 30e3)]
    [InlineData("# RBW=30kHz VBW=300kHz ATT=10dB REF=-20dBm DET=RMS\n", 30e3)]
    [InlineData("Bandbreite (RBW): 30 kHz\n", 30e3)]
    [InlineData("Setup: RBW=30kHz, QP, Preamp=off\n", 30e3)]
    [InlineData("RBW (-3dB): 30 kHz\n", 30e3)]
    public void ABandwidthIsFoundHoweverItIsWorded(string preamble, double hertz) =>
    Assert.Equal(hertz, Settings(preamble).ResolutionBandwidthHz);

    [Theory]
    [InlineData("RBW: 1,234 kHz\n")]
    [InlineData("RBW 10 kHz to 100 kHz\n")]
    [InlineData("filter with RBW 10 kHz to 100 kHz\n")]
    [InlineData("RBW;off\n")]
    [InlineData("RBW;---\n")]
    [InlineData("RBW;AUTO\n")]
    [InlineData("RBW 6 dB filter\n")]
    [InlineData("the RBW of 9 and 120\n")]
    [InlineData("RBW,9 kHz,120 kHz\n")]
    [InlineData("RBW: 9 dB\n")]
    public void WhatIsNoBandwidthForCertainIsNone(string preamble) => Assert.Null(Settings(preamble).ResolutionBandwidthHz);

    [Theory]
    [InlineData("RBW,9000\n", "the RBW in line 1, '9000', has no unit and was not used")]
    [InlineData("RBW: 1,234 kHz\n", "the RBW in line 1, '1,234 kHz', is not plainly one number with its unit and was not used")]
    [InlineData("Room 3\nVBW;10 dB\n", "the VBW in line 2, '10 dB', is in 'dB' and was not used")]
    [InlineData("Bandwidth: 120 kHz\n", "the bandwidth in line 1, '120 kHz', may be the RBW or another one and was not used")]
    [InlineData("RBW,9 kHz\nRoom,3\nRBW,10 kHz\n", "lines 1 and 3 state the RBW differently; neither was used")]
    [InlineData("Sweep Time,120\n", "the sweep time in line 1, '120', has no unit and was not used")]
    [InlineData("X Axis Units,Hz\nSweep "
        + "Time,0.12\n", "the sweep time in line 2, '0.12', has no unit and was taken for seconds: the frequencies are in Hz "
            + "and no unit stands behind any setting")]
    [InlineData("Date,2026-03-05\nMeasured,2026-03-06 10:00\n",
        "the file states two times, 2026-03-05 00:00:00 and 2026-03-06 10:00:00; neither was used")]
    public void WhatIsStatedAndNotUsedIsSaid(string preamble, string said) =>
    Assert.Contains(said, Read(preamble + Rows).Assumptions);

    [Theory]
    [InlineData("RBW;AUTO\nVBW;off\nAtt;---\nSWT;auto\n")]
    [InlineData("Sweep,3\nDate,2026-03-05\nDate/Time,2026-03-05 10:00\n")]
    [InlineData("Attenuation,10 dB\nRBW;9 kHz\nRBW: 9000 Hz\n")]
    public void WhatIsPlainOrStatesNothingIsNotTalkedAbout(string preamble) => Assert.Empty(Read(preamble + Rows).Assumptions);

    [Theory]
    [InlineData("Att: 10 dB (auto)\n", 10.0)]
    [InlineData("RF Att;AUTO 10 dB\n", 10.0)]
    [InlineData("Input Attenuation,0\n", 0.0)]
    [InlineData("Dämpfung;20;dB\n", 20.0)]
    [InlineData("Atténuation d'entrée : 10 dB\n", 10.0)]
    [InlineData("Atenuación,15,dB\n", 15.0)]
    [InlineData("curtain shut, RF att 10 dB\n", 10.0)]
    [InlineData("external att 10 dB\n", null)]
    [InlineData("External Attenuation,10 dB\n", null)]
    [InlineData("Att,10 dBm\n", null)]
    public void TheAttenuationIsThatOfTheInput(string preamble, double? db) => Assert.Equal(db, Settings(preamble).AttenuationDb);

    [Theory]
    [InlineData("SweepTime(ms),20\n", 0.02)]
    [InlineData("SWT;20 ms;AUTO\n", 0.02)]
    [InlineData("Ablaufzeit;2,5;s\n", 2.5)]
    [InlineData("Temps de balayage: 800 ms\n", 0.8)]
    [InlineData("Res BW 100 kHz   Vid BW 1 MHz   Att 20 dB   Sweep 60 ms\n", 0.06)]
    [InlineData("Sweep Time:  ,6.44e-02,Sec\n", 0.0644)]
    [InlineData("Sweep 3\n", null)]
    [InlineData("Sweep,3\n", null)]
    public void TheSweepTimeIsInSeconds(string preamble, double? seconds) =>
    Assert.Equal(seconds, Settings(preamble).SweepTimeSeconds);

    [Theory]
    [InlineData("Average Count,16\n", 16, "16")]
    [InlineData("Averages: 64 (power)\n", 64, "64 (power)")]
    [InlineData("Averages,16\nAverage Type,Power\n", 16, "Power")]
    [InlineData("Mittelungen;10\n", 10, "10")]
    [InlineData("Averaging,off\n", null, "off")]
    [InlineData("Averaging: on\nAveraging Factor: 8\n", 8, "8")]
    [InlineData("AVERAGING: auto\n", null, "auto")]
    [InlineData("Average Count,2.5\n", null, null)]
    public void AveragesAreCountedAndNamed(string preamble, int? count, string? word)
    {
        ReceiverSettings settings = Settings(preamble);
        Assert.Equal((count, word), (settings.Averages, settings.Averaging));
    }

    [Theory]
    [InlineData("Detektor;Mittelwert\n", "average")]
    [InlineData("Détecteur: Crête\n", "peak")]
    [InlineData("Detector,RMS,AUTO\n", "RMS")]
    public void DetectorsOfOtherLanguagesHaveTheirEnglishName(string preamble, string word) =>
    Assert.Equal(word, Settings(preamble).Detector);

    [Theory]
    [InlineData("Preamplifier,disabled,Averaging,off,Detector,Sample\n", "disabled")]
    [InlineData("Vorverstärker;aus\n", "off")]
    [InlineData("Préamplificateur;activé\n", "on")]
    [InlineData("Preamp=20 dB\n", "20 dB")]
    [InlineData("Preamp,---\n", null)]
    public void ThePreamplifierIsKeptInWords(string preamble, string? word) =>
    Assert.Equal(word, Settings(preamble).Preamplifier);

    [Fact]
    public void PairsInOneLineStateEachItsOwn()
    {
        ReceiverSettings settings =
            Settings("RBW,10 kHz,VBW,30 kHz,ATT,0 dB,SWT,1.2 s\nPreamplifier,disabled,Averaging,off,Detector,Sample\n");
        Assert.Equal((10e3, 30e3, 0.0, 1.2),
            (settings.ResolutionBandwidthHz, settings.VideoBandwidthHz, settings.AttenuationDb, settings.SweepTimeSeconds));
        Assert.Equal(("disabled", "off", "Sample"), (settings.Preamplifier, settings.Averaging, settings.Detector));
    }

    [Theory]
    [InlineData("# RBW=100kHz VBW=300kHz ATT=10dB REF=-20dBm DET=RMS\n")]
    [InlineData("# RBW 100 kHz, VBW 300 kHz, Att 10 dB, Ref -20 dBm, Det RMS\n")]
    [InlineData("RBW: 100 kHz VBW: 300 kHz Input Att: 10 dB Ref Lvl: -20 dBm Det: RMS\n")]
    public void ManySettingsMayStandInOneLine(string preamble)
    {
        ReceiverSettings settings = Settings(preamble);
        Assert.Equal((100e3, 300e3, 10.0, -20.0),
            (settings.ResolutionBandwidthHz, settings.VideoBandwidthHz, settings.AttenuationDb, settings.ReferenceLevel));
        Assert.Equal("RMS", settings.Detector);
    }

    [Fact]
    public void APointBesideDecimalCommasMayPartThousands()
    {
        TraceReading reading = Read("RBW: 100.000 Hz\n" + GermanRows);
        Assert.Null(reading.Settings.ResolutionBandwidthHz);
        Assert.Contains("the RBW in line 1, '100.000 Hz', has a point that may part thousands or decimals, and was not used",
            reading.Assumptions);
        Assert.Equal(100.0, Settings("RBW: 100.000 Hz\n").ResolutionBandwidthHz);
    }

    [Fact]
    public void ATitleOfColumnsStatesNoSetting()
    {
        ReceiverSettings settings = Settings("Attenuation (dB),Reference Level (dBm),Detector\n");
        Assert.Equal((null, null), (settings.AttenuationDb, settings.ReferenceLevel));
        Assert.Null(Read("Average (dBm),Frequency (MHz)\n-50,1\n-51,2\n-52,3\n").Settings.Averages);
    }

    [Fact]
    public void SettingsOfEachTraceAreItsOwn()
    {
        TraceReading listed =
            Read("RBW,9 kHz,120 kHz\nFrequency (Hz),A (dBm),B (dBm)\n1000,-50,-60\n2000,-51,-61\n3000,-51,-61\n");
        Assert.Equal([9e3, 120e3], listed.Traces.Select(t => t.Settings.ResolutionBandwidthHz));
        Assert.Null(listed.Settings.ResolutionBandwidthHz);
        TraceReading headed = Read(
            "VBW,1 MHz\n\n[Trace 1]\nRBW,9 kHz\nDetector,Peak\n[Trace 2]\nRBW,120 kHz\nDetector,RMS\n\n"
            + "Frequency (Hz),A (dBm),B (dBm)\n1000,-50,-60\n2000,-51,-61\n3000,-51,-61\n");
        Assert.Equal([9e3, 120e3], headed.Traces.Select(t => t.Settings.ResolutionBandwidthHz));
        Assert.Equal(["Peak", "RMS"], headed.Traces.Select(t => t.Settings.Detector));
        Assert.Equal(1e6, headed.Settings.VideoBandwidthHz);
        TraceReading numbered = Read(
            "Trace 1 RBW,9 kHz\nTrace 2 RBW,120 kHz\nFrequency (Hz),A (dBm),B (dBm)\n1000,-50,-60\n2000,-51,-61\n3000,-51,-61\n");
        Assert.Equal([9e3, 120e3], numbered.Traces.Select(t => t.Settings.ResolutionBandwidthHz));
    }

    [Fact]
    public void ABandwidthBetweenTwoTablesIsThatOfTheOneBelow()
    {
        const string table = "Frequency (Hz),Level (dBm)\n1000,-50\n2000,-51\n3000,-52\n";
        TraceReading reading = Read("Trace A\nRBW,9 kHz\n" + table + "\nTrace B\nRBW,120 kHz\n" + table);
        Assert.Equal([9e3, 120e3], reading.Traces.Select(t => t.Settings.ResolutionBandwidthHz));
    }

    [Fact]
    public void DecimalCommasAreReadBesideAGermanTable()
    {
        TraceReading reading =
            Read("Parameter;Wert;Einheit\nAuflösebandbreite;0,2;kHz\nReferenzpegel;-10,5;dBm\nUhrzeit;14:30:05\nDatum;"
                + "17.02.2026\n" + GermanRows);
        Assert.Equal((200.0, -10.5), (reading.Settings.ResolutionBandwidthHz, reading.Settings.ReferenceLevel));
        Assert.Equal(new DateTimeOffset(2026, 2, 17, 14, 30, 5, TimeSpan.Zero), reading.Traces[0].TakenAt);
    }

    [Theory]
    [InlineData("! VAR DATE=6/13/2018 12:01:58 PM\n", "2018-06-13T12:01:58")]
    [InlineData("! Created: UTC 6/29/2017, 11:43:21 PM\n", "2017-06-29T23:43:21")]
    [InlineData("! Type: curtain\n! Room: cabin\n! Unit: 1\n! Date: 09-Sep-2014\n", "2014-09-09T00:00:00")]
    [InlineData("! Date/Time: Fri 26/Apr/2013 14:13:11\n", "2013-04-26T14:13:11")]
    [InlineData("! Measured 17 Feb 2026 09:41:00\n", "2026-02-17T09:41:00")]
    [InlineData("! Datum: 3. März 2026 09:41\n", "2026-03-03T09:41:00")]
    [InlineData("! Measured on 17.02.2026 at 10:20:30 in the cabin\n", "2026-02-17T10:20:30")]
    [InlineData("! Start time: 2026-02-17 10:20:30\n! Stop time: 2026-02-17 10:25:30\n", "2026-02-17T10:20:30")]
    [InlineData("! Datum: 17.02.2026 Uhrzeit: 10:20:30\n", "2026-02-17T10:20:30")]
    [InlineData("! Date: 3 juillet 2026\n", "2026-07-03T00:00:00")]
    [InlineData("! Date: 20260217T094100\n", "2026-02-17T09:41:00")]
    [InlineData("! Date: 14:30:05 17.02.2026\n", "2026-02-17T14:30:05")]
    [InlineData("! Date: 2026-Feb-17 09:41\n", "2026-02-17T09:41:00")]
    [InlineData("! Date: 03/05/2026\n", null)]
    [InlineData("! Date/Time: Fri 26/Apr/2013 14:13:11\n! Date/time: Tue Apr 23 16:46:24 2013\n", null)]
    public void DatesOfCommentsAreRead(string comments, string? time)
    {
        TraceReading reading = Touchstone(comments);
        Assert.Equal(time,
            reading.Traces[0].TakenAt?.ToString("yyyy-MM-ddTHH:mm:ss", System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal(time is null, reading.Assumptions.Any(a => a.Contains("used", StringComparison.Ordinal)));
    }

    [Fact]
    public void CommentsOfANetworkAnalyserTellItsSettings()
    {
        ReceiverSettings settings = Touchstone(
            "! IF bandwidth: 100 Hz, source power: -5 dBm\n! Averages: 16\n! Sweep time: 2.5 s\n! Correction: on\n").Settings;
        Assert.Equal((100.0, -5.0, 16, 2.5),
            (settings.ResolutionBandwidthHz, settings.SourcePowerDbm, settings.Averages, settings.SweepTimeSeconds));
        Assert.Equal(-10.0,
            Touchstone("! TEST CONDITIONS: INPUT POWER = -10 dBm @ Temperature = + 25 deg C\n").Settings.SourcePowerDbm);
        Assert.Equal(0.0, Touchstone("! TEST CONDITIONS: INPUT POWER = 0 dBm - -55 deg C\n").Settings.SourcePowerDbm);
        Assert.Null(Touchstone("! INPUT POWER = -20 dBm to -10 dBm\n").Settings.SourcePowerDbm);
        Assert.Null(Touchstone("! POWER: 0.0 dB\n").Settings.SourcePowerDbm);
    }

    private ReceiverSettings Settings(string preamble) => Read(preamble + Rows).Settings;

    private TraceReading Touchstone(string comments) =>
        _folder.With("t.s2p", comments + "# MHz S DB R 50\n50 -12 0 -44 0 -47 0 -14 0\n60 -12 0 -44 0 -47 0 -14 0\n")
            .Trace("t.s2p");

    private TraceReading Read(string text) => _folder.With("t.csv", text).Trace("t.csv");
}
