using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>What was found in a campaign folder. Immutable.</summary>
public sealed record CampaignReading
{
    /// <summary>The sweeps; null where faults forbid an analysis.</summary>
    public required Campaign? Campaign { get; init; }

    /// <summary>The choices of campaign.toml, with defaults for what it leaves open.</summary>
    public required AnalysisPlan Plan { get; init; }

    /// <summary>Everything wrong with the input, in the order of the files.</summary>
    public required ImmutableArray<ReadFault> Faults { get; init; }

    /// <summary>Files that were read, in natural order of their paths.</summary>
    public required ImmutableArray<InputFile> Inputs { get; init; }

    /// <summary>What was taken for granted, for the report.</summary>
    public required ImmutableArray<string> Assumptions { get; init; }

    /// <summary>
    /// Files left out because they could not be read and the reader was told to keep going, each with its reason.
    /// </summary>
    public required ImmutableArray<string> LeftOut { get; init; }

    /// <summary>The same in brief: one line for files that the same keeps from being read.</summary>
    public ImmutableArray<string> LeftOutInBrief { get; init; } = [];

    /// <summary>Trace files in the campaign's folders that sweeps.csv does not list: they were not read.</summary>
    public ImmutableArray<string> Unlisted { get; init; } = [];
}
