namespace SweepStats.Studies.Fuzzing;

/// <summary>What came of one file.</summary>
/// <param name="Failure">Kind of failure; null for none.</param>
/// <param name="Told">What failed, in a line.</param>
/// <param name="Milliseconds">Time of the call.</param>
/// <param name="Allocated">Bytes that the call allocated.</param>
/// <param name="Traces">Number of traces; 0 where the file was refused.</param>
internal sealed record FuzzOutcome(FuzzFailure? Failure, string Told, double Milliseconds, long Allocated, int Traces);
