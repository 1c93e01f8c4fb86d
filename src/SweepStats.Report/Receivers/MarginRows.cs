using OxyPlot.Axes;
using SweepStats.Receivers;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Receivers;

/// <summary>Rows from top to bottom: the stations of a group, smallest margin first, then what they show together.</summary>
internal sealed class MarginRows
{
    // What a bar reaches to either side, in standard uncertainties: about 95 %.
    private const double Reach = 2;

    private readonly List<PlaceLabel> _labels = [];

    /// <summary>Stations with their rows.</summary>
    public List<MarginRow> Stations { get; } = [];

    /// <summary>What each group shows.</summary>
    public List<RowSpan> Intervals { get; } = [];

    /// <summary>Rows of what groups show, and between them those of their stations: every second one is striped.</summary>
    public List<(double From, double To)> Stripes { get; } = [];

    /// <summary>Stations for which there was no room.</summary>
    public int Left { get; private set; }

    /// <summary>Rows so far.</summary>
    public int Count => _labels.Count;

    /// <summary>Every value that must be seen.</summary>
    public IEnumerable<double> Seen =>
        Stations.SelectMany(s => new[] { s.Low, s.High })
        .Concat(Intervals.SelectMany(i => new[] { i.Low ?? i.High!.Value, i.High ?? i.Low!.Value }));

    /// <summary>Places groups as far as there is room.</summary>
    public static MarginRows Of(ReceiverTest test, int most)
    {
        var rows = new MarginRows();
        foreach (StationGroup group in test.Groups)
        {
            if (rows.Count + group.Observations.Length + 1 > most && rows.Count > 0)
            {
                rows.Left += group.Observations.Length;
                continue;
            }

            rows.Add(group);
        }

        return rows;
    }

    /// <summary>The axis of the rows, the first at the top, with names of stations and groups.</summary>
    public LabelledAxis Axis() =>
        new(AxisPosition.Left, _labels) { StartPosition = 1, EndPosition = 0, Minimum = -0.5, Maximum = Count - 0.5 };

    private void Add(StationGroup group)
    {
        if (Count > 0)
        {
            Stripes.Add((Count, Count + group.Observations.Length - 1));
        }

        foreach (ReceiverObservation o in group.Observations)
        {
            Stations.Add(new MarginRow(Count, o, o.MarginDb - (Reach * o.UncertaintyDb), o.MarginDb + (Reach * o.UncertaintyDb)));
            _labels.Add(new(Count, Frame.Name(o.Name)));
        }

        double? low = group.Interval?.Low ?? group.AtLeast?.Value, high = group.Interval?.High ?? group.AtMost?.Value;
        if (low is not null || high is not null)
        {
            Intervals.Add(new RowSpan(Count, low, high));
        }

        Stripes.Add((Count, Count));
        _labels.Add(new(Count, group.Contradiction is null ? GroupText.Where(group) : MarginChartText.NothingClaimed(group)));
    }
}

/// <summary>A station in its row.</summary>
/// <param name="Row">Row from the top.</param>
/// <param name="Observation">The station.</param>
/// <param name="Low">Lower end of its bar in dB.</param>
/// <param name="High">Upper end.</param>
internal readonly record struct MarginRow(double Row, ReceiverObservation Observation, double Low, double High);

/// <summary>What a group shows, in its row.</summary>
/// <param name="Row">Row from the top.</param>
/// <param name="Low">Lower limit in dB; null where open.</param>
/// <param name="High">Upper limit; null where open.</param>
internal readonly record struct RowSpan(double Row, double? Low, double? High);
