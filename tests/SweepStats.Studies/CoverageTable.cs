using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Rehearsal.Coverage;

namespace SweepStats.Studies;

/// <summary>Runs every cell of the coverage study and keeps one line a cell and signal-to-noise ratio.</summary>
internal static class CoverageTable
{
    public const string FileName = "coverage.csv";

    private const string Header =
        "drawn,stated,looks,sweeps,scatter_db,snr_db,trials,held,claimed_too_much,bounds,within_range,plain_held,width_ratio\n";

    public static void Draw(string folder, int campaigns)
    {
        ImmutableArray<CoverageCell> cells = [.. Cells()];
        var lines = new string[cells.Length];
        int done = 0;
        Parallel.For(0, cells.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            lines[i] = string.Concat(CoverageStudy.Run(cells[i], campaigns, Seed(cells[i])).Select(row => Line(cells[i], row)));
            Console.Error.WriteLine($"{Interlocked.Increment(ref done)}/{cells.Length} {cells[i]}");
        });
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, FileName), Header + string.Concat(lines));
    }

    public static ImmutableArray<(CoverageCell Cell, CoverageRow Row)> Read(string folder) =>
        [.. File.ReadLines(Path.Combine(folder, FileName)).Skip(1).Select(line => Parse(line.Split(',')))];

    private static IEnumerable<CoverageCell> Cells()
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

    // Cells that differ only in what the analysis is told see the same campaigns.
    private static ulong Seed(CoverageCell cell) =>
        (ulong)((((cell.Sweeps * 1000) + (int)cell.Looks) * 10) + (int)(2 * cell.ScatterDb)) + (cell.Drawn == Averaging.Log ? 7_000_000ul : 0);

    private static string Line(CoverageCell cell, CoverageRow row) => string.Create(
        CultureInfo.InvariantCulture,
        $"{cell.Drawn},{cell.Stated},{cell.Looks},{cell.Sweeps},{cell.ScatterDb},{row.SnrDb},{row.Trials},{row.Held},{row.ClaimedTooMuch},{row.Bounds},{row.WithinRange},{row.PlainHeld},{row.WidthRatio:0.0000}\n").ToLowerInvariant();

    private static (CoverageCell Cell, CoverageRow Row) Parse(string[] f)
    {
        double Number(int i) => double.Parse(f[i], CultureInfo.InvariantCulture);
        return (
            new CoverageCell(Enum.Parse<Averaging>(f[0], true), Enum.Parse<Averaging>(f[1], true), Number(2), (int)Number(3), Number(4)),
            new CoverageRow
            {
                SnrDb = Number(5),
                Trials = (int)Number(6),
                Held = (int)Number(7),
                ClaimedTooMuch = (int)Number(8),
                Bounds = (int)Number(9),
                WithinRange = (int)Number(10),
                PlainHeld = (int)Number(11),
                WidthRatio = Number(12),
            });
    }
}
