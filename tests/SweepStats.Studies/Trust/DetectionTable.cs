using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Checks;
using SweepStats.StudyRuns.Trust;

namespace SweepStats.Studies.Trust;

/// <summary>Draws every known fault at every size and counts how often it is found: one line a fault and size.</summary>
internal static class DetectionTable
{
    private const string FileName = "detection.csv";
    private const string Header = "code,fault,size,unit,campaigns,found,warned\n";

    public static void Draw(string folder, int campaigns)
    {
        // A check that does not exist finds nothing; its faults wait for it.
        HashSet<string> codes = [.. Checklist.All.Select(check => check.Code)];
        (FaultCurve Curve, double Size)[] cells = [.. KnownFaults.All.Where(curve => codes.Contains(curve.Code))
            .SelectMany(curve => curve.Sizes.Select(size => (curve, size)))];
        var rows = new DetectionRow[cells.Length];
        int done = 0;
        // Long sweeps first, so that no thread is left with them at the end.
        int[] order =
            [.. Enumerable.Range(0, cells.Length).OrderByDescending(i => cells[i].Curve.Of(cells[i].Size).Drawn.Points)];
        Parallel.ForEach(order, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            // Every size of every fault sees the same draws: curves are smooth, and differ by the fault alone.
            rows[i] = TrustStudy.Detect(cells[i].Curve, cells[i].Size, campaigns, seed: 31);
            Console.Error.WriteLine($"{Interlocked.Increment(ref done)}/{cells.Length} {rows[i]}");
        });
        File.WriteAllText(Path.Combine(folder, FileName), Header + string.Concat(rows.Select(Line)));
    }

    public static ImmutableArray<DetectionRow> Read(string folder) =>
        [.. File.ReadLines(Path.Combine(folder, FileName)).Skip(1).Select(Parse)];

    private static string Line(DetectionRow row) => string.Create(
        CultureInfo.InvariantCulture,
        $"{row.Code},\"{row.Name}\",{row.Size},{row.Unit},{row.Campaigns},{row.Found},{row.Warned}\n");

    private static DetectionRow Parse(string line)
    {
        string[] outer = line.Split('"');
        string[] f = outer[2].Split(',');
        int Number(int i) => int.Parse(f[i], CultureInfo.InvariantCulture);
        return new DetectionRow(outer[0].TrimEnd(','), outer[1], f[2], double.Parse(f[1], CultureInfo.InvariantCulture),
            Number(3), Number(4), Number(5));
    }
}
