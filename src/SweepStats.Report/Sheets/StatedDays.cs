using System.Globalization;
using System.Text.RegularExpressions;
using SweepStats.Report.Text;

namespace SweepStats.Report.Sheets;

/// <summary>Whether the date that is stated for the report agrees with the times that the sweeps carry.</summary>
internal static partial class StatedDays
{
    private static readonly string[] Forms = ["d.M.yyyy", "d MMMM yyyy", "MMMM d, yyyy", "d MMM yyyy"];

    /// <summary>That the two say different days, and what to do; null where they agree or none is known.</summary>
    public static string? Remark(AnalysisResult result) => result.Identity.Date is { } stated && Contradicted(result) is { } taken
        ? $"[report] date says {PlainText.Of(stated)}, but the sweeps were taken on {taken}. Correct one of them." : null;

    /// <summary>
    /// The days that the sweeps carry, where the stated date leaves some of them out; null where it does not, or cannot be read
    /// as a day.
    /// </summary>
    public static string? Contradicted(AnalysisResult result)
    {
        if (result.Identity.Date is not { } stated || Days(stated) is not [_, ..] days)
        {
            return null;
        }

        bool agree = SheetWords.Taken(result).All(day => day >= days.Min() && day <= days.Max());
        return agree ? null : SheetWords.Days(result);
    }

    // Other ways of writing a day have several readings: of those nothing is said.
    private static DateOnly[] Days(string stated)
    {
        DateOnly[] written = [.. Written().Matches(stated).Select(m => Day(m.Value, "yyyy-MM-dd")).OfType<DateOnly>()];
        return written.Length > 0 ? written : [.. Forms.Select(form => Day(stated.Trim(), form)).OfType<DateOnly>().Take(1)];
    }

    private static DateOnly? Day(string text, string form) =>
        DateOnly.TryParseExact(text, form, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    [GeneratedRegex(@"\b\d{4}-\d{2}-\d{2}\b", RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
