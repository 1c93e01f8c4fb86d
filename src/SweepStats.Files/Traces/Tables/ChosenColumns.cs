namespace SweepStats.Files.Traces.Tables;

/// <summary>Which columns of a table are read, and how.</summary>
/// <param name="Frequency">Place of the frequency column from 0; −1 where no column holds it.</param>
/// <param name="FrequencyUnit">Its unit.</param>
/// <param name="Levels">The columns of levels.</param>
internal sealed record ChosenColumns(int Frequency, FrequencyUnit FrequencyUnit, ImmutableArray<LevelColumn> Levels)
{
    /// <summary>The frequencies where no column holds them; null where one does.</summary>
    public RegularAxis? Regular { get; init; }
}
