using SweepStats.Uncertainty;

namespace SweepStats.Budgets;

/// <summary>A stated error as it enters the difference of reference and covered level.</summary>
/// <param name="Entry">As the campaign states it.</param>
/// <param name="ActsOn">Levels it acts on here; both only where it is the same in both.</param>
internal readonly record struct StatedError(UncertaintyEntry Entry, ErrorActsOn ActsOn)
{
    /// <summary>How the difference moves with it.</summary>
    public int Sign => ActsOn switch { ErrorActsOn.Reference => 1, ErrorActsOn.Covered => -1, _ => 0 };

    /// <summary>Each entry once for each level that it acts on by itself.</summary>
    public static ImmutableArray<StatedError> Of(ImmutableArray<UncertaintyEntry> entries) =>
    [
        .. entries.SelectMany(e => e.TimesInDifference == 2
            ? new[] { new StatedError(e, ErrorActsOn.Reference), new StatedError(e, ErrorActsOn.Covered) }
            : [new StatedError(e, e.ActsOn)]),
    ];
}
