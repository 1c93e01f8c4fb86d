using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Takes the frequencies and the levels out of a table of numbers and looks at them row by row.</summary>
internal sealed class DelimitedTable(TraceText text, NumericRows rows, Separator separator, FaultList faults)
{
    /// <summary>The frequencies; null where one is none.</summary>
    public FrequencyAxis? Axis(NumericRun run, ChosenColumns columns, GridMemory grids)
    {
        if (columns.Regular is { } regular)
        {
            return grids.Of(regular.Hertz(run.Rows));
        }

        using var hertz = new PooledList<double>(run.Rows);
        bool direct = columns.FrequencyUnit == FrequencyUnit.Hertz;
        for (int row = 0; row < run.Rows; row++)
        {
            double next = direct
                ? rows.Value(run, row, columns.Frequency)
                : Scaled(rows.Line(run, row), columns.Frequency, columns.FrequencyUnit.Exponent());
            if (!double.IsFinite(next) || next < 0)
            {
                string what = double.IsFinite(next) ? FormattableString.Invariant($"{next:R} Hz is not a frequency")
                    : "the frequency is too large to be one";
                faults.Add(rows.Line(run, row) + 1, what, AxisDoubt.Remedy);
                return null;
            }

            hertz.Add(next);
        }

        return grids.Of(hertz.Items);
    }

    /// <summary>The traces of one table.</summary>
    /// <param name="run">The rows.</param>
    /// <param name="chosen">Its columns.</param>
    /// <param name="axis">Its frequencies.</param>
    /// <param name="preamble">What the lines above state.</param>
    public IEnumerable<Trace> Traces(NumericRun run, ChosenColumns chosen, FrequencyAxis axis, Preamble preamble)
    {
        int Line(int row) => rows.Line(run, row) + 1;
        ReadFault? falls = AxisDoubt.Of(axis, text.File, Line);
        int before = chosen.Frequency >= 0 ? 1 : 0;
        for (int i = 0; i < chosen.Levels.Length; i++)
        {
            LevelColumn column = chosen.Levels[i];
            int place = column.Index - (column.Index > chosen.Frequency ? before : 0);
            Trace trace = TraceOf(run, column, axis, new(text.File, Line));
            yield return trace with
            {
                Settings = NamedDetector.Beside(preamble.SettingsOf(place, run.Columns - before), ColumnName.Of(column.Name)),
                TakenAt = DatedColumns.TakenAt(column.Name, preamble.Taken.At),
                Doubts = falls is null ? trace.Doubts : [falls, .. trace.Doubts],
            };
        }
    }

    private Trace TraceOf(NumericRun run, LevelColumn column, FrequencyAxis axis, RowPlaces place)
    {
        double[] levels = Levels(run, column);
        return new Trace(column.Name, column.Quantity, column.Unit, axis, ImmutableCollectionsMarshal.AsImmutableArray(levels))
        {
            Phases = Phases(run, column.Phase),
            Blank = column.Asked ? null : LevelDoubts.Blank(column.Unit, levels),
            Doubts = column.Doubt is { } doubt ? [doubt] : LevelDoubts.Of(column, levels, place),
        };
    }

    private double[] Levels(NumericRun run, LevelColumn column)
    {
        var levels = new double[run.Rows];
        for (int row = 0; row < levels.Length; row++)
        {
            double first = rows.Value(run, row, column.Index);
            levels[row] = column.Imaginary is { } second
                ? 20 * Math.Log10(double.Hypot(first, rows.Value(run, row, second))) : first;
        }

        return levels;
    }

    private ImmutableArray<double> Phases(NumericRun run, PhaseColumn? column)
    {
        if (column is null)
        {
            return [];
        }

        var phases = new double[run.Rows];
        for (int row = 0; row < phases.Length; row++)
        {
            double first = rows.Value(run, row, column.Index);
            phases[row] = column.Degrees(first, column.Imaginary is { } second ? rows.Value(run, row, second) : 0);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(phases);
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
