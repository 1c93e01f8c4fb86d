using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>
/// A specimen that has no reason to be chosen: another shields at least as much in every band and is at least as good in every
/// property weighed.
/// </summary>
/// <param name="Name">Which specimen.</param>
/// <param name="By">The other.</param>
public readonly record struct DominatedSpecimen(SpecimenName Name, SpecimenName By);

/// <summary>Which specimen is best, as far as it can be told. Immutable.</summary>
public sealed record SpecimenChoice
{
    /// <summary>The whole band, then each named one.</summary>
    public required ImmutableArray<BandRanking> Bands { get; init; }

    /// <summary>
    /// Whether what repeats are compared by are placements; otherwise sweeps, and how well a specimen is put back is not in the
    /// comparison.
    /// </summary>
    public required bool ByPlacement { get; init; }

    /// <summary>
    /// Candidates of which nothing says that they were taken off and put back; a winner may be named only where there are none.
    /// </summary>
    public ImmutableArray<SpecimenName> NeverPutBack { get; init; } = [];

    /// <summary>Codes of findings that have to be settled first: who is best may only follow from them.</summary>
    public ImmutableArray<string> SettleFirst { get; private init; } = [];

    /// <summary>
    /// Why nobody is ranked, in kebab case: the codes of <see cref="SettleFirst"/>, else "never-put-back"; empty where
    /// candidates are ranked.
    /// </summary>
    public ImmutableArray<string> NotRankedBecause =>
        !SettleFirst.IsEmpty ? SettleFirst : NeverPutBack.IsEmpty ? [] : ["never-put-back"];

    /// <summary>Whether a rank, a group or a winner may be named.</summary>
    public bool MayRank => NotRankedBecause.IsEmpty;

    /// <summary>What else is known of the specimens.</summary>
    public required ImmutableArray<SpecimenProperty> Properties { get; init; }

    /// <summary>Specimens with no reason to be chosen, by lot and name; empty where no property is weighed.</summary>
    public required ImmutableArray<DominatedSpecimen> Dominated { get; init; }

    /// <summary>
    /// The same without rank, group, probability and domination, until some findings are settled: a specimen that was swept
    /// wrongly may come out first, and so does one beside it last.
    /// </summary>
    /// <param name="findings">Their codes; where there are none, nothing is withheld.</param>
    internal SpecimenChoice Until(ImmutableArray<string> findings) => findings.IsEmpty ? this
        : this with { SettleFirst = findings, Dominated = [], Bands = [.. Bands.Select(b => b.Unranked())] };
}
