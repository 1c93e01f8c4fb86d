using SweepStats.StudyRuns.Trust;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>
/// A seeded part of the study of false alarms and faults found; the whole is run by a command, see the pages under reports/.
/// </summary>
public sealed class TrustTests
{
    [Theory]
    [InlineData(Averaging.Power, Averaging.Power, 20, 5)]
    [InlineData(Averaging.Log, Averaging.Log, 10, 3)]
    [InlineData(Averaging.Power, Averaging.Unknown, 20, 10)]
    public void ACleanCampaignRaisesAWarningInOneOfTwentyAtMost(Averaging drawn, Averaging stated, double looks, int sweeps)
    {
        int campaigns = Draws.Of(40);
        AlarmTally tally = TrustStudy.Clean(new CleanCell(drawn, stated, looks, sweeps), campaigns, seed: 3);
        Assert.Equal(campaigns, tally.Campaigns);
        Often.AtMost(tally.AnyWarned, campaigns, 0.05, whenFull: 6, string.Join(", ", tally.Warned));
    }

    [Fact]
    public void NotesAndWarningsAreCountedOnceACampaign()
    {
        AlarmTally tally = TrustStudy.Clean(new CleanCell(Averaging.Power, Averaging.Unknown, 20, 3, Specimens: 2), 4, seed: 3);
        Assert.Equal(4, tally.Noted["averaging-unknown"]);
        // Every other campaign names placements; both specimens of the others are in one finding.
        Assert.Equal(2, tally.Noted["placement-unknown"]);
    }

    [Theory]
    [InlineData("saturation-step", "shortfall at the highest source level", 0.5)]
    [InlineData("saturation-step", "shortfall of the reference, linearity sweeps 10 dB below it alone", 0.5)]
    [InlineData("drift", "steady, times known", 1)]
    [InlineData("odd-sweep", "offset, one reference of five", 2)]
    [InlineData("odd-sweep", "offset, one covered of five", 2)]
    [InlineData("ambient", "steady carrier", 10)]
    public void AFaultOfAPlainSizeIsFoundInNineteenOfTwenty(string code, string name, double size)
    {
        int campaigns = Draws.Of(40);
        FaultCurve fault = KnownFaults.All.Single(f => f.Code == code && f.Name == name);
        DetectionRow row = TrustStudy.Detect(fault, size, campaigns, seed: 5);
        Often.AtLeast(row.Found, campaigns, 0.95, whenFull: 34);
    }

    [Fact]
    public void TheSizeOfAnOverloadIsWhatTheReceiverFallsShort()
    {
        // 0.5 dB short where the reference stands at −30 dBm, by the model of compression solved by hand: onset −30 −
        // 10·lg((10^0.05 − 1)/0.2589) = −26.73 dBm.
        FaultCurve fault = KnownFaults.All.First(f => f.Code == "saturation-step");
        Assert.Equal(-26.73, fault.Of(0.5).Drawn.CompressionDbm!.Value, 0.01);
        Assert.Null(fault.Of(0).Drawn.CompressionDbm);
    }
}
