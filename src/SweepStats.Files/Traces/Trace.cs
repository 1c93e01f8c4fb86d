using System.Collections.Immutable;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces;

/// <summary>One column of levels in a trace file, as the file gives it. Immutable.</summary>
/// <param name="Column">Name of the column, or its number from 1 where it has none.</param>
/// <param name="Quantity">What it is: "level", or an S-parameter such as "S21".</param>
/// <param name="Unit">Unit of <paramref name="Levels"/>.</param>
/// <param name="Grid">Frequencies in Hz.</param>
/// <param name="Levels">Levels in <paramref name="Unit"/>: finite, and positive for linear units.</param>
public sealed record Trace(string Column, string Quantity, LevelUnit Unit, FrequencyGrid Grid, ImmutableArray<double> Levels);
