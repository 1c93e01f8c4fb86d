using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Specimens that were opened, and rose: the source was on.</summary>
/// <remarks>
/// The sweep of an opened specimen is left out for just that reason. Noise of a wider filter lies higher too, and what lost its
/// sign above all that is sent; sweeps that are left out for another reason show nothing of the source. Where times are known,
/// the specimen has to have been swept closed once more after it: what was tightened on the way would else acquit what came
/// before.
/// </remarks>
internal static class OpenedSpecimens
{
    /// <summary>
    /// How far over the floor an opened one stands in dB: a filter ten times as wide lets ten times the noise through.
    /// </summary>
    public const double RiseDb = 20;

    /// <summary>Where and how an opened sweep is kept, as the end of a sentence.</summary>
    public const string Kept = "among the covered ones, excluded in sweeps.csv with the reason \"opened\"";

    // The word that the next step asks for, in the languages that files come in.
    private static readonly string[] Words = ["open", "öffn", "oeffn", "offen"];

    public static IEnumerable<SpecimenName> In(Evidence seen, NoiseFloor floor)
    {
        double noise = Sample.Mean(floor.LevelDb.AsSpan()), sent = Sample.Mean(seen.Campaign.Reference.Means().AsSpan());
        return seen.Campaign.Excluded.Where(s => s.Role == SweepRole.Covered && s.Scale == seen.Campaign.Scale && IsOpened(s)
            && Sample.Mean(s.Levels.AsSpan()) is var level && level - noise >= RiseDb && level <= sent
            && IsClosedAgain(seen.Campaign, s)).Select(SpecimenName.Of);
    }

    /// <summary>How to find out that the source was on.</summary>
    public static string Ask(SpecimenName name) => $"Open {name} without touching source or cables, look that its level rises, "
        + $"and sweep it closed once more. Keep the opened sweep {Kept}.";

    private static bool IsOpened(Sweep sweep) => Array.Exists(Words,
        word => sweep.ExcludedBecause?.Contains(word, StringComparison.OrdinalIgnoreCase) == true);

    private static bool IsClosedAgain(AlignedCampaign campaign, Sweep opened)
    {
        DateTimeOffset?[] closed = [.. campaign.Covered.Where(c => c.Name == SpecimenName.Of(opened))
            .SelectMany(c => c.Block.Sweeps).Select(s => s.TakenAt)];
        return opened.TakenAt is not { } at || closed.Any(c => c is null) || closed.Any(c => c > at);
    }
}
