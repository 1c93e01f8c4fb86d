namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Looks at the levels of a trace for what no receiver measured: placeholders, and linear levels without a logarithm.
/// </summary>
internal static class LevelDoubts
{
    // Receivers fill traces that were never swept with numbers far below any noise; −2147 and −893 are seen, and nothing reads
    // below −300 dB.
    private const double NoReading = 300;

    // A person may well write a few equal round numbers.
    private const int FewestPlaceholders = 5;

    private const double SmallestLevel = 1e-2;

    private static readonly double[] Placeholders = [0, -200];

    /// <summary>Why the trace is blank; null where it is not.</summary>
    public static string? Blank(LevelUnit? unit, ReadOnlySpan<double> levels)
    {
        double first = levels[0];
        if (levels.Length < 2 || levels.ContainsAnyExcept(first))
        {
            return null;
        }

        bool linear = unit is { } known && known.IsLinear();
        bool beyond = !linear && Math.Abs(first) > NoReading;
        return beyond || (levels.Length >= FewestPlaceholders && Placeholders.Contains(first) && (first == 0 || !linear))
            ? FormattableString.Invariant($"every reading is {first:R}, as in a trace that was never swept")
            : null;
    }

    /// <summary>What keeps the levels from being a sweep's.</summary>
    /// <param name="column">The column.</param>
    /// <param name="levels">Its levels.</param>
    /// <param name="place">File, and the line from 1 of a row.</param>
    public static ImmutableArray<ReadFault> Of(LevelColumn column, ReadOnlySpan<double> levels, RowPlaces place)
    {
        if (column.Unit is { } known && Blank(known, levels) is { } blank
            && !(column.Asked && Math.Abs(levels[0]) <= NoReading && !known.IsLinear()))
        {
            return [new ReadFault(place.File, place.Line(0), $"trace {column.Name} is blank: {blank}",
                Remedy(column, levels[0]))];
        }

        if (!AreSound(column, levels))
        {
            return Bad(column, levels, place);
        }

        return IsLinearInTruth(column, levels)
            ? [new ReadFault(place.File, place.Line(0),
                $"the levels of column {column.Name} are called {column.Unit!.Value.Symbol()} and are all positive and "
                    + "below 0.01: they are linear in truth",
                $"say so in the header, in place of {column.Unit.Value.Symbol()}: W, mW, V, µV or linear; or export the "
                    + "trace in dB")]
            : [];
    }

    private static ImmutableArray<ReadFault> Bad(LevelColumn column, ReadOnlySpan<double> levels, RowPlaces place)
    {
        var faults = new FaultList(place.File);
        var bad = new BadRows(faults);
        for (int row = 0; row < levels.Length && !bad.IsFull; row++)
        {
            if (Problem(column, levels[row]) is { } problem)
            {
                bad.Add(place.Line(row), problem.Problem, problem.Remedy);
            }
        }

        bad.Report();
        return faults.All;
    }

    // To name the column helps where such a level can be real.
    private static string Remedy(LevelColumn column, double level) => "export a trace that was written"
        + (column.Asked || Math.Abs(level) > NoReading || column.Unit?.IsLinear() == true ? ""
            : "; if the levels are real, name the column in sweeps.csv (column)");

    // Levels in dB that stay above 0 and below 0.01 dB in every row would be those of no measurement.
    private static bool IsLinearInTruth(LevelColumn column, ReadOnlySpan<double> levels)
    {
        if (column.Imaginary is not null || column.Unit is not { } unit || unit.IsLinear() || levels.Length < FewestPlaceholders
            || !(levels[0] > 0 && levels[0] < SmallestLevel))
        {
            return false;
        }

        foreach (double level in levels)
        {
            if (!(level > 0 && level < SmallestLevel))
            {
                return false;
            }
        }

        return true;
    }

    // The usual case, without a question for each row.
    private static bool AreSound(LevelColumn column, ReadOnlySpan<double> levels)
    {
        bool linear = column.Unit is { } unit && unit.IsLinear();
        (double least, double most) = column.Unit is null || column.Imaginary is not null ? (double.MinValue, double.MaxValue)
            : linear ? (double.Epsilon, double.MaxValue)
            : (-NoReading, NoReading);
        foreach (double level in levels)
        {
            if (!(level >= least && level <= most))
            {
                return false;
            }
        }

        return true;
    }

    private static (string Problem, string Remedy)? Problem(LevelColumn column, double level)
    {
        if (column.Unit is not { } unit)
        {
            return null;
        }

        if (unit.IsLinear() || column.Imaginary is not null)
        {
            return level > 0 || (column.Imaginary is not null && double.IsFinite(level)) ? null
                : (FormattableString.Invariant($"the level of column {column.Name} is ")
                    + FormattableString.Invariant($"{(column.Imaginary is null ? level : 0):R} ")
                    + FormattableString.Invariant(
                        $"{(column.Imaginary is null ? unit.Symbol() : "in magnitude")}, which has no level in dB"),
                    "leave such rows out, or export the trace in dB");
        }

        return Math.Abs(level) <= NoReading ? null
            : (FormattableString.Invariant($"the level of column {column.Name} is {level:R} {unit.Symbol()}, which no receiver ")
                + "reads: a placeholder or another quantity", "leave such rows out or export the sweep again");
    }
}
