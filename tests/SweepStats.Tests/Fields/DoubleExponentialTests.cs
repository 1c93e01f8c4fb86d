using SweepStats.Fields;
using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Fields;

/// <summary>The pulse in front, in closed form. Sources: fixtures/published/iec-61000-2-9/origin.md.</summary>
public sealed class DoubleExponentialTests
{
    private static readonly DoubleExponential Pulse = DoubleExponential.EarlyTime;

    [Fact]
    public void ItsFiguresAreThoseOfTheStandard()
    {
        PulseFigures sampled = Sampled(Pulse);
        Dictionary<string, double[]> figures = Fixtures.Cells("published/iec-61000-2-9/figures.csv")
            .Zip(Fixtures.Numbers("published/iec-61000-2-9/figures.csv"))
            .ToDictionary(row => row.First[0], row => row.Second);
        // 50 kV/m, 2.5 ns, 23 ns and 0.114 J/m² to the digits that are published.
        Agreement.Within(50, figures["peak"][2], Pulse.PeakVoltsPerMetre);
        Agreement.Within(0.05e-9, figures["rise"][2], sampled.RiseSeconds);
        Agreement.Within(0.5e-9, figures["width"][2], sampled.WidthSeconds);
        Agreement.Within(0.5e-3, figures["energy"][2], Pulse.JoulesPerSquareMetre);
        Agreement.Within(0.005, figures["peak"][3], Pulse.PeakVoltsPerMetre);
        Agreement.Within(0.5e-13, figures["peak_time"][3], Pulse.PeakSeconds);
        Agreement.Within(2e-13, figures["rise"][3], sampled.RiseSeconds);
        Agreement.Within(1e-12, figures["width"][3], sampled.WidthSeconds);
        Agreement.Within(0.5e-6, figures["energy"][3], Pulse.JoulesPerSquareMetre);
    }

    [Fact]
    public void ItsSpectrumAndTheEnergyBelowAFrequencyAreThoseOfTheTable()
    {
        foreach (double[] row in Fixtures.Numbers("published/iec-61000-2-9/spectrum.csv"))
        {
            var at = new Hertz(row[0]);
            if (!double.IsNaN(row[1]))
            {
                Agreement.Within(0.0051, row[1], 20 * Math.Log10(Pulse.SpectrumAt(at)), row);
            }

            if (!double.IsNaN(row[2]))
            {
                Agreement.Within(0.51e-5 * (row[0] == 1e7 ? 10 : 1), row[2], Pulse.EnergyShareBelow(at), row);
            }
        }
    }

    [Fact]
    public void AMeasurementFrom30MegahertzHoldsATwelfthOfItsEnergy() =>
        Agreement.Within(0.00005, 0.0850, Pulse.EnergyShareIn(new FrequencyBand(new Hertz(30e6), new Hertz(1.5e9))));

    [Fact]
    public void SamplesCarryTheEnergyAndThePeakOfTheClosedForm()
    {
        PulseFigures sampled = Sampled(Pulse);
        Agreement.Relative(1e-6, Pulse.JoulesPerSquareMetre, sampled.JoulesPerSquareMetre);
        Agreement.Relative(1e-6, Pulse.PeakVoltsPerMetre, sampled.PeakVoltsPerMetre);
    }

    [Theory]
    [InlineData(1, 1e6, 1e9)]
    [InlineData(300, 2e7, 3e7)]
    public void OfStatedConstantsItIsAsHighAsStated(double peak, double decay, double rise)
    {
        var own = DoubleExponential.OfPeak(peak, decay, rise);
        Agreement.Relative(1e-12, peak, own.PeakVoltsPerMetre);
        Agreement.Relative(1e-6, peak, Enumerable.Range(0, 100_000).Max(n => own.FieldAt(n * 1e-3 / rise)));
        Agreement.Relative(1e-12, 1, own.EnergyShareBelow(new Hertz(1e30)));
    }

    [Theory]
    [InlineData(0, 4e7, 6e8)]
    [InlineData(1, 4e7, 4e7)]
    [InlineData(1, 1e3, 6e8)]
    [InlineData(1, double.NaN, 6e8)]
    public void ConstantsThatMakeNoPulseAreRefused(double peak, double decay, double rise) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => DoubleExponential.OfPeak(peak, decay, rise));

    private static PulseFigures Sampled(DoubleExponential pulse)
    {
        var grid = new PulseGrid(pulse, 30e6);
        return new Waveform([.. Enumerable.Range(0, grid.Count).Select(n => pulse.FieldAt(n * grid.StepSeconds))],
            grid.StepSeconds).Figures();
    }
}
