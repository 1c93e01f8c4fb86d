namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Columns that are no level whoever names them: to read a phase as a level would give numbers that look like one.
/// </summary>
internal static class NotALevel
{
    /// <summary>What the column is instead; null where it may be a level.</summary>
    /// <param name="names">All columns.</param>
    /// <param name="index">Place of the column from 0.</param>
    public static string? Because(ImmutableArray<ColumnName> names, int index)
    {
        ColumnName name = names[index];
        return name.IsLimit ? "a limit"
            : name.LevelUnit is not null || name.Kind == ColumnKind.Level ? null
            : name.Part == ComplexPart.Imaginary ? "the imaginary part of a complex number"
            : name.Part == ComplexPart.Phase ? "a phase"
            : name.Part == ComplexPart.Real && ComplexPairs.Find(names, []).Any(p => p.Index == index)
            ? "the real part of a complex number"
            : null;
    }
}
