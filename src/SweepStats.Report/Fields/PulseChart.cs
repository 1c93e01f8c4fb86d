using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Fields;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Fields;

/// <summary>
/// What is left of a pulse over time behind the specimens that leave most of it, beside the pulse in front on a smaller scale.
/// </summary>
internal static class PulseChart
{
    /// <summary>Curves of more specimens hide each other.</summary>
    public const int Most = 5;

    private const double Nano = 1e9, DecaysShown = 6, Swing = 0.01;
    private const int PointsShown = 450;
    private static readonly double[] RoundSteps = [1, 2, 5, 10];

    /// <summary>The chart; null where nothing is told of any specimen.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        ResidualPulse[] shown = [.. PulseWords.PulsesByPeak(result).Where(p => p.Waveform is not null).Take(Most)];
        if (shown.Length == 0)
        {
            return null;
        }

        PulseQuestion question = result.Plan.Pulse;
        double until = DecaysShown / question.Pulse.DecayPerSecond;
        double highest = shown.SelectMany(p => p.Waveform!.VoltsPerMetre.Take(Steps(p, until))).Max(Math.Abs);
        double divisor = RoundUp(question.Pulse.PeakVoltsPerMetre / highest);
        FieldUnit unit = FieldUnit.Of(highest);
        Trace front = InFront(question.Pulse, until, divisor, unit);
        Trace[] traces = [.. shown.Select((p, i) => Behind(p, until, unit, Ink.Lines[i]))];
        IntervalBand[] bands = [.. shown.Select((p, i) => Band(p, question.Outside, traces[i])).OfType<IntervalBand>()];
        PlotModel model = Frame.Model(
            PulseWords.PulseTitle(result), PulseWords.PulseSubtitle(result, bands.Length > 0),
            RoundScale.Axis(AxisPosition.Bottom, "Time from the start of the pulse (ns)", [0, until * Nano]),
            Fields($"Field ({unit.Symbol})", [.. front.Points.Concat(traces.SelectMany(t => t.Points)).Select(p => p.Y),
                .. Ends(bands)]));
        return new Chart(name, ChartKind.Pulse, PulseWords.PulseTitle(result),
            PulseWords.PulseDescription(result, shown), model.With([.. bands, front, .. traces]));
    }

    private static Trace InFront(DoubleExponential pulse, double until, double divisor, FieldUnit unit) => new()
    {
        Colour = Ink.Grey,
        Points = [.. Enumerable.Range(0, PointsShown).Select(i => until * i / (PointsShown - 1))
            .Select(t => new DataPoint(t * Nano, pulse.FieldAt(t) / divisor / unit.VoltsPerMetre))],
        Dash = [2, 3],
        Title = PulseWords.PulseInFront(divisor),
    };

    private static IEnumerable<double> Ends(IntervalBand[] bands) =>
        bands.SelectMany(b => b.Slices).SelectMany(s => new[] { s.Low, s.High });

    // A field that does not swing below zero is shown from zero on.
    private static LinearAxis Fields(string title, double[] values) =>
        values.Min() > -Swing * values.Max() ? ZeroScale.Axis(title, values.Max())
            : RoundScale.Axis(AxisPosition.Left, title, values);

    private static int Steps(ResidualPulse pulse, double until) =>
        Math.Min(pulse.Waveform!.VoltsPerMetre.Length, (int)Math.Ceiling(until / pulse.Waveform.StepSeconds) + 1);

    private static Trace Behind(ResidualPulse pulse, double until, FieldUnit unit, Ink ink)
    {
        Waveform wave = pulse.Waveform!;
        int steps = Steps(pulse, until), stride = Math.Max(1, steps / PointsShown);
        DataPoint[] points = [.. Enumerable.Range(0, steps).Where(n => n % stride == 0)
            .Select(n => new DataPoint(n * wave.StepSeconds * Nano, wave.VoltsPerMetre[n] / unit.VoltsPerMetre))];
        return new Trace
        {
            Colour = ink.Colour,
            Dash = ink.Dash,
            Marker = ink.Marker,
            Points = points,
            Title = PulseWords.PulseLegend(pulse)
        };
    }

    // The interval of the peak, carried along the waveform.
    private static IntervalBand? Band(ResidualPulse pulse, OutsideBand outside, Trace trace)
    {
        if (pulse.Under(outside) is not { Estimate: { } estimate, PeakLimits: { } limits })
        {
            return null;
        }

        (double low, double high) = (limits.Low / estimate.PeakVoltsPerMetre, limits.High / estimate.PeakVoltsPerMetre);
        return new IntervalBand
        {
            Colour = trace.Colour,
            Slices = [.. trace.Points.Select(
                p => new Slice(p.X, Math.Min(p.Y * low, p.Y * high), Math.Max(p.Y * low, p.Y * high)))],
        };
    }

    // 1, 2, 5, 10, … so that the pulse in front fits beside what is left of it.
    private static double RoundUp(double ratio)
    {
        double decade = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(1, ratio))));
        return RoundSteps.Select(s => s * decade).First(s => s >= Math.Max(1, ratio) * (1 - 1e-9));
    }
}
