using System.Collections.Immutable;
using SweepStats.Files.Traces;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>
/// Phases beside levels in delimited text. Values by hand: π/2 rad are 90°, the angle of 3 + 4i is 53.130102354155979°.
/// </summary>
public sealed class DelimitedPhases : IDisposable
{
    private const double Pythagorean = 53.130102354155979;

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("frequency_hz,level_dbm,phase_deg\n1000,-50,12.5\n2000,-51,-200\n", 12.5, -200)]
    [InlineData("Frequency (Hz);Phase [°];Level [dB]\n1000;12,5;-50,5\n2000;-200,0;-51,5\n", 12.5, -200)]
    [InlineData("Freq (Hz),S21 Log Mag (dB),S21 Phase "
        + "(rad)\n1000,-50,1.5707963267948966\n2000,-51,-3.1415926535897931\n", 90, -180)]
    [InlineData("Frequency (Hz),dB(S21),ang(S21) deg\n1000,-50,12.5\n2000,-51,-200\n", 12.5, -200)]
    [InlineData("Frequency (Hz)\tS(2,1) dB\tS21 (deg)\n1000\t-50\t12.5\n2000\t-51\t-200\n", 12.5, -200)]
    [InlineData("Freq (Hz),S21 Mag,S21 Phase (°)\n1000,0.5,12.5\n2000,0.25,-200\n", 12.5, -200)]
    [InlineData("frequency_hz,curtain (V),Phase unwrapped (degrees)\n1000,0.5,12.5\n2000,0.25,-200\n", 12.5, -200)]
    [InlineData("frequency_hz,Level dB(µV/m),Phase (deg)\n1000,50,12.5\n2000,51,-200\n", 12.5, -200)]
    [InlineData("frequency_hz,Re,Im\n1000,3,4\n2000,0,-2\n", Pythagorean, -90)]
    [InlineData("Freq (Hz)\tS21 Re\tS21 Im\tS21 Phase\n1000\t3\t4\t1\n2000\t-3\t-4\t2\n", Pythagorean, Pythagorean - 180)]
    [InlineData("Freq (Hz),\"A,1\"(REAL),\"A,1\"(IMAG)\n1000,3,4\n2000,-3,4\n", Pythagorean, 180 - Pythagorean)]
    [InlineData("Freq (Hz),S21 (dB),S21 Re,S21 Im\n1000,-50,3,4\n2000,-51,-3,4\n", Pythagorean, 180 - Pythagorean)]
    public void ThePhaseOfTheOneTraceIsKeptInDegrees(string text, double first, double second)
    {
        Trace trace = Assert.Single(Read(text).Traces);
        Assert.Equal(first, trace.Phases[0], 9);
        Assert.Equal(second, trace.Phases[1], 9);
        Assert.Empty(trace.ReverseLevels);
    }

    [Theory]
    [InlineData("S11 (dB),S11 (deg),S21 (dB),S21 (deg)", "S21 (dB)", 4.0)]
    [InlineData("S21 phase (deg),S21 (dB),S11 (dB),S11 phase (deg)", "S21 (dB)", 1.0)]
    [InlineData("Trace 1 (dBm),Trace 2 (dBm),Trace 1 phase (deg),Trace 2 phase (deg)", "Trace 2 (dBm)", 4.0)]
    [InlineData("CH1 level (dBm),CH1 phase (deg),CH2 level (dBm),CH2 phase (deg)", "CH1 level (dBm)", 2.0)]
    [InlineData("S11 (dB),S21 (dB),S21 (deg),Temperature (°C)", "S21 (dB)", 3.0)]
    public void OfSeveralTheNameTellsTheTrace(string columns, string level, double phase)
    {
        Trace trace = Look($"frequency_hz,{columns}\n1000,1,2,3,4\n2000,2,3,4,5\n").Traces.Single(t => t.Column == level);
        Assert.Equal([phase, phase + 1], trace.Phases.AsEnumerable());
        TraceReading asked = _folder.Trace("t.csv", new TraceReadOptions { Columns = [level] });
        Assert.Equal([phase, phase + 1], Assert.Single(asked.Traces).Phases.AsEnumerable());
    }

    // What is not certain is no phase: a wrong one would be subtracted as a voltage.
    [Theory]
    [InlineData("Level (dBm),Phase")]
    [InlineData("Level (dBm),Phase (deg or rad)")]
    [InlineData("Level (dBm),Angle (deg)")]
    [InlineData("Level (dBm),Azimuth (deg)")]
    [InlineData("Level (dBm),Phase error (deg)")]
    [InlineData("Level (dBm),u(Phase) (deg)")]
    [InlineData("Level (dBm),Phase drift (deg)")]
    [InlineData("S21 (dB),S11 phase (deg)")]
    [InlineData("Trace 1 (dBm),Trace 2 phase (deg)")]
    [InlineData("Level (dBm),Phase limit (deg)")]
    [InlineData("A (dBm),B (dBm),Phase (deg)")]
    [InlineData("V (V),H (V),Phase (deg)")]
    [InlineData("Level (dBm),Phase (deg),Phase 2 (deg)")]
    [InlineData("S21 (dB),S21 (dB),S21 (deg)")]
    [InlineData("Level (dBm),Level (dBµV),Phase (deg)")]
    public void WhatDoesNotCertainlyBelongToALevelIsLeft(string columns)
    {
        string numbers = string.Join(',', Enumerable.Range(1, columns.Split(',').Length));
        TraceReading reading = Look($"frequency_hz,{columns}\n1000,{numbers}\n2000,{numbers}\n3000,{numbers}\n");
        Assert.Equal("", string.Join('\n', reading.Faults));
        Assert.NotEmpty(reading.Traces);
        Assert.All(reading.Traces, t => Assert.Empty(t.Phases));
    }

    [Theory]
    [InlineData("frequency_hz,level_dbm,phase_deg\n1000,-50,0\n2000,-51,0\n")]
    [InlineData("frequency_hz,Re,Im\n1000,3,0\n2000,-4,0\n")]
    [InlineData("frequency_hz,level_dbm\n1000,-50\n2000,-51\n")]
    [InlineData("1000,-50,12\n2000,-51,13\n3000,-52,14\n")]
    public void ZerosInEveryRowAndColumnsWithoutNameAreNoPhase(string text) =>
        Assert.All(Look(text).Traces, t => Assert.Empty(t.Phases));

    [Fact]
    public void ThePhaseIsSaidToBeReadAndNoLongerToBeLeft()
    {
        ImmutableArray<string> assumptions =
            Read("frequency_hz,level_dbm,phase_deg,Uncertainty (dB)\n1000,-50,12,0.2\n2000,-51,13,0.2\n").Assumptions;
        Assert.Contains("column level_dbm has its phase beside it: 3 'phase_deg'", assumptions);
        Assert.Contains("columns that are not levels were not read: 4 'Uncertainty (dB)'", assumptions);
    }

    [Fact]
    public void SweepsBelowEachOtherHaveTheirOwnPhases()
    {
        TraceReading reading =
            Read("frequency_hz,level_dbm,phase_deg\n1000,-50,1\n2000,-51,2\n3000,-52,3\n\n1000,-60,4\n2000,-61,5\n3000,-62,6\n");
        Assert.Equal([[1.0, 2, 3], [4.0, 5, 6]], reading.Traces.Select(t => t.Phases.ToArray()));
    }

    [Fact]
    public void AskingForThePhaseAsALevelGivesItNoPhaseOfItsOwn()
    {
        Look("frequency_hz,level_db,phase_deg\n1000,-50,12\n2000,-51,13\n");
        TraceReading asked = TraceFile.Look(
            System.Text.Encoding.UTF8.GetBytes("frequency_hz,level_db,phase_deg\n1000,-50,12\n2000,-51,13\n"), "t.csv",
            new TraceReadOptions { Columns = ["phase_deg"] });
        Assert.All(asked.Traces, t => Assert.Empty(t.Phases));
    }

    private TraceReading Read(string text)
    {
        TraceReading reading = _folder.With("t.csv", text).Trace("t.csv");
        Assert.Equal("", string.Join('\n', reading.Faults));
        return reading;
    }

    private TraceReading Look(string text)
    {
        _folder.With("t.csv", text);
        return TraceFile.Look(System.IO.Path.Combine(_folder.Path, "t.csv"), "t.csv", new TraceReadOptions());
    }
}
