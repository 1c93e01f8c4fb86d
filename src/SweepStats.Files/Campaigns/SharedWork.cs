namespace SweepStats.Files.Campaigns;

/// <summary>How work on many files is shared out.</summary>
/// <param name="Threads">Threads to use; fewer than 1 count as 1.</param>
/// <param name="Progress">Told the share that is done, 0 to 1; null where nobody asks.</param>
internal readonly record struct SharedWork(int Threads, IProgress<double>? Progress);
