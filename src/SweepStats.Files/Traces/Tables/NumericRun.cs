namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Neighbouring rows of numbers with the same number of columns; blank and comment lines between them do not count.
/// </summary>
/// <param name="Columns">Numbers in each row.</param>
/// <param name="FirstRow">Index of its first row among all rows of numbers in the file.</param>
/// <param name="FirstValue">Place of its first number among all numbers.</param>
internal sealed record NumericRun(int Columns, int FirstRow, int FirstValue)
{
    /// <summary>How many rows it has.</summary>
    public int Rows { get; set; } = 1;

    /// <summary>Units that the rows themselves state; null for none.</summary>
    public RowUnits? Units { get; init; }

    /// <summary>Some of its rows.</summary>
    public NumericRun Part(int first, int rows) =>
        new(Columns, FirstRow + first, FirstValue + (first * Columns)) { Rows = rows, Units = Units };
}
