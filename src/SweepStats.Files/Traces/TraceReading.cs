using SweepStats.Sweeps;

namespace SweepStats.Files.Traces;

/// <summary>What was found in one trace file: either traces or faults. Immutable.</summary>
public sealed record TraceReading
{
    /// <summary>The traces, in the order of their columns; empty where there are faults.</summary>
    public ImmutableArray<Trace> Traces { get; init; } = [];

    /// <summary>Settings that the file states.</summary>
    public ReceiverSettings Settings { get; init; } = ReceiverSettings.Unstated;

    /// <summary>What was taken for granted in reading it.</summary>
    public ImmutableArray<string> Assumptions { get; init; } = [];

    /// <summary>What is wrong with it.</summary>
    public ImmutableArray<ReadFault> Faults { get; init; } = [];

    /// <summary>SHA-256 of the bytes in lower-case hexadecimal; empty where the file could not be opened.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>
    /// Whether the rows were parted by names that do not count sweeps, so that the traces may be of different things.
    /// </summary>
    internal bool AreNamedApart { get; init; }

    /// <summary>Whether traces stand below each other, so that a number means a trace and not a column.</summary>
    internal bool IsStacked { get; init; }

    /// <summary>Traces as they were read; what is wrong with the file, where anything is.</summary>
    internal static TraceReading Of(ImmutableArray<Trace> traces, ReceiverSettings settings, FaultList faults) => faults.Any
        ? new() { Faults = faults.All } : new() { Traces = traces, Settings = settings, Assumptions = faults.Assumptions };

    internal static TraceReading Refused(string file, int? line, string problem, string remedy) =>
        new() { Faults = [new ReadFault(file, line, problem, remedy)] };
}
