using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.StudyRuns.Coverage;

/// <summary>How often the verdict is wrong where the truth lies within a hair of the requirement.</summary>
public static class DecisionStudy
{
    /// <summary>How far the truth lies on its side of the requirement, in dB.</summary>
    public const double HairDb = 0.01;

    private const double FarDb = 15;

    /// <summary>Draws campaigns and counts wrong verdicts: "meets" of a specimen that fails, "fails" of one that meets.</summary>
    /// <param name="cell">Kind of campaign.</param>
    /// <param name="campaigns">How many.</param>
    /// <param name="points">Frequencies of each.</param>
    /// <param name="seed">Of the first campaign.</param>
    public static int Wrong(DecisionCell cell, int campaigns, int points, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(cell);
        RequirementOutcome wrong = cell.Truth == HairTruth.MeetsEverywhere ? RequirementOutcome.Fails : RequirementOutcome.Meets;
        var found = new bool[campaigns];
        Parallel.For(0, campaigns, i => found[i] = Verdict(cell, points, seed + (ulong)i) == wrong);
        return found.Count(f => f);
    }

    private static RequirementOutcome? Verdict(DecisionCell cell, int points, ulong seed)
    {
        RehearsedCampaign rehearsed = Rehearser.Draw(new RehearsalPlan
        {
            Seed = seed,
            Points = points,
            ReferenceDbm = -30,
            FloorDbm = -100,
            ShieldingStartDb = cell.ShieldingDb,
            ShieldingStopDb = cell.ShieldingDb,
            ReferenceSweeps = Math.Max(cell.Sweeps, cell.Placements),
            CoveredSweeps = cell.Sweeps,
            ScatterDb = cell.ScatterDb,
            Placements = cell.Placements,
            PlacementScatterDb = cell.PlacementDb,
            SystematicErrors = cell.Errors,
        });
        var plan = new AnalysisPlan
        {
            Averaging = Averaging.Power,
            Uncertainties = cell.Errors,
            Requirement = Asked(cell, rehearsed.Grid),
        };
        return Analysis.Run(rehearsed.Campaign, plan).Verdict.Requirement;
    }

    // The line dips far below the truth everywhere but at the frequency in the middle.
    private static Requirement Asked(DecisionCell cell, FrequencyGrid grid)
    {
        double wanted = cell.ShieldingDb + (cell.Truth == HairTruth.MeetsEverywhere ? -HairDb : HairDb);
        if (cell.Truth != HairTruth.FailsAtOneFrequency || grid.Count < 3)
        {
            return Requirement.Constant(new Decibels(wanted));
        }

        int middle = grid.Count / 2;
        return Requirement.Line(
        [
            new(grid[0], new Decibels(wanted - FarDb)), new(grid[middle - 1], new Decibels(wanted - FarDb)),
            new(grid[middle], new Decibels(wanted)),
            new(grid[middle + 1], new Decibels(wanted - FarDb)), new(grid[^1], new Decibels(wanted - FarDb)),
        ]);
    }
}
