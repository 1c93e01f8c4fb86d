using OxyPlot.Axes;
using SweepStats.Choice;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Choice;

/// <summary>Rows of a ranking from top to bottom: the yardstick, then each group with its heading.</summary>
internal sealed class ChoiceRows
{
    private readonly List<PlaceLabel> _labels = [];
    private double _next;

    private ChoiceRows()
    {
    }

    /// <summary>The candidates shown.</summary>
    public List<PlacedSpecimen> Placed { get; } = [];

    /// <summary>The yardstick; null without one.</summary>
    public PlacedSpecimen? Yardstick { get; private set; }

    /// <summary>Headings of the groups.</summary>
    public List<(double Row, string Text)> Headings { get; } = [];

    /// <summary>First and last row of each group, its heading included.</summary>
    public List<(double From, double To)> Groups { get; } = [];

    /// <summary>Yardstick first, then the candidates, from top to bottom.</summary>
    public IEnumerable<PlacedSpecimen> All => Yardstick is { } yardstick ? Placed.Prepend(yardstick) : Placed;

    /// <summary>Whether there are groups, which alone have probabilities of being best.</summary>
    public bool HasProbabilities => Headings.Count > 0;

    /// <summary>Rows, headings included.</summary>
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
            rows.Yardstick = new(rows._next, yardstick);
            rows.Label(ChoiceChartWords.YardstickLabel(yardstick.Name.ToString()));
        }

        RankedSpecimen[] shown = [.. band.Ranking.OrderBy(r => r.Group ?? int.MaxValue).Take(most)];
        IReadOnlyList<string> names = Frame.Names([.. shown.Select(r => r.Name.ToString())]);
        IEnumerable<NamedSpecimen> named = shown.Zip(names, (specimen, name) => new NamedSpecimen(specimen, name));
        foreach (IGrouping<int?, NamedSpecimen> group in named.GroupBy(r => r.Specimen.Group))
        {
            rows.Add(group, band.GroupCount > 0);
        }

        return rows;
    }

    /// <summary>The axis of the rows, the first at the top, with the names of the specimens.</summary>
    public LabelledAxis Axis() =>
        new(AxisPosition.Left, _labels) { StartPosition = 1, EndPosition = 0, Minimum = -0.5, Maximum = _next - 0.5 };

    private void Add(IGrouping<int?, NamedSpecimen> group, bool headed)
    {
        double first = _next;
        if (headed)
        {
            Headings.Add((_next++, ChoiceChartWords.GroupHeading(group.Key)));
        }

        foreach ((RankedSpecimen specimen, string name) in group)
        {
            Placed.Add(new(_next, specimen));
            Label(name);
        }

        if (headed)
        {
            Groups.Add((first, _next - 1));
        }
    }

    private void Label(string name) => _labels.Add(new(_next++, name));
}
