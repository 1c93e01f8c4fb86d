using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.Tests;

/// <summary>Small campaigns for tests.</summary>
internal static class Rehearsed
{
    public static RehearsalPlan Plan { get; } = new() { Points = 61, ShieldingStartDb = 40, ShieldingStopDb = 40 };

    public static AnalysisResult Analysed(RehearsalPlan plan, AnalysisPlan? choices = null) =>
        Analysis.Run(Rehearser.Draw(plan).Campaign, choices ?? new AnalysisPlan { Averaging = plan.Averaging });

    /// <summary>Sweeps of one role with given levels on a grid of whole MHz.</summary>
    public static IEnumerable<Sweep> Sweeps(SweepRole role, params double[][] levels) => levels.Select((l, i) =>
        new Sweep($"{role}-{i + 1}", role, Grid(l.Length), [.. l], LevelScale.DecibelMilliwatts));

    public static FrequencyGrid Grid(int points) => new([.. Enumerable.Range(1, points).Select(i => i * 1e6)]);

    public static Campaign Campaign(params IEnumerable<Sweep>[] sweeps) => new("test", [.. sweeps.SelectMany(s => s)]);

    public static SweepBlock Floor(params double[][] levels)
    {
        double[] flat = new double[levels[0].Length];
        return Aligner.Align(
            Campaign(Sweeps(SweepRole.Floor, levels), Sweeps(SweepRole.Reference, flat),
                Sweeps(SweepRole.Covered, [.. flat.Select(_ => -40.0)])), null).Floor!;
    }

    /// <summary>Every sweep changed in the same way.</summary>
    public static Campaign Changed(Campaign campaign, Func<Sweep, int, double, double> change) =>
        campaign with
        {
            Sweeps =
            [.. campaign.Sweeps.Select(s => Copy(s, [.. s.Levels.Select((level, f) => change(s, f, level))]))],
        };

    public static Sweep Copy(Sweep sweep, ImmutableArray<double> levels) =>
        new(sweep.Name, sweep.Role, sweep.Grid, levels, sweep.Scale)
        {
            Lot = sweep.Lot,
            Specimen = sweep.Specimen,
            Placement = sweep.Placement,
        };
}
