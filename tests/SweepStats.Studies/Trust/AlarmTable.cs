using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Checks;
using SweepStats.StudyRuns.Trust;
using SweepStats.Sweeps;

namespace SweepStats.Studies.Trust;

/// <summary>Draws clean campaigns and counts what the checks say of them: one line a cell and check.</summary>
internal static class AlarmTable
{
    private const string FileName = "false-alarms.csv";
    private const string Header = "drawn,stated,looks,sweeps,specimens,code,campaigns,warned,noted\n";

    public static void Draw(string folder, int campaigns)
    {
        CleanCell[] cells = [.. Cells()];
        var tallies = new AlarmTally[cells.Length];
        // The slowest first, so that no thread is left with it at the end.
        int[] order = [.. Enumerable.Range(0, cells.Length).OrderByDescending(i => cells[i].Sweeps * cells[i].Specimens)];
        int done = 0;
        Parallel.ForEach(order, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            tallies[i] = TrustStudy.Clean(cells[i], campaigns, Seed(cells[i]));
            Console.Error.WriteLine(
                $"{Interlocked.Increment(ref done)}/{cells.Length} {cells[i]}: {tallies[i].AnyWarned} of {campaigns}");
        });
        File.WriteAllText(Path.Combine(folder, FileName),
            Header + string.Concat(cells.Zip(tallies).SelectMany(p => Rows(p.First, p.Second)).Select(Line)));
    }

    public static ImmutableArray<AlarmRow> Read(string folder) =>
        [.. File.ReadLines(Path.Combine(folder, FileName)).Skip(1).Select(line => Parse(line.Split(',')))];

    private static IEnumerable<CleanCell> Cells()
    {
        (Averaging Drawn, Averaging Stated, double Looks)[] modes =
        [
            (Averaging.Power, Averaging.Power, 20), (Averaging.Log, Averaging.Log, 10), (Averaging.Sample, Averaging.Sample, 1),
            (Averaging.Power, Averaging.Unknown, 20),
        ];
        IEnumerable<CleanCell> single = from mode in modes
                                        from sweeps in new[] { 3, 5, 10 }
                                        select new CleanCell(mode.Drawn, mode.Stated, mode.Looks, sweeps);
        // Many specimens ask each check many times.
        return single.Append(new CleanCell(Averaging.Power, Averaging.Power, 20, 5, Specimens: 9));
    }

    // Cells that differ only in what the analysis is told see the same campaigns.
    private static ulong Seed(CleanCell cell) =>
        (ulong)((((((int)cell.Drawn * 100) + (int)cell.Looks) * 100) + cell.Sweeps) * 100) + (ulong)cell.Specimens;

    private static IEnumerable<AlarmRow> Rows(CleanCell cell, AlarmTally tally) =>
        Checklist.All.Select(check => check.Code).Concat(tally.Warned.Keys).Concat(tally.Noted.Keys).Distinct()
            .Select(code => new AlarmRow(cell, code, tally.Campaigns, tally.Warned.GetValueOrDefault(code),
                tally.Noted.GetValueOrDefault(code)))
            .Prepend(new AlarmRow(cell, AlarmRow.Any, tally.Campaigns, tally.AnyWarned, 0));

    private static string Line(AlarmRow row) => string.Create(
        CultureInfo.InvariantCulture,
        $"{row.Cell.Drawn},{row.Cell.Stated},{row.Cell.Looks},{row.Cell.Sweeps},{row.Cell.Specimens},{row.Code},{row.Campaigns},"
            + $"{row.Warned},{row.Noted}\n").ToLowerInvariant();

    private static AlarmRow Parse(string[] f)
    {
        int Number(int i) => int.Parse(f[i], CultureInfo.InvariantCulture);
        var cell = new CleanCell(Enum.Parse<Averaging>(f[0], true), Enum.Parse<Averaging>(f[1], true), Number(2),
            Number(3), Number(4));
        return new AlarmRow(cell, f[5], Number(6), Number(7), Number(8));
    }
}
