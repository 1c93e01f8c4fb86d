using System.Globalization;
using System.Text.RegularExpressions;

namespace SweepStats.Sweeps;

/// <summary>The days that a date names which a person wrote.</summary>
public static partial class StatedDate
{
    private static readonly string[] Forms = ["d.M.yyyy", "d MMMM yyyy", "MMMM d, yyyy", "d MMM yyyy"];

    /// <summary>
    /// Every day written as 2026-10-05, else a single day written out or with full stops, day before month; empty where none can
    /// be read. Other ways of writing a day have several readings.
    /// </summary>
    /// <param name="text">As written.</param>
    public static ImmutableArray<DateOnly> Days(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        DateOnly[] written = [.. Written().Matches(text).Select(m => Day(m.Value, "yyyy-MM-dd")).OfType<DateOnly>()];
        return written.Length > 0 ? [.. written] : [.. Forms.Select(form => Day(text.Trim(), form)).OfType<DateOnly>().Take(1)];
    }

    private static DateOnly? Day(string text, string form) =>
        DateOnly.TryParseExact(text, form, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    [GeneratedRegex(@"\b\d{4}-\d{2}-\d{2}\b", RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
