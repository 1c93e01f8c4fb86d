using SweepStats.Rehearsal.Coverage;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>A seeded part of the study of wrong verdicts; the whole is run by the studies program, see DEVELOPERS.md.</summary>
public sealed class DecisionStudyTests
{
    private const int Campaigns = 80;
    private const double Promised = 0.05;

    // What fails everywhere is the easiest to tell; one cell of it shows that the study can.
    public static TheoryData<int> Cells =>
        [.. Enumerable.Range(0, DecisionCell.All.Length).Where(i => DecisionCell.All[i].Truth != HairTruth.FailsEverywhere || DecisionCell.All[i - 1].Truth != HairTruth.FailsEverywhere)];

    [Theory]
    [MemberData(nameof(Cells))]
    public void WithinAHairOfTheRequirementTheVerdictIsSeldomWrong(int index)
    {
        DecisionCell cell = DecisionCell.All[index];
        int wrong = DecisionStudy.Wrong(cell, Campaigns, points: 9, seed: 5000);
        // Three binomial standard deviations.
        double most = Campaigns * (Promised + (3 * Math.Sqrt(Promised * (1 - Promised) / Campaigns)));
        Assert.True(wrong <= most, $"{cell.Name}, {cell.Truth}: {wrong} of {Campaigns}");
    }
}
