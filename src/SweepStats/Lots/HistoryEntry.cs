namespace SweepStats.Lots;

/// <summary>A lot of one of several campaigns while it is compared.</summary>
/// <param name="Campaign">Place of its campaign.</param>
/// <param name="Lot">As it is handed on.</param>
/// <param name="Means">Mean of each of its specimens over the compared part of a band, in dB.</param>
internal sealed record HistoryEntry(int Campaign, HistoryLot Lot, double[] Means)
{
    /// <summary>Whether both lots are of one campaign, whose shared errors then drop out between them.</summary>
    public bool IsOfTheSame(HistoryEntry other) => Campaign == other.Campaign;
}
