using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Budgets;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Budgets;

/// <summary>What each source contributes to the uncertainty, one group of bars a budget.</summary>
internal static class BudgetChart
{
    // What is less is no part of the uncertainty, but what rounding leaves of none.
    private const double RoundingDb = 1e-9;

    private const int MostBudgets = 10;
    private const int MostBars = 6;
    private const int RowHeight = 20;
    private const int Surroundings = 150;
    private const double LabelDistance = 8;

    // Room at the end of the longest bar for its figure.
    private const double RoomForLabel = 1.14;

    /// <summary>The chart; null where there is no linear budget.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        ImmutableArray<ShieldingBudget> all =
            [.. result.Budgets.SelectMany(b => b.All).Where(b => b.Linear is { StandardUncertainty: > 0 })];
        ImmutableArray<ShieldingBudget> shown = all.Length <= MostBudgets ? all : Weakest(all, result);
        if (shown.IsEmpty)
        {
            return null;
        }

        var rows = new Rows();
        foreach (ShieldingBudget budget in shown)
        {
            rows.Add(budget);
        }

        PlotModel model = Frame.Model(BudgetAdviceWords.BudgetTitle, BudgetAdviceWords.BudgetSubtitle(shown.Length, all.Length),
            Values(rows.Highest), rows.Axis()).With(Series(rows));
        return new Chart(name, ChartKind.Budget, BudgetAdviceWords.BudgetTitle, BudgetAdviceWords.BudgetChartDescription(shown),
            model, Surroundings + (RowHeight * rows.Count));
    }

    private static ChartSeries[] Series(Rows rows) =>
    [
        new RowText { Colour = Ink.Black, Rows = rows.Headings, Heading = true },
        new BudgetBars { Colour = Ink.Blue, Bars = rows.Repeats, Title = BudgetAdviceWords.RepeatsLegend },
        new BudgetBars
        {
            Colour = Ink.Lines[1].Colour,
            Bars = rows.Stated,
            Hollow = true,
            Title = BudgetAdviceWords.StatedLegend,
        },
        new BudgetBars { Colour = Ink.Black, Bars = rows.Combined, Title = BudgetAdviceWords.CombinedLegend },
    ];

    // Where not all have room the means are left out. In the order of the report again.
    private static ImmutableArray<ShieldingBudget> Weakest(ImmutableArray<ShieldingBudget> all, AnalysisResult result)
    {
        bool frequencies = all.Any(b => b.At is not null);
        HashSet<ShieldingBudget> weakest =
            [.. all.Where(b => b.At is not null || !frequencies).OrderBy(b => ShownBudgets.Room(b, result)).Take(MostBudgets)];
        return [.. all.Where(weakest.Contains)];
    }

    private static LinearAxis Values(double highest) => ZeroScale.Axis("Contribution (dB)", highest * RoomForLabel).AtBottom();

    /// <summary>The rows from top to bottom: heading, sources from the largest, combined, and half a row of space.</summary>
    private sealed class Rows
    {
        private readonly List<PlaceLabel> _labels = [];
        private double _next;

        /// <summary>Heading of each budget, in the row above its bars.</summary>
        public List<(double Row, string Text)> Headings { get; } = [];

        /// <summary>Bars of sources that the repeats show.</summary>
        public List<BudgetBar> Repeats { get; } = [];

        /// <summary>Bars of sources that are stated, or of small ones together where one of them is.</summary>
        public List<BudgetBar> Stated { get; } = [];

        /// <summary>Bars of the combined standard uncertainty, one a budget.</summary>
        public List<BudgetBar> Combined { get; } = [];

        /// <summary>Rows so far, space between budgets included.</summary>
        public int Count => (int)Math.Ceiling(_next);

        /// <summary>Longest bar of a combined uncertainty, in dB.</summary>
        public double Highest => Combined.Max(c => c.Value);

        /// <summary>Places a budget under the last; of more than six sources the smallest share a bar (sum of squares).</summary>
        public void Add(ShieldingBudget budget)
        {
            Headings.Add((_next++, Frame.Literal(BudgetAdviceWords.BudgetHeading(budget))));
            UncertaintyLine[] lines =
                [.. budget.Lines.Where(l => l.ContributionDb > RoundingDb).OrderByDescending(l => l.ContributionDb)];
            int alone = lines.Length <= MostBars ? lines.Length : MostBars - 1;
            foreach (UncertaintyLine line in lines.Take(alone))
            {
                Bar(line.TypeB ? Stated : Repeats, Frame.Literal(BudgetAdviceWords.SourceLabel(line, budget.ByPlacement)),
                    line.ContributionDb!.Value);
            }

            if (lines.Length > alone)
            {
                UncertaintyLine[] rest = lines[alone..];
                Bar(rest.Any(l => l.TypeB) ? Stated : Repeats, BudgetAdviceWords.SmallerSources,
                    Math.Sqrt(rest.Sum(l => l.ContributionDb!.Value * l.ContributionDb.Value)));
            }

            Bar(Combined, BudgetAdviceWords.Combined, budget.Linear!.StandardUncertainty);
            _next += 0.5;
        }

        /// <summary>The axis of the rows, the first at the top, with a label for every bar.</summary>
        public LabelledAxis Axis() => new(AxisPosition.Left, _labels)
        {
            StartPosition = 1,
            EndPosition = 0,
            Minimum = -0.7,
            Maximum = _next - 0.6,
            AxisTickToLabelDistance = LabelDistance,
        };

        private void Bar(List<BudgetBar> bars, string label, double value)
        {
            _labels.Add(new(_next, label));
            bars.Add(new(_next++, value));
        }
    }
}
