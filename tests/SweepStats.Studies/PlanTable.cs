using System.Diagnostics;
using System.Globalization;
using SweepStats.StudyRuns.Planning;

namespace SweepStats.Studies;

/// <summary>plan: planned half-width and claim beside what rehearsed campaigns made of them, one set-up a line.</summary>
internal static class PlanTable
{
    public static int Print(int campaigns, ulong seed)
    {
        var watch = Stopwatch.StartNew();
        Console.WriteLine("looks,scatter_db,placement_spread_db,placements,sweeps,reference_sweeps,margin_db,"
            + "planned_half_width_db,half_width_db,ratio,planned_range_db,claimed_share");
        foreach (PlanRow row in PlanStudy.Cells.AsParallel().AsOrdered().Select(cell => PlanStudy.Run(cell, campaigns, seed)))
        {
            PlanCell c = row.Cell;
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{c.Looks},{c.ScatterDb},{c.PlacementDeviationDb},{c.Placements},{c.Sweeps},{c.ReferenceSweeps},{c.MarginDb},"
                    + $"{row.PlannedHalfWidthDb:0.000},{row.HalfWidthDb:0.000},{row.HalfWidthDb / row.PlannedHalfWidthDb:0.000},"
                    + $"{row.PlannedRangeDb:0.00},{row.ClaimedShare:0.000}"));
        }

        Console.Error.WriteLine($"{watch.Elapsed.TotalSeconds:0} s");
        return 0;
    }
}
