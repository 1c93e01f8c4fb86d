using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>A table of numbers as the choice of columns looks at it.</summary>
internal sealed class TableSight(TraceText text, NumericRows rows, NumericRun run)
{
    /// <summary>Path of the file as people see it.</summary>
    public string File => text.File;

    /// <summary>Numbers in each row.</summary>
    public int Columns => run.Columns;

    /// <summary>Rows of numbers.</summary>
    public int Rows => run.Rows;

    /// <summary>Units that the rows state beside their numbers, the same in all; null where they state none.</summary>
    public RowUnits? Units => run.Units;

    /// <summary>The number at a row and column, both from 0.</summary>
    public double Value(int row, int column) => rows.Value(run, row, column);

    /// <summary>
    /// The first unit of frequency that a row states in its own text, which may be another in the next row; null for none.
    /// </summary>
    /// <param name="row">The row.</param>
    public FrequencyUnit? UnitIn(int row)
    {
        string line = text.LineText(rows.Line(run, row));
        int end = 0;
        while (end < line.Length)
        {
            int start = end;
            bool letters = char.IsLetter(line[start]);
            while (end < line.Length && char.IsLetter(line[end]) == letters)
            {
                end++;
            }

            if (letters && FrequencyUnits.Parse(line[start..end]) is { } unit)
            {
                return unit;
            }
        }

        return null;
    }

    /// <summary>Whether every number of a column is 0, as placeholders are.</summary>
    public bool IsZero(int column) => All(column, v => v == 0);

    /// <summary>Whether two columns hold the same numbers.</summary>
    public bool AreEqual(int one, int other) => InAllRows(row => Value(row, one) == Value(row, other));

    /// <summary>Whether all numbers of a column meet a condition.</summary>
    public bool All(int column, Func<double, bool> condition) => InAllRows(row => condition(Value(row, column)));

    /// <summary>Whether a column could be frequencies: not negative and rising in every row.</summary>
    public bool Rises(int column) =>
        InAllRows(row => Value(row, column) >= 0 && (row == 0 || Value(row, column) > Value(row - 1, column)));

    /// <summary>Whether a column could be the frequencies of a sweep from stop to start.</summary>
    public bool Falls(int column) => run.Rows > 2
        && InAllRows(row => Value(row, column) >= 0 && (row == 0 || Value(row, column) < Value(row - 1, column)));

    /// <summary>Whether a column counts the rows: 0, 1, 2 … or 1, 2, 3 …</summary>
    public bool Counts(int column)
    {
        double first = Value(0, column);
        return first is 0 or 1 && InAllRows(row => Value(row, column) == first + row);
    }

    private bool InAllRows(Func<int, bool> holds)
    {
        for (int row = 0; row < run.Rows; row++)
        {
            if (!holds(row))
            {
                return false;
            }
        }

        return true;
    }
}
