using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Tests.Checks;
using Xunit;

namespace SweepStats.Tests.Floor;

/// <summary>How the receiver is taken to average, from what is stated and what the floor shows.</summary>
public sealed class AveragingChoiceTests
{
    private static readonly RehearsalPlan Averages = Rehearsed.Plan with { Looks = 20 };

    [Theory]
    [InlineData(Averaging.Unknown, null, Averaging.Unknown, AveragingSource.Unknown)]
    [InlineData(Averaging.Log, null, Averaging.Log, AveragingSource.Stated)]
    [InlineData(Averaging.Unknown, "RMS", Averaging.Power, AveragingSource.Files)]
    [InlineData(Averaging.Log, "RMS", Averaging.Log, AveragingSource.Stated)]
    [InlineData(Averaging.Power, "Peak", Averaging.Peak, AveragingSource.Files)]
    [InlineData(Averaging.Unknown, "Neg Peak", Averaging.Lowest, AveragingSource.Files)]
    [InlineData(Averaging.Sample, "Neg Peak", Averaging.Lowest, AveragingSource.Files)]
    [InlineData(Averaging.Unknown, "Average", Averaging.Unknown, AveragingSource.Unknown)]
    public void KeptLooksInTheFilesGoBeforeTheCampaignAndTheCampaignBeforeAverages(Averaging stated, string? detector,
        Averaging used, AveragingSource source)
    {
        AveragingInUse averaging = Of(stated, _ => detector);
        Assert.Equal((used, source, stated), (averaging.Averaging, averaging.Source, averaging.Stated));
    }

    [Fact]
    public void FilesThatContradictEachOtherLeaveItUnknown()
    {
        AveragingInUse averaging = Of(Averaging.Power, s => s.Role == SweepRole.Covered ? "Peak" : "RMS");
        Assert.Equal((Averaging.Unknown, AveragingSource.Unknown, true), (averaging.Averaging, averaging.Source,
            averaging.Files.Disagree));
        Assert.Equal(new[] { Averaging.Power, Averaging.Peak }, averaging.Files.Meanings.AsEnumerable());
    }

    [Fact]
    public void AnAverageHasToBeStatedByAllAndAKeptLookByOne()
    {
        Assert.Equal(Averaging.Unknown, Of(Averaging.Unknown, s => s.Role == SweepRole.Reference ? null : "RMS").Averaging);
        Assert.Equal(Averaging.Peak, Of(Averaging.Unknown, s => s.Role == SweepRole.Reference ? "Max Peak" : null).Averaging);
    }

    [Fact]
    public void SamplesThatScatterTooLittleWereSmoothedByNobodyKnowsWhat()
    {
        Assert.Equal(Averaging.Unknown, Of(Averaging.Unknown, _ => "Sample").Averaging);
        AveragingInUse single = Of(Averaging.Unknown, _ => "Sample", Averages with { Looks = 1, Averaging = Averaging.Sample });
        Assert.Equal((Averaging.Sample, AveragingSource.Files), (single.Averaging, single.Source));
    }

    [Theory]
    [InlineData(Averaging.Unknown)]
    [InlineData(Averaging.Power)]
    [InlineData(Averaging.Sample)]
    public void WhatTheFloorShowsGoesBeforeAnAverageThatIsStated(Averaging stated)
    {
        RehearsalPlan peaks = Averages with { Averaging = Averaging.Peak, Looks = 100, Points = 201 };
        AveragingInUse averaging = Of(stated, _ => null, peaks);
        Assert.Equal((Averaging.Peak, AveragingSource.Recognised), (averaging.Averaging, averaging.Source));
        AnalysisResult result = Rehearsed.Analysed(peaks, new AnalysisPlan { Averaging = stated });
        Assert.Equal(KeptLook.Highest, result.Floor!.Kept);
        Assert.Equal(averaging.Source, result.Averaging.Source);
        Assert.Equal(stated, result.Plan.Averaging);
    }

    [Fact]
    public void WithoutAFloorOnlyWordsTell()
    {
        AveragingInUse averaging = Of(Averaging.Power, _ => null, Averages with { FloorSweeps = 0 });
        Assert.Equal((Averaging.Power, (FloorSkewness?)null), (averaging.Averaging, averaging.Skewness));
    }

    [Theory]
    [InlineData(Averaging.Peak, KeptLook.Highest)]
    [InlineData(Averaging.Lowest, KeptLook.Lowest)]
    public void ADeclaredFloorIsReadByTheSameLaw(Averaging averaging, KeptLook kept)
    {
        NoiseFloor floor = NoiseFloorEstimator.Declare(-100, 5, averaging);
        Assert.Equal(kept, floor.Kept);
        Assert.Equal(new DetectorNoise(1).LogStandardDeviation, floor.Noise[0].LogStandardDeviation, 1e-6);
    }

    private static AveragingInUse Of(Averaging stated, Func<Sweep, string?> detector, RehearsalPlan? plan = null)
    {
        Campaign drawn = Rehearser.Draw(plan ?? Averages).Campaign;
        Campaign worded = drawn with
        {
            Sweeps = [.. drawn.Sweeps.Select(s =>
            s.As(settings: new ReceiverSettings { Detector = detector(s) }))],
        };
        return AveragingChoice.Of(Aligner.Align(worded, null), stated);
    }
}
