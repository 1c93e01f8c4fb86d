using System.Collections.Immutable;

namespace SweepStats.Files.Traces.Tables;

/// <summary>A column of levels to read.</summary>
/// <param name="Index">Its place from 0.</param>
/// <param name="Name">Its name, or its number from 1.</param>
/// <param name="Unit">Its unit.</param>
internal readonly record struct LevelColumn(int Index, string Name, LevelUnit Unit);

/// <summary>Which columns of a table are read, and how.</summary>
/// <param name="Frequency">Place of the frequency column from 0.</param>
/// <param name="FrequencyUnit">Its unit.</param>
/// <param name="Levels">The columns of levels.</param>
internal sealed record ChosenColumns(int Frequency, FrequencyUnit FrequencyUnit, ImmutableArray<LevelColumn> Levels);
