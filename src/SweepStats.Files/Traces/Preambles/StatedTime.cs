namespace SweepStats.Files.Traces.Preambles;

/// <summary>When a sweep was taken, as far as its file tells.</summary>
/// <param name="At">The time, in UTC where no zone is stated; null where it cannot be told.</param>
/// <param name="Assumption">What a person should know about it; null for nothing.</param>
internal readonly record struct StatedTime(DateTimeOffset? At, string? Assumption);
