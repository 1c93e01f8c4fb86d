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
        var scale = PulseScale.Of(question.Pulse, shown);
        Trace front = InFront(question.Pulse, scale);
        Trace[] traces = [.. shown.Select((p, i) => Behind(p, scale, Ink.Lines[i]))];
        IntervalBand[] bands = [.. shown.Select((p, i) => Band(p, question.Outside, traces[i])).OfType<IntervalBand>()];
        double[] seen = [.. front.Points.Concat(traces.SelectMany(t => t.Points)).Select(p => p.Y), .. Ends(bands)];
        PlotModel model = Frame.Model(
            PulseWords.PulseTitle(result), PulseWords.PulseSubtitle(result, bands.Length > 0),
            RoundScale.Axis(AxisPosition.Bottom, "Time from the start of the pulse (ns)", [0, scale.Until * Nano]),
            Fields($"Field ({scale.Unit.Symbol})", seen));
        return new Chart(name, ChartKind.Pulse, PulseWords.PulseTitle(result),
            PulseWords.PulseDescription(result, shown), model.With([.. bands, front, .. traces]));
    }

    private static Trace InFront(DoubleExponential pulse, PulseScale scale) => new()
    {
        Colour = Ink.Grey,
        Points = [.. Enumerable.Range(0, PointsShown).Select(i => scale.Until * i / (PointsShown - 1))
            .Select(t => new DataPoint(t * Nano, pulse.FieldAt(t) / scale.Divisor / scale.Unit.VoltsPerMetre))],
        Dash = [2, 3],
        Title = PulseWords.PulseInFront(scale.Divisor),
    };

    private static IEnumerable<double> Ends(IntervalBand[] bands) =>
        bands.SelectMany(b => b.Slices).SelectMany(s => new[] { s.Low, s.High });

    // A field that does not swing below zero is shown from zero on.
    private static LinearAxis Fields(string title, double[] values) =>
        values.Min() > -Swing * values.Max() ? ZeroScale.Axis(title, values.Max())
            : RoundScale.Axis(AxisPosition.Left, title, values);

    private static Trace Behind(ResidualPulse pulse, PulseScale scale, Ink ink)
    {
        Waveform wave = pulse.Waveform!;
        int steps = scale.Steps(wave), stride = Math.Max(1, steps / PointsShown);
        DataPoint[] points = [.. Enumerable.Range(0, steps).Where(n => n % stride == 0)
            .Select(n => new DataPoint(n * wave.StepSeconds * Nano, wave.VoltsPerMetre[n] / scale.Unit.VoltsPerMetre))];
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

    /// <summary>How long the pulse is shown, by what it is divided in front, and the unit of the field.</summary>
    private sealed record PulseScale(double Until, double Divisor, FieldUnit Unit)
    {
        /// <summary>Six decays; the pulse in front divided by 1, 2, 5, 10, … to stand no higher than what is left.</summary>
        public static PulseScale Of(DoubleExponential pulse, ResidualPulse[] shown)
        {
            var scale = new PulseScale(DecaysShown / pulse.DecayPerSecond, 1, default);
            double highest =
                shown.Select(p => p.Waveform!).SelectMany(w => w.VoltsPerMetre.Take(scale.Steps(w))).Max(Math.Abs);
            return scale with { Divisor = RoundUp(pulse.PeakVoltsPerMetre / highest), Unit = FieldUnit.Of(highest) };
        }

        /// <summary>Samples of a waveform that are shown, up to the first at the end or beyond it.</summary>
        public int Steps(Waveform wave) =>
            Math.Min(wave.VoltsPerMetre.Length, (int)Math.Ceiling(Until / wave.StepSeconds) + 1);

        // 1, 2, 5, 10, … so that the pulse in front fits beside what is left of it.
        private static double RoundUp(double ratio)
        {
            double decade = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(1, ratio))));
            return RoundSteps.Select(s => s * decade).First(s => s >= Math.Max(1, ratio) * (1 - 1e-9));
        }
    }
}
