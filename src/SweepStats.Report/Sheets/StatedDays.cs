using SweepStats.Report.Text;
using SweepStats.Sweeps;

namespace SweepStats.Report.Sheets;

/// <summary>Whether the date that is stated for the report agrees with the times that the sweeps carry.</summary>
internal static class StatedDays
{
    /// <summary>That the two say different days, and what to do; null where they agree or none is known.</summary>
    public static string? Remark(AnalysisResult result) => result.Identity.Date is { } stated && Contradicted(result) is { } taken
        ? $"[report] date says {PlainText.Of(stated)}, but the sweeps were taken on {taken}. Correct one of them." : null;

    /// <summary>
    /// The days that the sweeps carry, where the stated date leaves some of them out; null where it does not, or cannot be read
    /// as a day.
    /// </summary>
    public static string? Contradicted(AnalysisResult result)
    {
        if (result.Identity.Date is not { } stated || StatedDate.Days(stated) is not [_, ..] days)
        {
            return null;
        }

        bool agree = SheetWords.Taken(result).All(day => day >= days.Min() && day <= days.Max());
        return agree ? null : SheetWords.Days(result);
    }
}
