using SweepStats.Files;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>A file that could be read, and whether a campaign would take sweeps of it.</summary>
/// <param name="Reading">What was read.</param>
/// <param name="Refusal">Why a campaign would refuse it; empty where it would not.</param>
internal sealed record SeenFile(TraceReading Reading, ImmutableArray<ReadFault> Refusal);
