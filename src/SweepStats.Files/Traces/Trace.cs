using SweepStats.Sweeps;

namespace SweepStats.Files.Traces;

/// <summary>One column of levels in a trace file, as the file gives it. Immutable.</summary>
/// <param name="Column">Name of the column, or its number from 1 where it has none.</param>
/// <param name="Quantity">
/// What it is: "level", an S-parameter such as "S21", or "correction" for a table of losses, gains or factors.
/// </param>
/// <param name="Unit">Unit of <paramref name="Levels"/>; null where nothing states it.</param>
/// <param name="Axis">Frequencies, one a level.</param>
/// <param name="Levels">
/// Levels in <paramref name="Unit"/>; finite and, for linear units, positive wherever <see cref="Doubts"/> is empty.
/// </param>
public sealed record Trace(string Column, string Quantity, LevelUnit? Unit, FrequencyAxis Axis, ImmutableArray<double> Levels)
{
    /// <summary>Phase in degrees, one a level, in whatever turn the file gives it; empty where the file carries none.</summary>
    public ImmutableArray<double> Phases { get; init; } = [];

    /// <summary>
    /// Levels in dB of the same path from its other end (S12 beside S21), one a level; empty where the file carries none.
    /// </summary>
    public ImmutableArray<double> ReverseLevels { get; init; } = [];

    /// <summary>Settings that the file states for this trace.</summary>
    public ReceiverSettings Settings { get; init; } = ReceiverSettings.Unstated;

    /// <summary>
    /// When the trace was taken, where the file states it beyond doubt; without a stated zone, the time of the place as if it
    /// were UTC.
    /// </summary>
    public DateTimeOffset? TakenAt { get; init; }

    /// <summary>
    /// Why the trace is blank, a memory that was never written, such as "every reading is -2147.48"; null where it is not.
    /// </summary>
    public string? Blank { get; init; }

    /// <summary>Why no sweep can be made of the trace; empty where one can.</summary>
    public ImmutableArray<ReadFault> Doubts { get; init; } = [];
}
