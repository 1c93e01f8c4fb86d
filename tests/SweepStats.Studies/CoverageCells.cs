using System.Collections.Immutable;
using SweepStats.StudyRuns.Coverage;
using SweepStats.Sweeps;

namespace SweepStats.Studies;

/// <summary>The circumstances that the coverage study goes through.</summary>
internal static class CoverageCells
{
    private static readonly (Averaging Drawn, Averaging Stated)[] Modes =
    [
        (Averaging.Power, Averaging.Power), (Averaging.Log, Averaging.Log), (Averaging.Sample, Averaging.Sample),
        (Averaging.Power, Averaging.Unknown), (Averaging.Log, Averaging.Unknown),
    ];

    /// <summary>Scatter and noise alone.</summary>
    public static ImmutableArray<CoverageCell> Scatter { get; } =
    [
        .. from mode in Modes
           from looks in new[] { 1, 3, 20, 100 }
           where mode.Drawn switch { Averaging.Sample => looks == 1, Averaging.Log => looks > 1, _ => true }
           from scatter in new[] { 0, 0.5, 2 }
           from sweeps in new[] { 3, 5, 10, 20 }
           select new CoverageCell(mode.Drawn, mode.Stated, looks, sweeps, scatter),
    ];

    /// <summary>Errors that no repeat shows, placements that differ, and both.</summary>
    public static ImmutableArray<CoverageCell> Beyond { get; } =
    [
        .. from errors in StatedErrors.All
           where errors != StatedErrors.None
           from receiver in Receivers
           from scatter in new[] { 0.5, 2 }
           from sweeps in new[] { 3, 5, 10 }
           select receiver with { Sweeps = sweeps, ScatterDb = scatter, Errors = errors },
        .. from receiver in Receivers
           from placements in new[] { 3, 5 }
           from apart in new[] { 0.3, 1 }
           select receiver with { Placements = placements, PlacementDb = apart },
        .. from receiver in Receivers
           select receiver with { Placements = 3, PlacementDb = 1, Errors = StatedErrors.Together },
    ];

    // Few sweeps: of several placements even these are many.
    private static IEnumerable<CoverageCell> Receivers =>
        [new(Averaging.Power, Averaging.Power, 20, 3, 0.5), new(Averaging.Sample, Averaging.Sample, 1, 3, 0.5)];

    /// <summary>Cells that differ only in what the analysis is told of the averaging see the same campaigns.</summary>
    public static ulong Seed(CoverageCell cell)
    {
        ulong scatter = (ulong)((((cell.Sweeps * 1000) + (int)cell.Looks) * 10) + (int)(2 * cell.ScatterDb))
            + (cell.Drawn == Averaging.Log ? 7_000_000ul : 0);
        ulong beyond = (ulong)((StatedErrors.All.IndexOf(cell.Errors) * 1000) + (cell.Placements * 100)
            + (int)Math.Round(10 * cell.PlacementDb));
        return scatter + (beyond * 10_000_000);
    }
}
