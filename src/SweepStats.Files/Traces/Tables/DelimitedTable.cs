using System.Collections.Immutable;
using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Takes the grid and the levels out of a table of numbers and checks them row by row.</summary>
internal sealed class DelimitedTable(TraceText text, NumericRows rows, NumericRun run, Separator separator, FaultList faults)
{
    /// <summary>The frequencies; null where they are not rising frequencies.</summary>
    public FrequencyAxis? Grid(ChosenColumns columns, GridMemory grids)
    {
        using var hertz = new PooledList<double>(run.Rows);
        for (int row = 0; row < run.Rows; row++)
        {
            double next = columns.FrequencyUnit == FrequencyUnit.Hertz
                ? rows.Value(run, row, columns.Frequency)
                : Scaled(rows.Line(run, row), columns.Frequency, columns.FrequencyUnit.Exponent());
            hertz.Add(next);
            if (Problem(hertz.Items) is { } problem)
            {
                faults.Add(rows.Line(run, row) + 1, problem, "frequencies must rise from row to row; sort the rows or export the sweep again");
                return null;
            }
        }

        return grids.Of(hertz.Items);
    }

    /// <summary>The levels of a column in its own unit.</summary>
    public ImmutableArray<double> Levels(LevelColumn column)
    {
        var levels = new double[run.Rows];
        var bad = new BadRows(faults);
        bool linear = column.Unit.IsLinear();
        for (int row = 0; row < levels.Length; row++)
        {
            levels[row] = rows.Value(run, row, column.Index);
            if (linear && levels[row] <= 0)
            {
                bad.Add(
                    rows.Line(run, row) + 1,
                    FormattableString.Invariant($"the level of column {column.Name} is {levels[row]:R} {column.Unit.Symbol()}, which has no level in dB"),
                    "leave such rows out, or export the trace in dB");
            }
        }

        bad.Report();

        return ImmutableCollectionsMarshal.AsImmutableArray(levels);
    }

    private static string? Problem(ReadOnlySpan<double> hertz)
    {
        double last = hertz[^1];
        if (!double.IsFinite(last) || last < 0)
        {
            return FormattableString.Invariant($"{last:R} Hz is not a frequency");
        }

        if (hertz.Length == 1 || last > hertz[^2])
        {
            return null;
        }

        return last == hertz[^2]
            ? FormattableString.Invariant($"the frequency {last:R} Hz is repeated")
            : FormattableString.Invariant($"the frequency falls from {hertz[^2]:R} Hz to {last:R} Hz");
    }

    // Read again from the text, so that 30.1 MHz become exactly 30100000 Hz.
    private double Scaled(int line, int column, int exponent)
    {
        var reader = new FieldReader(text.Line(line), separator);
        ReadOnlySpan<byte> field = default;
        for (int i = 0; i <= column; i++)
        {
            reader.Next(out field);
        }

        return StrictNumber.TryParse(field, separator.DecimalMark, exponent, out double hertz) ? hertz : double.NaN;
    }
}
