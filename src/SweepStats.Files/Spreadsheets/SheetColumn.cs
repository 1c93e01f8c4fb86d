using System.Globalization;
using SpreadCheetah;

namespace SweepStats.Files.Spreadsheets;

/// <summary>A column of a sheet, and where its cells come from.</summary>
/// <remarks>
/// In a written table a lower limit that stands without its value is a bound, which a row of numbers does not tell. So beside
/// each <c>x_db, x_low_db, x_high_db</c> comes <c>x_at_least_db</c>, and a bound stands there alone.
/// </remarks>
/// <param name="Name">Its name.</param>
/// <param name="From">The column of the written table that it shows.</param>
/// <param name="Limits">The value and limits that it belongs to; null where a cell is shown as it is.</param>
internal sealed record SheetColumn(string Name, int From, ValueAndLimits? Limits = null)
{
    // What these hold is a name or a word, even where it looks like a number.
    private static readonly string[] Words =
        ["lot", "specimen", "band", "dominated_by", "source", "role", "message", "next_step", "basis", "flags"];

    private readonly bool _word = Words.Contains(Name, StringComparer.Ordinal);

    /// <summary>Whether it shows bounds, and not what stands beside a value.</summary>
    private bool OfBounds { get; init; }

    /// <summary>The columns of a sheet.</summary>
    /// <param name="header">Those of the written table.</param>
    public static ImmutableArray<SheetColumn> Of(string[] header)
    {
        ValueAndLimits[] limited = [.. header.Select((_, at) => ValueAndLimits.At(header, at)).OfType<ValueAndLimits>()];
        return [.. header.SelectMany((name, at) => Shown(name, at, limited))];
    }

    /// <summary>Its cell of a row.</summary>
    /// <param name="row">The row of the written table.</param>
    public DataCell Cell(string[] row) => Limits is { } limits && limits.IsBound(row) != OfBounds ? default : Cell(row[From]);

    private static IEnumerable<SheetColumn> Shown(string name, int at, ValueAndLimits[] limited)
    {
        yield return new SheetColumn(name, at, limited.FirstOrDefault(l => l.Low == at));
        if (limited.FirstOrDefault(l => l.High == at) is { } ended)
        {
            yield return new SheetColumn($"{ended.Stem}_at_least_db", ended.Low, ended) { OfBounds = true };
        }
    }

    private DataCell Cell(string text) => text.Length == 0 ? default
        : !_word && double.TryParse(
            text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture, out double number)
            ? new DataCell(number)
            : new DataCell(text);
}
