using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;
using SweepStats.Sweeps;

namespace SweepStats.Report;

/// <summary>Which of the planned charts are drawn.</summary>
/// <param name="Kept">Those that are, in the order of the page.</param>
/// <param name="LeftOut">Those that are not.</param>
/// <param name="Weakest">
/// In a summary that leaves something out, the specimens that have charts of their own, weakest first.
/// </param>
internal sealed record ChartChoice(ImmutableArray<PlannedChart> Kept, ImmutableArray<PlannedChart> LeftOut,
    ImmutableArray<SpecimenName> Weakest)
{
    /// <summary>Up to so many specimens a person may look at every chart.</summary>
    private const int MostInFull = 25;

    /// <summary>More overviews than this nobody looks through: then those stay that show one of the weakest.</summary>
    private const int MostOverviews = 8;

    /// <param name="all">Every chart of the result.</param>
    /// <param name="result">The result.</param>
    /// <param name="asked">Which were asked for; null where nobody said.</param>
    public static ChartChoice Of(ImmutableArray<PlannedChart> all, AnalysisResult result, ChartsDrawn? asked) =>
        (asked ?? (result.Curves.Length <= MostInFull ? ChartsDrawn.All : ChartsDrawn.Summary)) switch
        {
            ChartsDrawn.None => new ChartChoice([], all, []),
            ChartsDrawn.All => new ChartChoice(all, [], []),
            _ => Summary(all, [.. WeakestSpecimens.Of(result)]),
        };

    private static ChartChoice Summary(ImmutableArray<PlannedChart> all, ImmutableArray<SpecimenName> weakest)
    {
        bool few = all.Count(c => c.IsOverview) <= MostOverviews;
        ILookup<bool, PlannedChart> kept = all.ToLookup(c => c.Of.IsEmpty || (few && c.IsOverview) || c.Of.Any(weakest.Contains));
        return new ChartChoice([.. kept[true]], [.. kept[false]], kept[false].Any() ? weakest : []);
    }
}
