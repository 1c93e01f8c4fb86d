using SweepStats.Files.Traces.Preambles;

namespace SweepStats.Files.Traces.Tables;

/// <summary>What is known of a trace before its rows are read.</summary>
/// <param name="Preamble">What the lines above the rows state.</param>
/// <param name="Options">What the campaign states.</param>
/// <param name="Faults">Takes what contradicts them.</param>
internal readonly record struct PriorKnowledge(Preamble Preamble, TraceReadOptions Options, FaultList Faults);
