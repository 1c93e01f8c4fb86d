namespace SweepStats.StudyRuns.Lots;

/// <summary>Campaigns that a study draws.</summary>
/// <param name="Campaigns">How many.</param>
/// <param name="Seed">Seed of the first; each further one has the next.</param>
public readonly record struct StudyDraws(int Campaigns, ulong Seed);
