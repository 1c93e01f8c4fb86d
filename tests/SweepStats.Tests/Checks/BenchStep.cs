using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;

namespace SweepStats.Tests.Checks;

/// <summary>Sweeps as taken, with what was stated of them.</summary>
internal sealed record Taken(Campaign Campaign, AnalysisPlan Stated)
{
    public static Taken With(RehearsalPlan plan, AnalysisPlan? stated = null) =>
        new(Rehearser.Draw(plan).Campaign, stated ?? new AnalysisPlan { Averaging = plan.Averaging });

    public AnalysisResult Analysed() => Analysis.Run(Campaign, Stated);

    /// <summary>Each sweep put through a function.</summary>
    public Taken But(Func<Sweep, Sweep> change) =>
        this with { Campaign = Campaign with { Sweeps = [.. Campaign.Sweeps.Select(change)] } };

    /// <summary>With one sweep more.</summary>
    public Taken And(Sweep sweep) => this with { Campaign = Campaign with { Sweeps = Campaign.Sweeps.Add(sweep) } };

    /// <summary>The first sweep of a role.</summary>
    public Sweep First(SweepRole role) => Campaign.Sweeps.First(s => s.Role == role);
}

/// <summary>A measurement that a check finds fault with, and the same after doing what its next step says.</summary>
/// <param name="Code">The check.</param>
/// <param name="Name">What is wrong.</param>
/// <param name="Severity">How much it weighs before.</param>
/// <param name="Done">Words of the next step: what was done between before and after.</param>
/// <param name="Before">As first taken.</param>
/// <param name="After">As taken again.</param>
internal sealed record BenchStep(string Code, string Name, Severity Severity, string Done, Taken Before, Taken After);

/// <summary>Sweeps changed in one respect.</summary>
internal static class SweepChange
{
    public static Sweep As(this Sweep sweep, SweepRole? role = null, FrequencyGrid? grid = null,
        ImmutableArray<double>? levels = null, ReceiverSettings? settings = null, string? excluded = null, string? name = null,
        DateTimeOffset? takenAt = null, ImmutableArray<double>? reverse = null, string? placement = null) =>
        new(name ?? sweep.Name, role ?? sweep.Role, grid ?? sweep.Grid, levels ?? sweep.Levels, sweep.Scale)
        {
            Lot = sweep.Lot,
            Specimen = sweep.Specimen,
            Placement = placement ?? sweep.Placement,
            TakenAt = takenAt ?? sweep.TakenAt,
            SourceDbm = sweep.SourceDbm,
            Phases = sweep.Phases,
            ReverseLevels = reverse ?? sweep.ReverseLevels,
            Settings = settings ?? sweep.Settings,
            ExcludedBecause = excluded ?? sweep.ExcludedBecause,
        };

    public static Sweep Shifted(this Sweep sweep, double decibels) =>
        sweep.As(levels: [.. sweep.Levels.Select(l => l + decibels)]);

    public static Sweep CutAt(this Sweep sweep, double bottom) =>
        sweep.As(levels: [.. sweep.Levels.Select(l => Math.Max(bottom, l))]);

    public static Sweep WithoutFirstPoint(this Sweep sweep) =>
        sweep.As(grid: new FrequencyGrid([.. sweep.Grid.Hertz[1..]]), levels: sweep.Levels[1..]);
}
