using System.Globalization;
using SweepStats.Checks;
using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Report.Drawing;
using SweepStats.Report.Fields;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Findings;

/// <summary>Titles, legends and descriptions of the charts behind the findings.</summary>
internal static class FindingChartWords
{
    private const int ShortGroup = 18;

    internal const string ShownIn = "Shown in:";
    internal const string OffsetTitle = "Offsets of sweeps that repeat each other";
    internal const string OddLegend = "odd sweep";
    internal const string LinearityTitle = "How far the receiver follows the source";
    internal const string CompressionLegend = "1 dB short";
    internal const string ReferenceShortfallLegend = "the reference sweeps themselves";
    internal const string SingleShortfallLegend = "single sweeps: no interval";

    /// <summary>Heading over the charts of a kind.</summary>
    internal static string ChartGroup(ChartKind kind) => kind switch
    {
        ChartKind.Overview or ChartKind.Range or ChartKind.Bands => "Shielding and dynamic range",
        ChartKind.Lots or ChartKind.LotsOverFrequency or ChartKind.LotPromise or ChartKind.Scatter or ChartKind.Consistency
            or ChartKind.OverTime => "Lots, and how specimens scatter",
        ChartKind.Choice => "Which specimen is best",
        ChartKind.Pulse => PulseWords.PulseHeading,
        ChartKind.Budget => "Uncertainty",
        ChartKind.Offsets or ChartKind.Residuals or ChartKind.Linearity =>
            "Behind the findings: how steady the sweeps were, and whether the receiver follows",
        _ => "Each specimen",
    };

    /// <summary>Sweeps of a role: "floor", "reference", "covered".</summary>
    internal static string Sweeps(SweepRole role) => role.ToString().ToLowerInvariant();

    /// <summary>A group as a label: "floor", "reference", "A/A01 p2".</summary>
    internal static string Group(RepeatGroup group, int longest) => Frame.Literal(PlainText.Short(
        group.Specimen is { } specimen ? specimen + (group.Placement is { } placement ? " " + placement : string.Empty)
            : Sweeps(group.Role), longest));

    /// <summary>The lot of a covered group as a label.</summary>
    internal static string Lot(RepeatGroup group, int longest) =>
        Frame.Literal("lot " + PlainText.Short(group.Specimen!.Value.Lot, longest));

    internal static string SideBySide(int groups) =>
        groups == 1 ? "Sweeps in order" : $"Sweeps in order, {Count(groups, "group")} side by side";

    internal static string ClockTitle(DateTimeOffset first, DateTimeOffset last)
    {
        string day = first.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
        string until = last.Date == first.Date ? string.Empty
            : " to " + last.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
        string sign = first.Offset < TimeSpan.Zero ? "−" : "+";
        return $"Time, {day}{until} (UTC{sign}{first.Offset.ToString(@"hh\:mm", CultureInfo.InvariantCulture)})";
    }

    internal static string OffsetSubtitle(OffsetSummary offsets)
    {
        string left = offsets.WithoutTime > 0 ? $"; {Count(offsets.WithoutTime, "floor sweep")} without time left out"
            : string.Empty;
        return $"{Count(offsets.Sizes.Length, "sweep")} in {Count(offsets.Groups.Length, "group")}; half of them within "
            + $"{Within(offsets.TypicalDb)}, "
            + $"farthest {Hundredths(offsets.Farthest.Sweep.Offset.Value)} "
            + $"({SweepOf(offsets.Farthest.Group, offsets.Farthest.Sweep.Sweep, offsets.Groups)}){left}";
    }

    internal static string DriftLegend(IReadOnlyList<Finding> drifts)
    {
        double[] sizes = [.. drifts.Select(d => d.Size?.Value).OfType<double>().Order()];
        return sizes switch
        {
            [] => "drift found",
            [var only] => $"drift found, {Ratio(only)} in all",
            _ => $"drift found, {Tenths.Nearest(sizes[0])} to {Ratio(sizes[^1])}",
        };
    }

    /// <summary>A sweep by its short name, with its group where covered sweeps of several groups may bear the same.</summary>
    internal static string SweepOf(RepeatGroup group, Sweep sweep, ImmutableArray<RepeatGroup> groups) =>
        group.Role == SweepRole.Covered && groups.Count(g => g.Role == SweepRole.Covered) > 1
            ? $"{Group(group, ShortGroup)}: {SweepNames.Short(sweep)}" : SweepNames.Short(sweep);

    internal static string OffsetDescription(OffsetSummary offsets, IReadOnlyList<string> odd)
    {
        string along = offsets.ByTime ? "at the time it was taken" : "in order";
        IEnumerable<string> roles = offsets.Roles.Select(r =>
            $"{Sweeps(r.Role)}: {Count(r.Sweeps.Count, "sweep")} from {Hundredths(r.Sweeps.Min(s => s.Offset.Value))} to "
                + $"{Hundredths(r.Sweeps.Max(s => s.Offset.Value))}");
        string ringed = odd.Count == 0 ? string.Empty : $" Ringed as odd: {string.Join(", ", odd)}.";
        return $"How far each sweep lies above or below the middle of those that repeat it, {along}. "
            + $"{string.Join("; ", roles)}.{ringed}";
    }

    internal static string ResidualTitle(RepeatGroup group) => group.Specimen is { } specimen
        ? $"Where covered sweeps of {Frame.Name(specimen.ToString())} differ"
            + (group.Placement is { } placement ? $", placement {Frame.Name(placement)}" : string.Empty)
        : $"Where {Sweeps(group.Role)} sweeps differ";

    internal static string ResidualSubtitle(FrequencyGrid grid, RepeatGroup group) =>
        $"each sweep against the middle of all {Plain(group.Sweeps.Length)}, its offset taken out; farthest "
            + $"{Farthest(grid, group)}";

    internal static string? CellsShared(bool points, int sweeps) => (points, sweeps) switch
    {
        (false, 1) => null,
        (true, 1) => "a cell shows the farthest of its points",
        _ => $"a cell shows the farthest of its points in {Count(sweeps, "neighbouring sweep")}",
    };

    internal static string ResidualDescription(FrequencyGrid grid, RepeatGroup group)
    {
        RepeatedSweep strangest = group.Sweeps.MaxBy(s => s.Shape.Value)!;
        return $"What is left of {Count(group.Sweeps.Length, Sweeps(group.Role) + " sweep")}"
            + $"{(group.Specimen is { } s ? " of " + SpecimenLabel(s) : string.Empty)} over frequency without the middle of all "
            + "and the "
            + $"offset of each, in dB: blue below, red above. Compared at {Plain(group.Points.Length)} of "
            + $"{Count(grid.Count, "frequency")}. Farthest {Farthest(grid, group)}; "
            + $"the shape that differs most is that of {SweepNames.Short(strangest.Sweep)}, by {Small(strangest.Shape.Value)} "
            + "(root mean square).";
    }

    /// <summary>What stands beside a row: its first sweep, when that was taken, and whether one of the row is odd.</summary>
    internal static string RowLabel(IReadOnlyList<RepeatedSweep> row, IReadOnlySet<string> odd)
    {
        Sweep first = row[0].Sweep;
        string time = first.TakenAt is { } at ? at.ToString("  HH:mm", CultureInfo.InvariantCulture) : string.Empty;
        return (row.Count == 1 ? string.Empty : "from ") + SweepNames.Short(first) + time
            + (row.Any(s => odd.Contains(s.Sweep.Name)) ? " (odd)" : string.Empty);
    }

    internal static string NotCompared(SweepRole role) =>
        role == SweepRole.Floor ? "not compared: something transmits there"
            : "not compared: within 10 dB of the floor, or something transmits";

    internal static string ScaleLow(HeatScale scale) =>
        $"−{Plain(scale.LimitDb)} dB{(scale.IsExceeded ? " and below" : string.Empty)}";

    internal static string ScaleHigh(HeatScale scale) =>
        $"{Plain(scale.LimitDb)} dB{(scale.IsExceeded ? " and above" : string.Empty)}";

    internal static string LinearitySubtitle(LinearityCurve curve, double? compression)
    {
        double most = curve.Steps.Max(s => s.ShortfallDb);
        string upTo = $"up to {Dbm(curve.Steps[^1].HighDbm)}";
        string reached = compression is { } at ? $"1 dB short at about {Dbm(at)} of the source"
            : most < 0.005 ? $"nothing short {upTo}" : $"at most {Hundredths(most)} short {upTo}";
        string sweeps = curve.StepsHoldReference ? $"{Plain(curve.SweepCount)} linearity and reference sweeps"
            : Count(curve.SweepCount, "linearity sweep");
        return $"{sweeps} at {Count(curve.Steps.Length + 1, "source level")}, each level against the lowest; {reached}";
    }

    internal static string ReferenceSource(double source) => $"reference taken at {Dbm(source)}";

    internal static string ShortfallLegend(LinearityCurve curve, bool cut) =>
        $"shown too little, with {Level(curve.Confidence)} interval{(cut ? " (cut at the frame)" : string.Empty)}";

    internal static string CompressionAt(double source) => $"falls 1 dB short at about {Dbm(source)}";

    internal static string LinearityDescription(LinearityCurve curve, double? compression) =>
        $"What the receiver shows too little of each step of the source from {Dbm(curve.LowestDbm)} on. "
        + string.Join("; ",
            curve.All.Select(s => $"{Dbm(s.HighDbm)}{(ReferenceEquals(s, curve.Reference) ? " (reference)" : string.Empty)}: "
                + $"{Hundredths(s.ShortfallDb)}"
                + $"{(s.Interval is { } i ? $" ({LowHundredths(i.Low)} to {HighHundredths(i.High)} dB)" : ", no interval")}"))
        + (compression is { } at ? $". It falls 1 dB short at about {Dbm(at)}." : ".");

    private static string Farthest(FrequencyGrid grid, RepeatGroup group)
    {
        (RepeatedSweep sweep, int place) = group.Sweeps.SelectMany(s => Enumerable.Range(0, s.RestDb.Count).Select(p => (s, p)))
            .MaxBy(v => Math.Abs(v.s.RestDb[v.p]));
        return $"{Hundredths(sweep.RestDb[place])} ({SweepNames.Short(sweep.Sweep)} at {Frequency(grid[group.Points[place]])})";
    }

    private static string Dbm(double level) => Plain(Math.Round(level, 1)) + " dBm";

    private static string Within(double size) => size < 0.005 ? "±0.01 dB" : $"±{Plain(Math.Round(size, 2))} dB";

    internal static string Hundredths(double value) => Sign(value.ToString("F2", CultureInfo.InvariantCulture)) + " dB";

    private static string LowHundredths(double value) =>
        Sign((Math.Floor((value * 100) + 1e-9) / 100).ToString("F2", CultureInfo.InvariantCulture));

    private static string HighHundredths(double value) =>
        Sign((Math.Ceiling((value * 100) - 1e-9) / 100).ToString("F2", CultureInfo.InvariantCulture));
}
