using SweepStats.Alignment;
using SweepStats.Floor;

namespace SweepStats.Repeats;

/// <summary>
/// Whether repeats that follow each other are alike, so that they are worth fewer than as many independent ones. Immutable.
/// </summary>
/// <remarks>
/// Looked for among sweeps (reference, covered, of one placement) and among placements. Where nothing is found all repeats count
/// as independent, and no number changes.
/// </remarks>
public sealed record SerialCorrelation
{
    /// <summary>Chance of finding anything among independent repeats.</summary>
    public const double FalseAlarm = 0.003;

    private static readonly ImmutableArray<RepeatKind> Sweeps =
        [RepeatKind.Reference, RepeatKind.Covered, RepeatKind.WithinPlacement];
    private static readonly ImmutableArray<RepeatKind> Placements = [RepeatKind.Placement];

    private SerialCorrelation()
    {
    }

    /// <summary>Nothing looked at: all repeats count as independent.</summary>
    public static SerialCorrelation Untested { get; } = new() { Levels = [] };

    /// <summary>What was looked at: sweeps, placements, both or neither.</summary>
    public required ImmutableArray<SerialLevel> Levels { get; init; }

    /// <summary>Levels of which repeats go together.</summary>
    public IEnumerable<SerialLevel> Found => Levels.Where(l => !l.Lasting.IsEmpty);

    /// <summary>What repeats are worth; null where they count as independent, or are one.</summary>
    /// <param name="kind">What they are.</param>
    /// <param name="count">How many.</param>
    public RepeatWorth? Worth(RepeatKind kind, int count) => Lasting(kind)?.Worth(count);

    /// <summary>How repeats of a kind scatter; null where they count as independent.</summary>
    internal LastingScatter? Lasting(RepeatKind kind) =>
        Levels.Select(l => l.Lasting.GetValueOrDefault(kind)).FirstOrDefault(l => l is not null);

    /// <summary>Looks at the repeats of a campaign.</summary>
    /// <param name="campaign">Sweeps on their common grid.</param>
    /// <param name="floor">The floor; null where none is known.</param>
    /// <param name="odd">Sweeps that are odd among their repeats.</param>
    /// <param name="threads">Threads to use; what is found does not depend on it.</param>
    public static SerialCorrelation Of(AlignedCampaign campaign, NoiseFloor? floor, ImmutableArray<OddRepeat> odd,
        int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        ImmutableArray<RepeatSeries> series = new TakenInOrder(campaign, floor, odd).Series(threads);
        ImmutableArray<RepeatKind>[] asked =
            [.. new[] { Sweeps, Placements }.Where(kinds => series.Any(s => kinds.Contains(s.Kind) && s.Count > 2))];
        return new SerialCorrelation
        {
            Levels = [.. asked.Select(kinds => SerialLevel.Of(series, kinds, FalseAlarm / asked.Length, threads))
                .OfType<SerialLevel>()],
        };
    }
}
