using SweepStats.StudyRuns.Planning;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>A seeded part of the planning study; all of its set-ups are run by a command, see the pages under reports/.</summary>
public sealed class PlanStudyTests
{
    private static readonly int Campaigns = Draws.Of(100);

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(9)]
    [InlineData(12)]
    [InlineData(16)]
    public void RehearsedCampaignsDoAsPlanned(int cell)
    {
        PlanRow row = PlanStudy.Run(PlanStudy.Cells[cell], Campaigns, seed: 21);
        Assert.InRange(row.HalfWidthDb / row.PlannedHalfWidthDb, 0.9, 1.1);
        // Three binomial deviations of whole campaigns: the frequencies of one share its placements.
        double slack = 3 * Math.Sqrt(PlanStudy.Probability * (1 - PlanStudy.Probability) / Campaigns);
        Assert.True(row.ClaimedShare >= PlanStudy.Probability - slack, $"{row.ClaimedShare:P1}");
        Assert.True(row.ClaimedShare < 0.97, $"{row.ClaimedShare:P1}: more range was asked for than the claim needs");
    }
}
