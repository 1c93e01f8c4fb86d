using SweepStats.Floor;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class SingleLookScatterTests
{
    // A single look scatters by π/√6 nepers of power, 5.5700 dB. Five sweeps of 100 frequencies: ln s has the variance
    // (2/4 + 2.4/5)/400 = 0.00245; one sweep: 2/100. Limits are three of their roots off.
    [Theory]
    [InlineData(5, 0.148492)]
    [InlineData(1, 0.424264)]
    public void LimitsAreThoseWorkedByHand(int sweeps, double apart)
    {
        NoiseFloor floor = NoiseFloorEstimator.Declare(-100, 100, Averaging.Power) with { SweepCount = sweeps };
        (double low, double high) = SingleLookScatter.Limits(floor);
        Agreement.Relative(1e-5, 5.570037 * Math.Exp(-apart), low);
        Agreement.Relative(1e-5, 5.570037 * Math.Exp(apart), high);
    }
}
