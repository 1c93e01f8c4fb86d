using System.Globalization;
using SweepStats.Rehearsal;
using SweepStats.StudyRuns;
using SweepStats.StudyRuns.Lasting;
using SweepStats.StudyRuns.Trust;
using SweepStats.Sweeps;

namespace SweepStats.Studies;

/// <summary>Intervals and findings where sweeps resemble those before them, as a table on the console.</summary>
internal static class LastingTable
{
    private static readonly int[] Sweeps = [3, 5, 10, 20];
    private static readonly double[] Correlations = [0.3, 0.5, 0.8];
    private static readonly double[] Moves = [0.5, 1, 2];

    private static readonly CleanCell[] Clean =
    [
        .. new[] { 3, 5, 10 }.Select(sweeps => new CleanCell(Averaging.Power, Averaging.Power, 20, sweeps)),
        new(Averaging.Power, Averaging.Power, 1, 5),
        new(Averaging.Power, Averaging.Power, 20, 3, 9),
    ];

    public static void Print(int campaigns, string? kindOnly)
    {
        Header(
            "what goes over from sweep to sweep", "sweeps", "strength", "held, as independent", "held",
            "lower end over the truth", "width", "found", "held where found", "told or held",
            "band mean, as independent", "band mean");
        foreach (LastingKind kind in Enum.GetValues<LastingKind>().Where(k => kindOnly is null || k.ToString() == kindOnly))
        {
            foreach (int sweeps in Sweeps)
            {
                foreach (double strength in kind is LastingKind.SteadyPhase or LastingKind.WanderingPhase ? Moves : Correlations)
                {
                    var cell = new LastingCell(kind, sweeps, strength);
                    Print(cell, LastingStudy.Run(cell, campaigns, seed: 77));
                }
            }
        }
    }

    /// <summary>How often sweeps are found to be alike where they are not: so many campaigns of each kind.</summary>
    public static void PrintFalse(int campaigns)
    {
        Header("campaigns", "found");
        foreach (LastingKind kind in Enum.GetValues<LastingKind>().Where(k => k < LastingKind.HalfOfEachFrequency))
        {
            foreach (int sweeps in Sweeps)
            {
                var cell = new LastingCell(kind, sweeps, 0);
                Print($"{kind}, {sweeps} sweeps",
                    LastingStudy.Found(i => LastingStudy.Draw(cell, 7_000_000 + (ulong)i), campaigns));
            }
        }

        foreach (CleanCell cell in Clean)
        {
            Tally found = LastingStudy.Found(
                i => Rehearser.Draw(cell.Case(i).Drawn with { Seed = 8_000_000 + (ulong)i }).Campaign, campaigns);
            Print($"clean: {cell.Sweeps} sweeps, {cell.Looks} looks, {cell.Specimens} specimens", found);
        }
    }

    private static void Header(params string[] columns)
    {
        Console.WriteLine($"| {string.Join(" | ", columns)} |");
        Console.WriteLine("|" + string.Concat(columns.Select(_ => "---|")));
    }

    private static void Print(LastingCell cell, LastingRow row) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"| {cell.Kind} | {cell.Sweeps} | {cell.Strength:0.0} | {row.HeldAsIndependent:P1} | {row.Held:P1} | ")
        + string.Create(
            CultureInfo.InvariantCulture,
            $"{row.ClaimedTooMuch:P1} | {row.WidthRatio:0.00} | {row.Found:P0} | {row.HeldWhereFound:P1} | "
                + $"{row.ToldOrHeld:P0} | ")
        + string.Create(CultureInfo.InvariantCulture, $"{row.BandHeldAsIndependent:P1} | {row.BandHeld:P1} |"));

    private static void Print(string name, Tally found) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {found.Share:P2} of {found.Of} |"));
}
