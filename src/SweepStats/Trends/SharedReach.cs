using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Trends;

/// <summary>How far a level reaches to one side once what all specimens share is added to their own scatter. Unit: dB.</summary>
/// <remarks>
/// As in the mean over a band: scatter of specimens and of the reference share Welch and Satterthwaite's degrees of freedom, the
/// floor keeps its own, stated errors are
/// added by their distribution, and not knowing how the receiver averages shifts the whole.
/// </remarks>
/// <param name="Reference">Scatter of the reference.</param>
/// <param name="Floor">Error of the floor.</param>
/// <param name="TypeB">What no repeat shows.</param>
/// <param name="AveragingDb">Shift to either side.</param>
internal sealed record SharedReach(Contribution Reference, Contribution Floor, SystematicError TypeB, double AveragingDb)
{
    /// <summary>The reach at a one-sided level; 0 at one half, where the estimate alone decides.</summary>
    public double Of(Contribution own, double level)
    {
        if (level <= 0.5)
        {
            return 0;
        }

        StudentQuantile quantile = StudentQuantile.Of(level);
        ReadOnlySpan<Contribution> repeats = [own, Reference];
        double freedom = WelchSatterthwaite.DegreesOfFreedom(repeats);
        double scatter = WelchSatterthwaite.Combined(repeats) * quantile.At(freedom);
        double floor = Floor.StandardUncertainty == 0 ? 0 : Floor.StandardUncertainty * quantile.At(Floor.DegreesOfFreedom);
        double half = Math.Sqrt((scatter * scatter) + (floor * floor));
        return (TypeB.StandardUncertainty == 0 ? half : TypeB.Widened(level).Half(half, freedom)) + AveragingDb;
    }
}
