using SweepStats.Files;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>What stands beside a level and is none, whatever its unit: never a second sweep in silence.</summary>
public sealed class QuantitiesBeside : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("f_kHz,level_V,batt_V\n100,0.02,12.1\n110,0.03,12.1\n120,0.02,12.2\n")]
    [InlineData("f_MHz,level_dBm,source_power_dBm\n100,-60,-10\n110,-61,-10.1\n120,-62,-10\n")]
    [InlineData("Frequenz (MHz);Pegel (dBm);Temperatur (°C)\n100;-60;21\n110;-61;22\n120;-62;22\n")]
    [InlineData("Frequency (MHz),Level (dBm),dwell_ms\n100,-60,20\n110,-61,21\n120,-62,20\n")]
    [InlineData("Frecuencia (MHz);S21 (dB);Incertidumbre (dB)\n100;-60;1\n110;-61;1\n120;-62;1\n")]
    [InlineData("Frequency (MHz),100,110,120\nS21 (dB),-60,-61,-62\nUncertainty (dB),1,1,1.1\n")]
    [InlineData("Frequency (MHz),100,110,120\nS21 (dB),-60,-61,-62\nCable loss (dB),1,1,1.1\n")]
    public void IsNotRead(string text) => Assert.Single(Read(text).Traces);

    [Theory]
    [InlineData("Frequency (MHz),Level (V),Fan (V)\n100,0.02,12.1\n110,0.03,12.1\n120,0.02,12.2\n", "'Fan (V)'")]
    [InlineData("Frequency (MHz),Attenuation (dB),Odd (dB)\n100,60,1\n110,61,1\n120,62,1\n", "Odd (dB)")]
    public void OfAnotherNameIsAskedFor(string text, string column) =>
        Assert.Contains(Read(text).Faults, f =>
            f.Problem.Contains(column, StringComparison.Ordinal) && f.Remedy.Contains("level_columns", StringComparison.Ordinal));

    // Half the decibels, or none at all: to take them for a magnitude would double the shielding.
    [Theory]
    [InlineData("|S21|^2")]
    [InlineData("|S21|²")]
    [InlineData("S21 mag²")]
    [InlineData("S21 squared (linear)")]
    [InlineData("S21 (linear power)")]
    [InlineData("d|S21|")]
    public void ASquareAndAnErrorAreNoMagnitudes(string name) =>
        Assert.Contains("no column holds a level",
            Assert.Single(Read($"Frequency (MHz),{name}\n100,0.001\n110,0.002\n120,0.001\n").Faults).Problem,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("Frequency (MHz),Level (dBm),Role\n30,-20,reference\n31,-20,reference\n32,-60,covered\n33,-61,covered\n",
        "may tell what each row is of: 'reference', 'covered'")]
    [InlineData("Frequency (MHz),Level (dBm),State\n30,-20,\n31,-20,ADC overload\n32,-60,\n33,-61,\n",
        "'ADC overload' in column 3 marks the row as no good reading")]
    [InlineData("Frequency (MHz),Level (dBm)\n30,-20\n31,-20\nNote: covered from here on\n32,-60\n33,-61\n",
        "interrupts the rows")]
    [InlineData("Start,30 MHz\nStop,34 MHz\nPoints,5\nUnit,dBm\nTrace 1,-60,-61,-60,-62,-61\nLimit,-30,-30,-31,-30,-32\n",
        "the row called 'Limit' is no level")]
    [InlineData("Start,30 MHz\nStop,34 MHz\nPoints,5\nX axis: logarithmic by segments\nLevel (dBm)\n-60\n-61\n-60\n-62\n-61\n",
        "may not lie at equal steps")]
    public void WhatChangesTheMeaningOfRowsIsRefused(string text, string said) =>
        Assert.Contains(Read(text).Faults, f => f.Problem.Contains(said, StringComparison.Ordinal));

    [Theory]
    [InlineData("# Limit: level in dBµV 40\n")]
    [InlineData("# The level in dBm of the source was 10\n")]
    [InlineData("# Drift of the level in dB per hour\n")]
    public void AUnitOfSomethingElseIsNotTaken(string above) =>
        Assert.Contains(Read(above + "Frequency (MHz),Level\n100,-60\n110,-61\n120,-62\n").Faults,
            f => f.Problem.Contains("does not say the unit of level", StringComparison.Ordinal));

    [Fact]
    public void ALevelOverTimeIsNoSweep()
    {
        ReadFault fault = Assert.Single(Read("Time (ms),Level (dBm)\n0,-60\n1,-61\n2,-62\n").Faults);
        Assert.Contains("no column is named as the frequency among 1 'Time (ms)'", fault.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Frequency [kHz],Level [dBm]\n900 MHz,-69\n902 MHz,-68\n904 MHz,-67\n",
        "the header gives the frequencies in kHz and the rows in MHz")]
    [InlineData("Frequency [MHz],Level [dBm]\nMHz,dBµV\n30,-69\n32,-68\n34,-67\n",
        "the header gives column Level [dBm] and the line of units below it 'dBµV'")]
    [InlineData("Centre,500 MHz\nSpan,100 MHz\nStart,900 MHz\nStop,1000 MHz\nPoints,6\nLevel "
        + "[dBm]\n-69\n-68\n-67\n-66\n-65\n-64\n", "by centre and span one from 450000000 Hz to 550000000 Hz")]
    public void TwoStatementsThatDifferAreRefused(string text, string said) =>
        Assert.Contains(Read(text).Faults, f => f.Problem.Contains(said, StringComparison.Ordinal));

    [Fact]
    public void SettingsStandInTwoLines()
    {
        Trace trace =
            Assert.Single(Read("RBW [kHz],VBW [kHz],Att [dB],Ref [dBm],Detector\n100,300,10,-20,RMS\n\nFrequency [MHz],Level "
                + "[dBm]\n30,-74\n35,-75\n40,-76\n").Traces);
        Assert.Equal((1e5, 3e5, 10.0, -20.0, "RMS"), (trace.Settings.ResolutionBandwidthHz, trace.Settings.VideoBandwidthHz,
            trace.Settings.AttenuationDb, trace.Settings.ReferenceLevel, trace.Settings.Detector));
    }

    private TraceReading Read(string text)
    {
        _folder.With("t.csv", text);
        return _folder.Trace("t.csv");
    }
}
