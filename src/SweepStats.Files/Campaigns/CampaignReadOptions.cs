using SweepStats.Storage;

namespace SweepStats.Files.Campaigns;

/// <summary>How a campaign folder is read.</summary>
/// <param name="KeepGoing">Leave unreadable trace files out, and say so, instead of refusing the campaign.</param>
/// <param name="Threads">Files read at the same time; the outcome does not depend on it.</param>
public sealed record CampaignReadOptions(bool KeepGoing = false, int Threads = 1)
{
    /// <summary>
    /// Bytes of levels and results to hold in memory; those of larger campaigns lie in a file of no name. The outcome does not
    /// depend on it.
    /// </summary>
    public long Room { get; init; } = RowStore.UsualRoom;
}
