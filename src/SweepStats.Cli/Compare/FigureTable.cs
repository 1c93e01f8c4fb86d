using System.Globalization;
using SweepStats.Files.Summaries;
using SweepStats.Report.Text;

namespace SweepStats.Cli.Compare;

/// <summary>The figures that moved: those that are apart first, then the furthest.</summary>
internal static class FigureTable
{
    // What a tenth of a dB would not show.
    private const double LeastDb = 0.05;

    private static readonly string[] Head = ["of", "figure", "later, dB", "earlier, dB", "by", ""];

    /// <summary>A row a figure that is apart or did not stay within 0.05 dB; of the rest the number is said.</summary>
    public static IEnumerable<string> Of(ImmutableArray<FigureChange> figures)
    {
        FigureChange[] moved = [.. figures.Where(HasMoved).OrderByDescending(f => f.AreApart)
            .ThenByDescending(f => Math.Abs(f.ByDb ?? double.PositiveInfinity))];
        foreach (string line in moved.Length == 0 ? [] : TextTable.Of(Head, moved.Select(Row)))
        {
            yield return line;
        }

        if (figures.Length > moved.Length)
        {
            yield return Printed.Count(figures.Length - moved.Length, "figure")
                + " moved by less than a tenth of a dB, or only in their intervals.";
        }

        if (Array.Exists(moved, f => f.AreApart))
        {
            yield return "Apart: the two intervals have nothing in common. Overlapping intervals do not prove figures alike.";
        }
    }

    private static bool HasMoved(FigureChange figure) =>
        figure.AreApart || !(Math.Abs(figure.ByDb ?? double.PositiveInfinity) < LeastDb);

    private static string[] Row(FigureChange figure) =>
    [
        figure.Name, figure.Figure, figure.Later.ToString(), figure.Earlier.ToString(), By(figure.ByDb),
        figure.AreApart ? "apart" : string.Empty,
    ];

    private static string By(double? decibels) => decibels is { } by
        ? by.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture) : "–";
}
