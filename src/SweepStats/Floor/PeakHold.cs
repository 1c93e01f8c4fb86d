using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>
/// What keeping the highest of several looks does to noise: it lifts the floor, and hardly moves a signal far above it.
/// </summary>
public static class PeakHold
{
    private const double EulerConstant = 0.5772156649015329;

    /// <summary>
    /// How far the highest of independent single looks at Gaussian noise lies above its power, in dB: mean power of the highest
    /// over mean power.
    /// </summary>
    /// <remarks>
    /// The power of a look is exponential; the k-th gap between ordered looks has mean 1/k, so the highest of N has mean H_N = 1
    /// + 1/2 + … + 1/N = ψ(N + 1) + γ (Rényi 1953, Acta Mathematica Hungarica 4, 191; from memory). 0 dB for one look, 4.67 dB
    /// for ten, 7.15 dB for a hundred. Looks that resemble each other count as fewer. Error: 1e-12 dB.
    /// </remarks>
    /// <param name="looks">Looks of which the highest is kept, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one look.</exception>
    public static double BiasDb(int looks)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(looks, 1);
        return 10 * Math.Log10(GammaFunctions.Digamma(looks + 1.0) + EulerConstant);
    }
}
