using System.Text.RegularExpressions;
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
internal static partial class OpenedSpecimens
{
    /// <summary>
    /// How far over the floor an opened one stands in dB: a filter ten times as wide lets ten times the noise through.
    /// </summary>
    public const double RiseDb = 20;

    /// <summary>Where and how an opened sweep is kept, as the end of a sentence.</summary>
    public const string Kept = "among the covered ones, excluded in sweeps.csv with the reason \"opened\"";

    /// <summary>The specimens that were opened and rose over the whole band.</summary>
    public static IEnumerable<SpecimenName> In(Evidence seen, NoiseFloor floor) =>
        At([.. Enumerable.Range(0, seen.Campaign.Grid.Count)], seen, floor);

    /// <summary>Those that rose at some frequencies, whatever they do at the others.</summary>
    public static IEnumerable<SpecimenName> At(int[] points, Evidence seen, NoiseFloor floor)
    {
        Sweep[] opened = [.. seen.Campaign.Excluded.Where(s => s.Role == SweepRole.Covered && IsOpened(s))];
        if (opened.Length == 0)
        {
            return [];
        }

        double Middle(ImmutableArray<double> levels) => Sample.Mean([.. points.Select(f => levels[f])]);
        double noise = Middle(floor.LevelDb), sent = Middle([.. seen.Campaign.Reference.Means()]);
        return SetAsideSweeps.OnGrid(seen.Campaign, opened)
            .Where(s => Middle(s.Levels) is var level && level - noise >= RiseDb
                && level <= sent + HeardFrequencies.RiseDb && IsClosedAgain(seen.Campaign, s.Sweep))
            .Select(s => SpecimenName.Of(s.Sweep));
    }

    private static bool IsOpened(Sweep sweep) => sweep.ExcludedBecause is { } reason && Opened().IsMatch(reason)
        && !NotOpened().IsMatch(reason);

    private static bool IsClosedAgain(AlignedCampaign campaign, Sweep opened)
    {
        DateTimeOffset?[] closed = [.. campaign.Covered.Where(c => c.Name == SpecimenName.Of(opened))
            .SelectMany(c => c.Block.Sweeps).Select(s => s.TakenAt)];
        return opened.TakenAt is not { } at || closed.Any(c => c is null) || closed.Any(c => c > at);
    }

    // The word that the next step asks for, in the languages that benches write in.
    [GeneratedRegex(@"\b(open|opened|ge(ö|oe)ffnet|offen)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Opened();

    [GeneratedRegex(@"\b(not|never|nicht|nie)\s+(\w+\s+)?(open|opened|ge(ö|oe)ffnet|offen)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NotOpened();
}
