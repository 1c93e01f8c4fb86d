namespace SweepStats.Files.Spreadsheets;

/// <summary>Where a value in dB and its limits stand in a table.</summary>
/// <param name="Stem">What their names begin with.</param>
/// <param name="Value">Column of the value.</param>
/// <param name="Low">Column of its lower limit.</param>
/// <param name="High">Column of its upper limit.</param>
internal sealed record ValueAndLimits(string Stem, int Value, int Low, int High)
{
    /// <summary>Those of a value; null where a column is none with limits.</summary>
    /// <param name="header">Names of the columns.</param>
    /// <param name="value">The column.</param>
    public static ValueAndLimits? At(string[] header, int value)
    {
        if (!header[value].EndsWith("_db", StringComparison.Ordinal))
        {
            return null;
        }

        string stem = header[value][..^"_db".Length];
        int low = Array.IndexOf(header, $"{stem}_low_db");
        int high = Array.IndexOf(header, $"{stem}_high_db");
        return low < 0 || high < 0 ? null : new ValueAndLimits(stem, value, low, high);
    }

    /// <summary>Whether a row holds a lower bound instead of a value.</summary>
    /// <param name="row">The row.</param>
    public bool IsBound(string[] row) => row[Value].Length == 0 && row[High].Length == 0 && row[Low].Length > 0;
}
