using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>Magnitudes and complex numbers in the many wordings of network analysers; every file is invented.</summary>
public sealed class MagnitudeWordings : IDisposable
{
    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("S21(MAG),S21(DEG)", "0.5,10", "0.25,20", true)]
    [InlineData("|S21|,arg(S21) (deg)", "0.5,10", "0.25,20", true)]
    [InlineData("Betrag S21,Phase S21 (Grad)", "0.5,10", "0.25,20", true)]
    [InlineData("mag(S21)", "0.5", "0.25", false)]
    [InlineData("Mag S21", "0.5", "0.25", false)]
    [InlineData("S21 magnitude (linear)", "0.5", "0.25", false)]
    [InlineData("lin. Betrag S21", "0.5", "0.25", false)]
    [InlineData("S21 lin", "0.5", "0.25", false)]
    public void AMagnitudeIsLinear(string names, string first, string second, bool phased)
    {
        TraceReading reading = Read($"Freq (MHz),{names}\n100,{first}\n110,{second}\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Trace trace = Assert.Single(reading.Traces);
        Assert.Equal(("S21", LevelUnit.LinearMagnitude), (trace.Quantity, trace.Unit));
        Assert.Equal([0.5, 0.25], trace.Levels.ToArray());
        Assert.Equal(phased ? [10.0, 20] : [], trace.Phases.ToArray());
    }

    [Fact]
    public void AMagnitudeBelowZeroIsInDecibels()
    {
        TraceReading reading = Read("Freq (MHz),|S21|\n100,-50\n110,-51\n");
        Assert.Equal(LevelUnit.Decibels, Assert.Single(reading.Traces).Unit);
        Assert.Contains("column |S21| is the magnitude of an S-parameter and goes below 0, so it was taken in dB",
            reading.Assumptions);
    }

    [Theory]
    [InlineData("S21(DB)")]
    [InlineData("dB(S21)")]
    [InlineData("S21 Log Mag")]
    public void DecibelsStayDecibels(string name) =>
    Assert.Equal(LevelUnit.Decibels, Assert.Single(Read($"Freq (MHz),{name}\n100,0.5\n110,0.25\n").Traces).Unit);

    [Fact]
    public void WhatAPersonStatesGoesBeforeWhatTheNumbersSuggest()
    {
        const string Text = "Freq (MHz),Mag,Phase (deg)\n100,0.5,10\n110,0.25,20\n";
        Assert.Equal(LevelUnit.LinearMagnitude, Read(Text).Traces[0].Unit);
        Assert.Equal(LevelUnit.Volts, Read(Text, new TraceReadOptions { LevelUnit = LevelUnit.Volts }).Traces[0].Unit);
    }

    [Fact]
    public void AMagnitudeOfNothingKnownIsAskedFor()
    {
        const string Text = "Freq (MHz),Magnitude\n100,0.5\n110,0.25\n";
        Assert.Contains("mW or linear in the header", Assert.Single(Read(Text).Faults).Remedy, StringComparison.Ordinal);
        Assert.Equal(LevelUnit.LinearMagnitude,
            Assert.Single(Read(Text, new TraceReadOptions { LevelUnit = LevelUnits.Parse("linear") }).Traces).Unit);
    }

    [Theory]
    [InlineData("Re(S21),Im(S21)")]
    [InlineData("S21 Realteil,S21 Imaginärteil")]
    [InlineData("S21(REAL),S21(IMAG)")]
    [InlineData("S21 partie réelle,S21 partie imaginaire")]
    [InlineData("S21 parte real,S21 parte imaginaria")]
    [InlineData("S21 real part,S21 imaginary part")]
    public void PartsMakeALevelAndAPhase(string names)
    {
        // |3 + 4i| = 5, by hand.
        Trace trace = Assert.Single(Read($"Freq (MHz),{names}\n100,3,4\n110,6,8\n").Traces);
        Assert.Equal(("S21", LevelUnit.Decibels, 20 * Math.Log10(5)), (trace.Quantity, trace.Unit, trace.Levels[0]));
        Assert.Equal(53.130102354155979, trace.Phases[0], 9);
    }

    [Fact]
    public void AllRealPartsMayStandBeforeAllImaginaryOnes()
    {
        _folder.With("t.csv", "f_MHz,Re S11,Re S21,Im S11,Im S21\n100,1,3,0,4\n110,1,6,0,8\n");
        Trace trace = Assert.Single(_folder.Trace("t.csv").Traces);
        Assert.Equal(("S21", 20 * Math.Log10(5)), (trace.Quantity, trace.Levels[0]));
    }

    [Fact]
    public void AGainIsACorrectionOrTheTransmission()
    {
        const string Text = "Frequency (MHz),Gain (dB)\n30,-40\n300,-41\n";
        Assert.Contains("is a gain: a correction, or a transmission that was measured", Assert.Single(Read(Text).Faults).Problem,
            StringComparison.Ordinal);
        Assert.Equal(-40, Assert.Single(Read(Text, new TraceReadOptions { Columns = ["2"] }).Traces).Levels[0]);
        Assert.Equal(-40, Assert.Single(Read("Frequency (MHz),S21 Gain (dB)\n30,-40\n300,-41\n").Traces).Levels[0]);
        Assert.Equal([10.0, 20],
            Assert.Single(Read("Frequency (MHz),Gain (dB),Phase (deg)\n30,-40,10\n300,-41,20\n").Traces).Phases.ToArray());
    }

    [Fact]
    public void AnAttenuationIsNoLevelEvenWhenNamed()
    {
        const string Text = "Frequency (MHz),Attenuation (dB)\n30,40\n300,41\n";
        Assert.Contains("which rises where the level falls", Assert.Single(Read(Text).Faults).Problem, StringComparison.Ordinal);
        Assert.Contains("which rises where the level falls",
            Assert.Single(Read(Text, new TraceReadOptions { Columns = ["2"] }).Faults).Problem, StringComparison.Ordinal);
    }

    private TraceReading Read(string text, TraceReadOptions? options = null) =>
        _folder.With("t.csv", text).Trace("t.csv", options);
}
