namespace SweepStats.Files.Traces.Tables;

/// <summary>The units that the rows of a table state themselves.</summary>
/// <param name="InHertz">Whether a column was stated with a unit of frequency, and so is in Hz.</param>
/// <param name="Levels">The unit of level that a column is stated in; null for none.</param>
internal sealed record RowUnits(ImmutableArray<bool> InHertz, ImmutableArray<LevelUnit?> Levels)
{
    /// <summary>Whether the rows state a unit of frequency for a column.</summary>
    public bool IsHertz(int column) => column < InHertz.Length && InHertz[column];

    /// <summary>The unit of level of a column.</summary>
    public LevelUnit? Level(int column) => column < Levels.Length ? Levels[column] : null;

    /// <summary>Whether two rows state the same, or neither states anything.</summary>
    public static bool Same(RowUnits? one, RowUnits? other) =>
        one is null || other is null ? one is null && other is null
            : one.InHertz.SequenceEqual(other.InHertz) && one.Levels.SequenceEqual(other.Levels);
}
