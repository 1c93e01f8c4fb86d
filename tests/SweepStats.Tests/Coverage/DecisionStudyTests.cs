using SweepStats.Rehearsal.Coverage;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>A seeded part of the study of wrong verdicts; the whole is run by the studies program, see DEVELOPERS.md.</summary>
public sealed class DecisionStudyTests
{
    private const double Promised = 0.05;

    // What fails everywhere is the easiest to tell; one cell of it shows that the study can.
    public static TheoryData<int> Cells =>
        [.. Enumerable.Range(0, DecisionCell.All.Length).Where(i => DecisionCell.All[i].Truth != HairTruth.FailsEverywhere || DecisionCell.All[i - 1].Truth != HairTruth.FailsEverywhere)];

    [Theory]
    [MemberData(nameof(Cells))]
    public void WithinAHairOfTheRequirementTheVerdictIsSeldomWrong(int index)
    {
        DecisionCell cell = DecisionCell.All[index];
        int campaigns = Draws.Of(80);
        Often.AtMost(DecisionStudy.Wrong(cell, campaigns, points: 9, seed: 5000), campaigns, Promised, whenFull: 9, $"{cell.Name}, {cell.Truth}");
    }
}
