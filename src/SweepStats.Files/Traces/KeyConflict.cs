namespace SweepStats.Files.Traces;

/// <summary>Statements about a file that do not go together.</summary>
/// <param name="Key">The key of [[files]] that is too much, or lacks another.</param>
/// <param name="Problem">What is wrong, beginning with that key.</param>
/// <param name="Remedy">What to do.</param>
public sealed record KeyConflict(string Key, string Problem, string Remedy)
{
    /// <summary>What does not go together, in the words of the keys of [[files]].</summary>
    /// <param name="said">What is stated.</param>
    public static ImmutableArray<KeyConflict> Of(TraceReadOptions said)
    {
        ArgumentNullException.ThrowIfNull(said);
        return [.. Parts(said), .. Phase(said)];
    }

    private static IEnumerable<KeyConflict> Parts(TraceReadOptions said)
    {
        bool real = said.RealColumn is not null;
        if (real != said.ImaginaryColumn is not null)
        {
            yield return real
                ? new("real_column", "real_column stands without imaginary_column",
                    "add imaginary_column, or say level_column in its place")
                : new("imaginary_column", "imaginary_column stands without real_column", "add real_column");
        }

        if (real && !said.Columns.IsEmpty)
        {
            yield return new("real_column", "real_column and a column of levels are both stated",
                "keep one of them: the level is the magnitude of the complex number, or a column of its own");
        }

        if (real && said.IsOwnLevelUnit)
        {
            yield return new("level_unit", "level_unit is stated for a complex number, whose magnitude is a ratio and becomes dB",
                "take level_unit away");
        }
    }

    private static IEnumerable<KeyConflict> Phase(TraceReadOptions said)
    {
        if (said.PhaseColumn is not null && said.RealColumn is not null)
        {
            yield return new("phase_column", "phase_column is stated beside real_column",
                "keep one of them: the phase is that of the complex number");
        }
        else if (said.PhaseColumn is not null && said.Columns.Length != 1)
        {
            yield return new("phase_column", "phase_column does not tell whose phase it is",
                "name one column of levels beside it, or take phase_column away");
        }

        if (said.PhaseUnit is not null && said.PhaseColumn is null)
        {
            yield return new("phase_unit", "phase_unit stands without phase_column", "add phase_column, or take phase_unit away");
        }
    }
}
