using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>What the files of floor, reference and covered sweeps state of detector and averaging. Immutable.</summary>
/// <remarks>A file that states nothing, or nothing that is certain, is silent.</remarks>
public sealed record FileWords
{
    private FileWords()
    {
    }

    /// <summary>The different meanings stated, in the order of their enumeration; empty where all files are silent.</summary>
    public required ImmutableArray<Averaging> Meanings { get; init; }

    /// <summary>Some files are silent.</summary>
    public required bool SomeSilent { get; init; }

    /// <summary>Some files state one thing and some another.</summary>
    public bool Disagree => Meanings.Length > 1;

    /// <summary>
    /// What they state alike. One file that keeps a look is enough; an average has to be stated by all. Unknown else.
    /// </summary>
    public Averaging Alike =>
        Meanings is [var one] && (!SomeSilent || one is Averaging.Peak or Averaging.Lowest) ? one : Averaging.Unknown;

    /// <summary>Reads the words of all sweeps that the shielding rests on.</summary>
    public static FileWords Of(AlignedCampaign campaign)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        Averaging[] each = [.. campaign.Used().Select(s => s.Settings).Distinct().Select(DetectorWords.Of).Distinct().Order()];
        return new FileWords
        {
            Meanings = [.. each.Where(a => a != Averaging.Unknown)],
            SomeSilent = each.Contains(Averaging.Unknown),
        };
    }
}
