using System.Collections.Immutable;
using System.Globalization;
using SweepStats.StudyRuns.Coverage;
using SweepStats.Sweeps;

namespace SweepStats.Studies;

/// <summary>Runs cells of the coverage study and keeps one line a cell and signal-to-noise ratio.</summary>
internal static class CoverageTable
{
    private const string Header =
        "drawn,stated,looks,sweeps,scatter_db,placements,placement_db,errors,snr_db,trials,held,claimed_too_much,bounds,"
            + "within_range,plain_held,width_ratio\n";

    public static void Draw(string path, ImmutableArray<CoverageCell> cells, int campaigns)
    {
        var lines = new string[cells.Length];
        int done = 0;
        Parallel.For(0, cells.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            lines[i] = string.Concat(CoverageStudy.Run(cells[i], campaigns, CoverageCells.Seed(cells[i]))
                .Select(row => Line(cells[i], row)));
            Console.Error.WriteLine(
                $"{Interlocked.Increment(ref done)}/{cells.Length} {lines[i].AsSpan(0, lines[i].IndexOf('\n'))}");
        });
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, Header + string.Concat(lines));
    }

    public static ImmutableArray<(CoverageCell Cell, CoverageRow Row)> Read(string path) =>
        [.. File.ReadLines(path).Skip(1).Select(line => Parse(line.Split(',')))];

    private static string Line(CoverageCell cell, CoverageRow row) => string.Create(
        CultureInfo.InvariantCulture,
        $"{cell.Drawn},{cell.Stated},{cell.Looks},{cell.Sweeps},{cell.ScatterDb},{cell.Placements},{cell.PlacementDb},"
            + $"{cell.Errors.Name},{row.SnrDb},{row.Trials},{row.Held},{row.ClaimedTooMuch},{row.Bounds},{row.WithinRange},"
            + $"{row.PlainHeld},{row.WidthRatio:0.0000}\n").ToLowerInvariant();

    private static (CoverageCell Cell, CoverageRow Row) Parse(string[] f)
    {
        double Number(int i) => double.Parse(f[i], CultureInfo.InvariantCulture);
        return (
            new CoverageCell(Enum.Parse<Averaging>(f[0], true), Enum.Parse<Averaging>(f[1], true), Number(2),
                (int)Number(3), Number(4))
            {
                Placements = (int)Number(5),
                PlacementDb = Number(6),
                Errors = StatedErrors.All.Single(e => e.Name == f[7]),
            },
            new CoverageRow
            {
                SnrDb = Number(8),
                Trials = (int)Number(9),
                Held = (int)Number(10),
                ClaimedTooMuch = (int)Number(11),
                Bounds = (int)Number(12),
                WithinRange = (int)Number(13),
                PlainHeld = (int)Number(14),
                WidthRatio = Number(15),
            });
    }
}
