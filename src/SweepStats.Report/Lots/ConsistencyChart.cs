using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Lots;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Lots;

/// <summary>Mandel's h and k of specimens or lots as bars, with the values that one of them passes by chance.</summary>
internal static class ConsistencyChart
{
    /// <summary>More bars than this cannot be told apart.</summary>
    public const int Most = 60;

    private const double RoomAbove = 1.08;
    private const double TickHalf = 0.44;
    private const int Height = 420;

    /// <summary>The chart of h for specimens in their lots; null where they cannot be held against each other.</summary>
    public static Chart? OfMeans(LotBand band, string name) =>
        Means(band.SpecimenStanding, name, new(LotChartWords.SpecimenNoun, Lots(band)));

    /// <summary>The chart of k for specimens in their lots; null where they cannot be held against each other.</summary>
    public static Chart? OfScatter(LotBand band, string name) =>
        Scatter(band.SpecimenStanding, name, new(LotChartWords.SpecimenNoun, Lots(band)));

    /// <summary>The chart of h for lots; null where they cannot be held against each other.</summary>
    public static Chart? OfLotMeans(LotBand band, string name) => Means(band.LotStanding, name, new(LotChartWords.LotNoun, []));

    /// <summary>The chart of k for lots; null where they cannot be held against each other.</summary>
    public static Chart? OfLotScatter(LotBand band, string name) =>
        Scatter(band.LotStanding, name, new(LotChartWords.LotNoun, []));

    private static string[] Lots(LotBand band) => [.. band.Specimens.Select(p => p.Name.Lot)];

    private static Chart? Means(GroupStanding? standing, string name, Compared of)
    {
        if (standing is null)
        {
            return null;
        }

        var bars = Bars.Of(standing, m => m.H, _ => standing.CriticalH);
        LinearAxis axis =
            DecibelScale.Axis("h", [.. bars.Shown.Select(b => b.Value), standing.CriticalH.Outlier, -standing.CriticalH.Outlier]);
        return Drawn(bars, axis, name, new(of, LotChartWords.MandelHTitle(of.Noun), LotChartWords.MandelHSubtitle));
    }

    private static Chart? Scatter(GroupStanding? standing, string name, Compared of)
    {
        if (standing is null)
        {
            return null;
        }

        var bars = Bars.Of(standing, m => m.K, m => m.CriticalK);
        LinearAxis axis = ZeroScale.Axis("k",
            RoomAbove * bars.Shown.SelectMany(b => new[] { b.Value, b.Critical.Outlier }).Where(double.IsFinite).Max());
        return Drawn(bars, axis, name, new(of, LotChartWords.MandelKTitle(of.Noun), LotChartWords.MandelKSubtitle));
    }

    private static Chart Drawn(Bars bars, LinearAxis values, string name, Wording words)
    {
        LabelledAxis places = ThinnedLabels.Axis(
            LotChartWords.SideBySideOf(words.Of.Noun, bars.Shown.Length, bars.Count), [.. bars.Shown.Select(b => b.Name)],
            i => bars.Shown[i].IsStraggler);
        PlotModel model = Frame.Model(words.Title, words.Subtitle, places, values).With([
            words.Of.Lots.Distinct().Count() > 1
                ? new GroupStripes { Colour = Ink.Veil(Ink.Faint, 110), Groups = bars.Stretches(words.Of.Lots) } : null,
            .. Classes(bars),
            .. Limits(bars, places, bothWays: values.Minimum < 0),
        ]);
        return new Chart(name, ChartKind.Consistency, words.Title, LotChartWords.MandelDescription(words.Title, bars.Shown),
            model, Height);
    }

    private static Trace[] Limits(Bars bars, LabelledAxis places, bool bothWays)
    {
        Trace[] upper =
        [
            Limit(bars, places, b => b.Critical.Straggler, outlier: false),
            Limit(bars, places, b => b.Critical.Outlier, outlier: true),
        ];
        return !bothWays ? upper :
        [
            new() { Colour = Ink.Black, Points = Frame.Across(places, 0), Thickness = 1 }, .. upper,
            Limit(bars, places, b => -b.Critical.Straggler, outlier: false, named: false),
            Limit(bars, places, b => -b.Critical.Outlier, outlier: true, named: false),
        ];
    }

    // A line through all where all have one limit; where limits differ, a tick at each bar, for a line would hold each to the
    // limits of others.
    private static Trace Limit(Bars bars, LabelledAxis places, Func<ConsistencyBar, double> of, bool outlier, bool named = true)
    {
        double[] limits = [.. bars.Shown.Select(of)];
        bool one = ConsistencyBar.HaveOneLimit(bars.Shown);
        return new Trace
        {
            Colour = outlier ? Ink.Red : Ink.Black,
            Points = one ? Frame.Across(places, limits.First(double.IsFinite))
                : [.. limits.SelectMany(
                    (at, i) => new DataPoint[] { new(i - TickHalf, at), new(i + TickHalf, at), new(i + 0.5, double.NaN) })],
            Dash = !one ? null : outlier ? [12, 4] : [3, 3],
            Thickness = outlier ? 1.6 : 1.2,
            Title = named ? outlier ? LotChartWords.OutlierLine : LotChartWords.StragglerLine : null,
        };
    }

    private static IEnumerable<UprightBars> Classes(Bars bars)
    {
        int Class(int i) => bars.Shown[i].IsOutlier ? 2 : bars.Shown[i].IsStraggler ? 1 : 0;
        (OxyColor Colour, byte Strength, MarkerType End, string Title)[] looks =
        [
            (Ink.Grey, 60, MarkerType.None, LotChartWords.WithinLegend),
            (Ink.Lines[1].Colour, 160, MarkerType.Diamond, LotChartWords.StragglerLegend),
            (Ink.Red, 255, MarkerType.Square, LotChartWords.OutlierLegend),
        ];
        return Enumerable.Range(0, bars.Shown.Length).Where(i => double.IsFinite(bars.Shown[i].Value)).GroupBy(Class)
            .OrderBy(g => g.Key).Select(g => new UprightBars
            {
                Colour = looks[g.Key].Colour,
                Strength = looks[g.Key].Strength,
                EndMarker = looks[g.Key].End,
                Bars = [.. g.Select(i => new DataPoint(i, bars.Shown[i].Value))],
                Title = looks[g.Key].Title,
            });
    }

    /// <summary>The bars that are shown, in their order, out of so many.</summary>
    private sealed record Bars(ConsistencyBar[] Shown, int Count)
    {
        /// <summary>The bars that reach farthest for their limits, as many as can be told apart.</summary>
        public static Bars Of(
            GroupStanding standing, Func<GroupMember, double> figure, Func<GroupMember, ConsistencyLimits> critical)
        {
            ConsistencyBar[] all = [.. standing.Members.Select((m, i) => new ConsistencyBar(i, m.Name, figure(m), critical(m)))];
            return new Bars([.. all.OrderByDescending(b => b.Outlying).Take(Most).OrderBy(b => b.Member)], all.Length);
        }

        /// <summary>First and last place of each lot.</summary>
        public List<(double From, double To)> Stretches(string[] lots) =>
            [.. Shown.Select((b, i) => (Lot: lots[b.Member], i)).GroupBy(b => b.Lot)
                .Select(g => ((double)g.First().i, (double)g.Last().i))];
    }

    /// <summary>What is compared, and the lot of each; none where they are lots themselves.</summary>
    private sealed record Compared(string Noun, string[] Lots);

    /// <summary>What stands above the chart.</summary>
    private sealed record Wording(Compared Of, string Title, string Subtitle);
}
