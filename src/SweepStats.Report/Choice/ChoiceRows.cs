using OxyPlot.Axes;
using SweepStats.Choice;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Choice;

/// <summary>Rows of a ranking from top to bottom: the yardstick, then each group with its heading.</summary>
internal sealed class ChoiceRows
{
    private readonly List<(double Place, string Label)> _labels = [];
    private double _next;

    private ChoiceRows()
    {
    }

    /// <summary>The candidates shown.</summary>
    public List<(double Row, RankedSpecimen Specimen)> Placed { get; } = [];

    /// <summary>The yardstick; null without one.</summary>
    public (double Row, RankedSpecimen Specimen)? Yardstick { get; private set; }

    /// <summary>Headings of the groups.</summary>
    public List<(double Row, string Text)> Headings { get; } = [];

    /// <summary>First and last row of each group, its heading included.</summary>
    public List<(double From, double To)> Groups { get; } = [];

    public IEnumerable<(double Row, RankedSpecimen Specimen)> All =>
        Yardstick is { } yardstick ? Placed.Prepend(yardstick) : Placed;

    public bool HasProbabilities => Headings.Count > 0;

    public int Count => (int)_next;

    /// <summary>Places at most so many candidates.</summary>
    /// <remarks>
    /// By group and then by rank: a specimen that scatters much ranks low by what can be claimed of it and may be the best all
    /// the same. Those without a group come last.
    /// </remarks>
    public static ChoiceRows Of(BandRanking band, int most)
    {
        var rows = new ChoiceRows();
        if (band.Yardstick is { } yardstick)
        {
            rows.Yardstick = (rows._next, yardstick);
            rows.Label(ChoiceChartWords.YardstickLabel(yardstick.Name.ToString()));
        }

        RankedSpecimen[] shown = [.. band.Ranking.OrderBy(r => r.Group ?? int.MaxValue).Take(most)];
        IReadOnlyList<string> names = Frame.Names([.. shown.Select(r => r.Name.ToString())]);
        foreach (IGrouping<int?, (RankedSpecimen Specimen, string Name)> group in shown.Zip(names).GroupBy(r => r.First.Group))
        {
            rows.Add(group, band.GroupCount > 0);
        }

        return rows;
    }

    public LabelledAxis Axis() =>
        new(AxisPosition.Left, _labels) { StartPosition = 1, EndPosition = 0, Minimum = -0.5, Maximum = _next - 0.5 };

    private void Add(IGrouping<int?, (RankedSpecimen Specimen, string Name)> group, bool headed)
    {
        double first = _next;
        if (headed)
        {
            Headings.Add((_next++, ChoiceChartWords.GroupHeading(group.Key)));
        }

        foreach ((RankedSpecimen specimen, string name) in group)
        {
            Placed.Add((_next, specimen));
            Label(name);
        }

        if (headed)
        {
            Groups.Add((first, _next - 1));
        }
    }

    private void Label(string name) => _labels.Add((_next++, name));
}
