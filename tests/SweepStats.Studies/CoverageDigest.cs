using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using SweepStats.StudyRuns.Coverage;
using SweepStats.Sweeps;

namespace SweepStats.Studies;

/// <summary>The study on one page: a table of the extremes and a chart.</summary>
internal static class CoverageDigest
{
    // Rows are pooled over 5 dB: one row alone has a binomial spread of about 0.7 %, and the extreme of many rows would show
    // little else.
    private const int BinDb = 5;
    private const int LastBin = 9;

    public static void Write(string folder)
    {
        ImmutableArray<(CoverageCell Cell, CoverageRow Row)> all =
            CoverageTable.Read(Path.Combine(folder, CoverageCommand.ScatterFile));
        ImmutableArray<Pool> pools = Pools(all);
        ImmutableArray<Pool> beyond = Pools(CoverageTable.Read(Path.Combine(folder, CoverageCommand.BeyondFile)));
        File.WriteAllText(Path.Combine(folder, "coverage.md"), $"{Extremes(pools)}\n{BySnr(all)}\n{Beyond(beyond)}");
        File.WriteAllText(Path.Combine(folder, "coverage.svg"), CoverageChart.Of(pools));
    }

    private static ImmutableArray<Pool> Pools(ImmutableArray<(CoverageCell Cell, CoverageRow Row)> rows) =>
        [.. rows.GroupBy(r => (r.Cell, Bin: Math.Min((int)Math.Floor((r.Row.SnrDb + 20) / BinDb), LastBin)))
            .Select(g => new Pool(g.Key.Cell, -20 + (g.Key.Bin * BinDb), [.. g.Select(r => r.Row)]))];

    // One line a mode and number of looks: lowest and highest coverage over all sweeps, scatters and signal-to-noise ratios.
    private static string Extremes(ImmutableArray<Pool> pools)
    {
        var text = new StringBuilder(
            "| averaging drawn, stated | looks | lowest coverage (where) | highest, two-sided (where) | lower end over the "
                + "truth, upper end under it, at most | plain interval, lowest | width over plain, 20 dB and more "
                + "|\n|---|---|---|---|---|---|---|\n");
        foreach (var group in pools.GroupBy(p => (p.Cell.Drawn, p.Cell.Stated, p.Cell.Looks)))
        {
            Pool low = group.MinBy(p => p.Coverage)!;
            Pool high = group.Where(p => p.BoundShare < 0.05).MaxBy(p => p.Coverage)!;
            double widest = group.Where(p => p.SnrDb >= 20).Max(p => p.LargestWidthRatio);
            text.Append(string.Create(CultureInfo.InvariantCulture,
                $"| {Name(group.Key.Drawn)}, {Name(group.Key.Stated)} | {group.Key.Looks} | {Percent(low.Coverage)} "
                    + $"({Where(low)}) | {Percent(high.Coverage)} ({Where(high)}) | {OneSided(group)} | "
                    + $"{Percent(group.Min(p => p.PlainCoverage))} | {widest:0.000} |\n"));
        }

        return text.ToString();
    }

    // One line a kind of error and receiver; bounds are left out, for they hold more often by design.
    private static string Beyond(ImmutableArray<Pool> pools)
    {
        var text = new StringBuilder(
            "| beside scatter and noise | averaging, looks | lowest coverage (where) | highest, two-sided (where) | lower end "
                + "over the truth, upper end under it, at most | plain interval, 20 dB and more, lowest "
                + "|\n|---|---|---|---|---|---|\n");
        foreach (var group in pools.GroupBy(p => (p.Cell.Errors, Placements: p.Cell.Placements > 0, p.Cell.Drawn, p.Cell.Looks)))
        {
            Pool low = group.MinBy(p => p.Coverage)!;
            Pool high = group.Where(p => p.BoundShare < 0.05).MaxBy(p => p.Coverage)!;
            double plain = group.Where(p => p.SnrDb >= 20).Min(p => p.PlainCoverage);
            text.Append(string.Create(CultureInfo.InvariantCulture,
                $"| {Kind(group.Key.Errors, group.Key.Placements)} | {Name(group.Key.Drawn)}, {group.Key.Looks} | "
                    + $"{Percent(low.Coverage)} ({Where(low)}) | {Percent(high.Coverage)} ({Where(high)}) | {OneSided(group)} | "
                    + $"{Percent(plain)} |\n"));
        }

        return text.ToString();
    }

    private static string Kind(StatedErrors errors, bool placements)
    {
        string what = errors == StatedErrors.Rectangle ? "a rectangle of 2 dB that rules"
            : errors == StatedErrors.Mismatch ? "a mismatch of 1.5 dB that rules"
            : errors == StatedErrors.Together ? "four errors together" : "";
        return placements ? what + (what.Length > 0 ? ", and " : "") + "placements that differ" : what;
    }

    // The README's figures: ten sweeps, 20 looks of power averaging, half a dB of scatter.
    private static string BySnr(ImmutableArray<(CoverageCell Cell, CoverageRow Row)> all)
    {
        var cell = new CoverageCell(Averaging.Power, Averaging.Power, 20, 10, 0.5);
        var text = new StringBuilder("| signal over noise | plain t interval on raw readings | SweepStats |\n|---|---|---|\n");
        foreach (int snr in new[] { -10, -3, 0, 3, 6, 10, 15, 20, 30 })
        {
            var rows = all.Where(r => r.Cell == cell && Math.Abs(r.Row.SnrDb - snr) <= 1).Select(r => r.Row).ToList();
            double trials = rows.Sum(r => r.Trials);
            text.Append(CultureInfo.InvariantCulture,
                $"| {snr} dB | {Percent(rows.Sum(r => r.PlainHeld) / trials)} | {Percent(rows.Sum(r => r.Held) / trials)} |\n");
        }

        return text.ToString();
    }

    private static string Name(Averaging averaging) => averaging.ToString().ToLowerInvariant();

    private static string Where(Pool pool)
    {
        CoverageCell cell = pool.Cell;
        string placements = cell.Placements > 0
            ? string.Create(CultureInfo.InvariantCulture, $"{cell.Placements} placements {cell.PlacementDb} dB apart, ") : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"{pool.SnrDb} to {pool.SnrDb + BinDb} dB, {placements}{cell.Sweeps} sweeps, scatter {cell.ScatterDb} dB");
    }

    private static string OneSided(IEnumerable<Pool> pools) =>
        $"{Percent(pools.Max(p => p.TooMuch))}, {Percent(pools.Max(p => p.TooLittle))}";

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %");
}
