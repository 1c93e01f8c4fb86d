using SweepStats.StudyRuns.Coverage;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>
/// A seeded part of the study of wrong verdicts; the whole is run by the studies program, see the pages under reports/.
/// </summary>
public sealed class DecisionStudyTests
{
    private const double Promised = 0.05;

    // Day by day each cell has seeds of its own, so that the cells can be counted together.
    private static readonly Lazy<int>[] Wrong = [.. Enumerable.Range(0, DecisionCell.All.Length).Select(i => new Lazy<int>(() =>
        DecisionStudy.Wrong(DecisionCell.All[i], Campaigns, points: 9, seed: Draws.Full ? 5000 : 5000 + (1000 * (ulong)i))))];

    private static int Campaigns => Draws.Of(80);

    // What fails everywhere is the easiest to tell; one cell of it shows that the study can.
    private static int[] Indices =>
        [.. Enumerable.Range(0, DecisionCell.All.Length)
            .Where(i => DecisionCell.All[i].Truth != HairTruth.FailsEverywhere
                || DecisionCell.All[i - 1].Truth != HairTruth.FailsEverywhere)];

    public static TheoryData<int> Cells => [.. Indices];

    [Theory]
    [MemberData(nameof(Cells))]
    public void WithinAHairOfTheRequirementTheVerdictIsSeldomWrong(int index)
    {
        DecisionCell cell = DecisionCell.All[index];
        Often.AtMost(Wrong[index].Value, Campaigns, Promised, whenFull: 9, $"{cell.Name}, {cell.Truth}");
    }

    // A quarter of a cell shows gross errors only; all cells together show a share of 10 %.
    [Fact]
    public void AllCellsTogetherAreSeldomWrong()
    {
        if (!Draws.Full)
        {
            Often.AtMost(Indices.Sum(i => Wrong[i].Value), Indices.Length * Campaigns, Promised);
        }
    }
}
