using System.Collections.Immutable;
using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Report.Drawing;
using SweepStats.StudyRuns.Trust;

namespace SweepStats.Studies.Trust;

/// <summary>Share of campaigns in which faults of one kind are found, over their size.</summary>
/// <param name="Name">File name without extension.</param>
/// <param name="Title">Title.</param>
/// <param name="Sizes">Name of the axis of sizes, with its unit.</param>
/// <param name="Codes">Checks whose faults are shown.</param>
internal sealed record DetectionChart(string Name, string Title, string Sizes, params string[] Codes)
{
    private const double Promised = 95;

    public static ImmutableArray<DetectionChart> All { get; } =
    [
        new("detection-overload", "How large an overload must be to be found", "Shortfall at the highest source level (dB)",
            "saturation-step"),
        new("detection-plateau", "How many clipped tops are found", "Share of the band that is clipped (%)",
            "saturation-plateau"),
        new("detection-drift", "How large a drift must be to be found",
            "Drift from the first reference sweep to the last (dB)", "drift"),
        new("detection-odd-sweep", "How far off a sweep must be to be found",
            "Offset, or rms of a standing wave (dB)", "odd-sweep"),
        new("detection-placement", "How large a placement effect must be to be found",
            "Standard deviation between placements (dB)", "placement-effect"),
        new("detection-ambient", "How strong a transmitter must be to be found", "Carrier over the floor (dB)", "ambient"),
        new("detection-leakage", "How near a leak must come to be found",
            "What comes round the plate, below the covered level (dB)", "leakage"),
        new("detection-non-normal", "How many jumping points are found", "Share of the points that are off by 1 dB (%)",
            "non-normal"),
        new("detection-settings", "How large a wrong setting or coarse step must be to be found", "Size (dB)", "below-thermal",
            "settings-changed", "quantised"),
        new("detection-negative", "How far the covered level must stand over the reference to be found",
            "Covered over the reference (dB)", "negative-shielding"),
        new("detection-range", "How near the floor a level must be to be found", "Level over the floor (dB)",
            "under-ranged", "capped"),
        new("detection-floorless", "How far the level must fall under an untaken floor to be found",
            "Covered signal under the noise at the end of the band (dB)", "suspected-floor"),
        new("detection-averaging", "How well a wrongly stated averaging is found", "Looks averaged in a reading",
            "averaging-doubtful"),
    ];

    public string FileName => Name + ".svg";

    /// <summary>The chart as a file; null where none of its checks was measured.</summary>
    public string? Of(ImmutableArray<DetectionRow> all)
    {
        var curves = all.Where(r => Codes.Contains(r.Code)).GroupBy(r => (r.Code, r.Name)).ToList();
        if (curves.Count == 0)
        {
            return null;
        }

        double first = Math.Min(0, curves.Min(c => c.Min(r => r.Size)));
        double last = curves.Max(c => c.Max(r => r.Size));
        var sizes = new LinearAxis
        {
            Position = AxisPosition.Bottom,
            Title = Sizes,
            Minimum = first,
            Maximum = last * 1.01,
            MinorTickSize = 0,
        };
        var share = new LinearAxis
        {
            Position = AxisPosition.Left,
            Title = "Campaigns in which it is found (%)",
            Minimum = 0,
            Maximum = 102,
            MajorStep = 10,
            MinorTickSize = 0,
        };
        Frame.Dress(sizes);
        Frame.Dress(share);
        string subtitle = FormattableString.Invariant(
            $"{curves[0].First().Campaigns} campaigns a size; five sweeps of each role, 0.2 dB of scatter");
        var promise = new Trace
        {
            Title = "95 %",
            Colour = Ink.Grey,
            Thickness = 1,
            Points = [new DataPoint(first, Promised), new DataPoint(last, Promised)],
        };
        PlotModel model =
            Frame.Model(Title, subtitle, sizes, share).With([promise, .. curves.Select((curve, i) => Line(curve.Key, curve, i))]);
        var chart = new Chart(Name, ChartKind.Overview, Title,
            "Share of rehearsed campaigns in which the fault is found, over its size: "
                + $"{string.Join(", ", curves.Select(c => c.Key.Name))}.", model);
        return System.Text.Encoding.UTF8.GetString(SvgPicture.Of(chart).File);
    }

    private static Trace Line((string Code, string Name) curve, IEnumerable<DetectionRow> rows, int number)
    {
        Ink ink = Ink.Lines[number % Ink.Lines.Length];
        return new Trace
        {
            Title = curve.Name,
            Colour = ink.Colour,
            Dash = ink.Dash,
            Marker = ink.Marker,
            MarkerSpacing = 0,
            Thickness = 1.8,
            Points = [.. rows.Select(r => new DataPoint(r.Size, 100 * r.Share))],
        };
    }
}
