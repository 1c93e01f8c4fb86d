using SweepStats.Lots;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Trends;

/// <summary>How far a level reaches to one side once what all specimens share is added to their own scatter. Unit: dB.</summary>
/// <remarks>
/// As in the intervals of lots (<see cref="SharedErrors.Reach"/>): scatter of specimens, reference and floor each reach by their
/// own degrees of freedom, and the root of the squares is taken. Welch and Satterthwaite's would be too many where a reference of
/// two sweeps happens to repeat well. Stated errors are added by their distribution, whose table is entered with those degrees of
/// freedom, and not knowing how the receiver averages shifts the whole.
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

        double half = SharedErrors.Reach([own, Reference, Floor], level);
        return (TypeB.StandardUncertainty == 0 ? half
            : TypeB.Widened(level).Half(half, WelchSatterthwaite.DegreesOfFreedom([own, Reference]))) + AveragingDb;
    }
}
