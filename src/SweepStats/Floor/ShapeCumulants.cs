using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>Cumulants of one log reading of noise for a kind of detector at a given variance, in nepers of power.</summary>
/// <param name="Cumulants">Orders 2 to 6.</param>
/// <param name="Slope">How the third cumulant moves with the second.</param>
internal sealed record ShapeCumulants(ImmutableArray<double> Cumulants, double Slope)
{
    // Looks so many times more: wide enough that the slope is clear of rounding.
    private const double Apart = 1.02;

    private static readonly Lazy<HeldLooks> Single = new(() => new HeldLooks(1));

    /// <summary>The third.</summary>
    public double Third => Cumulants[1];

    /// <summary>Averages in dB of single looks: each order shrinks by one more power of their number.</summary>
    public static ShapeCumulants LogAverages(double variance)
    {
        ImmutableArray<double> one = Single.Value.Cumulants;
        double share = variance / one[0];
        ImmutableArray<double> all = [.. one.Select((c, i) => c * Math.Pow(share, i + 1))];
        return new ShapeCumulants(all, 2 * one[1] * share / one[0]);
    }

    /// <summary>Third cumulant of averages in power: a little less than that of averages in dB.</summary>
    public static double ThirdOfPowerAverages(double variance) =>
        variance > 0 ? GammaFunctions.Polygamma(2, Math.Max(1, GammaFunctions.InverseTrigamma(variance))) : 0;

    /// <summary>The highest of as many looks as scatter so.</summary>
    /// <remarks>Scatter beyond one look, or short of the most looks, stretches the shape.</remarks>
    public static ShapeCumulants Highest(double variance)
    {
        HeldLooks looks = HeldLooks.Scattering(variance), more = new(looks.Looks * Apart);
        double stretch = Math.Sqrt(variance / looks.Cumulants[0]);
        double slope = stretch * (more.Cumulants[1] - looks.Cumulants[1]) / (more.Cumulants[0] - looks.Cumulants[0]);
        return new ShapeCumulants([.. looks.Cumulants.Select((c, i) => c * Math.Pow(stretch, i + 2))], slope);
    }

    /// <summary>Standard error of the third cumulant of so many readings less what their variance lets expect.</summary>
    public double ErrorOfThird(double readings)
    {
        double k2 = Cumulants[0], k3 = Cumulants[1], k4 = Cumulants[2], k5 = Cumulants[3], k6 = Cumulants[4];
        double third = k6 + (9 * k4 * k2) + (9 * k3 * k3) + (6 * k2 * k2 * k2);
        double both = k5 + (6 * k3 * k2);
        double second = k4 + (2 * k2 * k2);
        return Math.Sqrt((third - (2 * Slope * both) + (Slope * Slope * second)) / readings);
    }
}
