using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Rehearsal.Coverage;
using SweepStats.Sweeps;

// The whole coverage study: every cell, written as one table. Usage: coverage OUT.csv [campaigns a cell, default 500]
if (args is not ["coverage", var path, ..])
{
    Console.Error.WriteLine("usage: coverage OUT.csv [CAMPAIGNS]");
    return 2;
}

int campaigns = args.Length > 2 ? int.Parse(args[2], CultureInfo.InvariantCulture) : 500;
ImmutableArray<CoverageCell> cells = [.. Cells()];
var lines = new string[cells.Length];
int done = 0;
Parallel.For(0, cells.Length, new ParallelOptions { MaxDegreeOfParallelism = 2 }, i =>
{
    CoverageCell cell = cells[i];
    // Cells that differ only in what the analysis is told see the same campaigns.
    ulong seed = (ulong)((((cell.Sweeps * 1000) + (int)cell.Looks) * 10) + (int)(2 * cell.ScatterDb)) + (cell.Drawn == Averaging.Log ? 7_000_000ul : 0);
    lines[i] = string.Concat(CoverageStudy.Run(cell, campaigns, seed).Select(row => Line(cell, row)));
    Console.Error.WriteLine($"{Interlocked.Increment(ref done)}/{cells.Length} {cell}");
});
File.WriteAllText(path, "drawn,stated,looks,sweeps,scatter_db,snr_db,trials,coverage,claimed_too_much,bounds,within_range,plain_coverage,width_ratio\n" + string.Concat(lines));
return 0;

static IEnumerable<CoverageCell> Cells()
{
    (Averaging Drawn, Averaging Stated)[] modes =
    [
        (Averaging.Power, Averaging.Power), (Averaging.Log, Averaging.Log), (Averaging.Sample, Averaging.Sample),
        (Averaging.Power, Averaging.Unknown), (Averaging.Log, Averaging.Unknown),
    ];
    return from mode in modes
           from looks in new[] { 1, 3, 20, 100 }
           where mode.Drawn switch { Averaging.Sample => looks == 1, Averaging.Log => looks > 1, _ => true }
           from scatter in new[] { 0, 0.5, 2 }
           from sweeps in new[] { 3, 5, 10, 20 }
           select new CoverageCell(mode.Drawn, mode.Stated, looks, sweeps, scatter);
}

static string Line(CoverageCell cell, CoverageRow row) => string.Create(
    CultureInfo.InvariantCulture,
    $"{cell.Drawn},{cell.Stated},{cell.Looks},{cell.Sweeps},{cell.ScatterDb},{row.SnrDb},{row.Trials},{row.Coverage:0.0000},{Share(row.ClaimedTooMuch, row):0.0000},{Share(row.Bounds, row):0.0000},{Share(row.WithinRange, row):0.0000},{row.PlainCoverage:0.0000},{row.WidthRatio:0.0000}\n").ToLowerInvariant();

static double Share(int count, CoverageRow row) => (double)count / row.Trials;
