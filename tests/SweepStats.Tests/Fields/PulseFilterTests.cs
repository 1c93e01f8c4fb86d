using SweepStats.Fields;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Fields;

/// <summary>A pulse behind a curve: closed forms, R's partial fractions (fixtures/oracles/pulse.R), and laws.</summary>
public sealed class PulseFilterTests
{
    private static readonly PulseGrid Grid = new(DoubleExponential.EarlyTime, 30e6);
    private static readonly PulseFilter Filter = new(Grid);

    [Fact]
    public void BehindNothingThePulseIsItself()
    {
        double[] behind = Behind(_ => 0).Samples;
        for (int n = 0; n < behind.Length; n += 97)
        {
            Agreement.Within(1e-6, DoubleExponential.EarlyTime.FieldAt(n * Grid.StepSeconds), behind[n], n);
        }
    }

    [Fact]
    public void TwentyDecibelsEverywhereLeaveATenthOfThePeakAndTheShapeAsItWas()
    {
        PulseFigures before = Figures(Behind(_ => 0)), after = Figures(Behind(_ => 20));
        Agreement.Relative(1e-9, before.PeakVoltsPerMetre / 10, after.PeakVoltsPerMetre);
        Agreement.Relative(1e-9, before.RiseSeconds, after.RiseSeconds);
        Agreement.Relative(1e-9, before.WidthSeconds, after.WidthSeconds);
        Agreement.Relative(1e-9, before.JoulesPerSquareMetre / 100, after.JoulesPerSquareMetre);
    }

    // 1/(1 + s/p) of A·(1/(s+α) − 1/(s+β)): A·p·((e^(−αt) − e^(−pt))/(p−α) − (e^(−βt) − e^(−pt))/(p−β)), by hand.
    [Theory]
    [InlineData(2e6, 2e-3)]
    [InlineData(20e6, 3e-3)]
    [InlineData(200e6, 1e-2)]
    public void ASinglePoleGivesItsClosedFormAtEveryTime(double cornerHz, double tolerance)
    {
        double pole = 2 * Math.PI * cornerHz, most = 0, peak = 0;
        double[] behind = Behind(f => 10 * Math.Log10(1 + (f / cornerHz * (f / cornerHz)))).Samples;
        for (int n = 0; n < 20_000; n++)
        {
            double t = n * Grid.StepSeconds;
            double exact = 65e3 * pole * (Part(4e7, pole, t) - Part(6e8, pole, t));
            (most, peak) = (Math.Max(most, Math.Abs(behind[n] - exact)), Math.Max(peak, exact));
        }

        Assert.True(most < tolerance * peak, FormattableString.Invariant($"{most / peak:G3} of the peak"));
    }

    [Fact]
    public void TheFieldsEnergyIsThatOfItsSpectrum()
    {
        foreach (FilteredPulse behind in Filter.Through([Curve(f => 12 * Math.Log10(1 + (f / 20e6))), Curve(Rough)]))
        {
            double time = behind.Samples.Sum(y => y * y);
            double spectrum = behind.Amplitudes.Select((a, k) => a * a / Grid.Times(k)).Sum() / Grid.Count;
            Agreement.Relative(1e-9, time, spectrum);
        }
    }

    // Curves as campaigns give them, rough and steep; what lies in the last tenth of the grid would have come before the start.
    [Theory]
    [InlineData(30e6, 1.5e9, 101)]
    [InlineData(30e6, 18e9, 401)]
    [InlineData(200e6, 400e6, 11)]
    public void NothingArrivesBeforeThePulse(double start, double stop, int points)
    {
        var band = new MeasuredBand(new FrequencyGrid(
            [.. Enumerable.Range(0, points).Select(i => start * Math.Pow(stop / start, i / (points - 1.0)))]), Grid);
        double[] readings = [.. Enumerable.Range(0, points).Select(i => 40 + (10 * Math.Sin(i * 0.3)) + (i % 7))];
        FilteredPulse[] behind = Filter.Through(
            [.. Enum.GetValues<OutsideBand>()
            .Select(outside => new FilteredCurve(band.Spread(readings, outside))), Curve(Stepped)]);
        double[] shares = [.. behind.Select(b => b.Samples[^(Grid.Count / 10)..].Max(Math.Abs) / b.Samples.Max(Math.Abs))];
        Assert.All(shares, share => Assert.True(share < 1e-6, string.Join(", ", shares)));
    }

    // Nothing in the way beside 60 dB: the small one has the rounding of the large one.
    [Theory]
    [InlineData(2, 1e-11)]
    [InlineData(3, 1e-11)]
    [InlineData(5, 1e-11)]
    public void CurvesThatGoTogetherComeOutAsEachAlone(int count, double tolerance)
    {
        FilteredCurve[] curves =
            [.. Enumerable.Range(0, count).Select(c => Curve(f => c * 30 * Math.Log10(1 + (f / (c + 1) / 1e7))))];
        FilteredPulse[] together = Filter.Through(curves);
        Assert.Equal(curves.Length, together.Length);
        for (int c = 0; c < curves.Length; c++)
        {
            FilteredPulse alone = Filter.Through([curves[c]])[0];
            double peak = alone.Samples.Max();
            Assert.All(alone.Samples.Zip(together[c].Samples), y => Assert.Equal(y.First, y.Second, tolerance * peak));
            Assert.All(alone.PeakWeights.Zip(together[c].PeakWeights), w => Assert.Equal(w.First, w.Second, tolerance));
            Assert.Equal(alone.Amplitudes.Sum(), together[c].Amplitudes.Sum(), 1e-9 * alone.Amplitudes.Sum());
        }
    }

    [Fact]
    public void FiguresAgreeWithPartialFractionsOfR()
    {
        string[][] cells = Fixtures.Cells("oracles/pulse-filters.csv");
        double[][] filters = Fixtures.Numbers("oracles/pulse-filters.csv");
        foreach (double[] expected in Fixtures.Numbers("oracles/pulse-figures.csv"))
        {
            (string Kind, double Value)[] parts =
                [.. cells.Zip(filters).Where(r => r.Second[0] == expected[0]).Select(r => (r.First[1], r.Second[2]))];
            PulseFigures found = Figures(Behind(f => Shielding(parts, f)));
            Agreement.Relative(3e-3, expected[1], found.PeakVoltsPerMetre, expected);
            Agreement.Relative(5e-3, expected[2], found.RiseSeconds, expected);
            Agreement.Relative(5e-3, expected[3], found.WidthSeconds, expected);
            Agreement.Relative(5e-4, expected[4], found.JoulesPerSquareMetre, expected);
        }
    }

    [Fact]
    public void TheWeightsOfThePeakAreItsDerivatives()
    {
        FilteredPulse behind = Behind(Rough);
        Agreement.Within(1e-9, 1, behind.PeakWeights.Sum());
        foreach (double centre in new[] { 5e6, 40e6, 300e6 })
        {
            double Bump(double f) => Math.Exp(-Math.Pow(Math.Log((f + 1) / centre), 2) / 0.02);
            const double Step = 1e-3;
            double more = Behind(f => Rough(f) + (Step * Bump(f)))
                .Samples.Max(Math.Abs), less = Behind(f => Rough(f) - (Step * Bump(f))).Samples.Max(Math.Abs);
            double slope = behind.PeakWeights.Select((w, k) => w * Bump(Grid.HertzAt(k))).Sum();
            Agreement.Within(2e-4, slope, -20 * Math.Log10(more / less) / (2 * Step), centre);
        }
    }

    [Theory]
    [InlineData(OutsideBand.None)]
    [InlineData(OutsideBand.Hold)]
    [InlineData(OutsideBand.Slope)]
    public void GatheredWeightsGiveTheSameSumAsThoseOfTheGrid(OutsideBand outside)
    {
        var band = new MeasuredBand(new FrequencyGrid([.. Enumerable.Range(0, 41).Select(i => 30e6 * Math.Pow(1.09, i))]), Grid);
        double[] readings = [.. Enumerable.Range(0, 41).Select(i => 30 + (8 * Math.Sin(i * 0.7)))];
        double[] spread = band.Spread(readings, outside),
            weights = [.. Enumerable.Range(0, Grid.Bins).Select(k => 1 / (1.0 + k))];
        double[] gathered = band.Gather(weights, spread, outside);
        Agreement.Relative(1e-9, weights.Zip(spread, (w, s) => w * s).Sum(), gathered.Zip(readings, (w, r) => w * r).Sum());
    }

    private static double Part(double rate, double pole, double t) => (Math.Exp(-rate * t) - Math.Exp(-pole * t)) / (pole - rate);

    private static double Shielding((string Kind, double Value)[] parts, double hertz) => parts.Sum(p => p.Kind switch
    {
        "gain" => -20 * Math.Log10(p.Value),
        "pole" => 10 * Math.Log10(1 + (hertz / p.Value * (hertz / p.Value))),
        _ => -10 * Math.Log10(1 + (hertz / p.Value * (hertz / p.Value))),
    });

    private static double Rough(double f) =>
        25 + (6 * Math.Sin(1.5 * Math.Log((f * f) + 1e12))) + (3 * Math.Cos(f / 40e6) * Math.Exp(-f / 1e9));

    // 40 dB from 30 MHz to 1 GHz and nothing outside, set in as the program does it.
    private static double Stepped(double f) =>
        Math.Clamp(Math.Min(Math.Log(f / 30e6), Math.Log(1e9 / f)) / (0.1 * Math.Log(2)), 0, 1) is var way
            ? way * way * (3 - (2 * way)) * 40 : 0;

    private static FilteredCurve Curve(Func<double, double> db) =>
        new([.. Enumerable.Range(0, Grid.Bins).Select(k => db(Grid.HertzAt(k)))]);

    private static FilteredPulse Behind(Func<double, double> db) => Filter.Through([Curve(db)])[0];

    private static PulseFigures Figures(FilteredPulse behind) => new Waveform(behind.Samples, Grid.StepSeconds).Figures();
}
