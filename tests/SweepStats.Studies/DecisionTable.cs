using System.Globalization;
using SweepStats.StudyRuns.Coverage;

namespace SweepStats.Studies;

/// <summary>Wrong verdicts within a hair of the requirement, as a table on the console.</summary>
internal static class DecisionTable
{
    public static void Print(int campaigns, int points)
    {
        Console.WriteLine("| campaigns | truth | wrong verdicts |");
        Console.WriteLine("|---|---|---|");
        foreach (DecisionCell cell in DecisionCell.All)
        {
            double share = (double)DecisionStudy.Wrong(cell, campaigns, points, seed: 90_000) / campaigns;
            string truth = cell.Truth switch
            {
                HairTruth.FailsAtOneFrequency => "fails at one frequency",
                HairTruth.FailsEverywhere => "fails everywhere",
                _ => "meets everywhere",
            };
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {cell.Name} | {truth} | {share:P1} |"));
        }
    }
}
