namespace SweepStats.Files.Places;

/// <summary>Somebody put something at the target while the run took its time.</summary>
internal sealed class RefusedException(string message) : IOException(message);
