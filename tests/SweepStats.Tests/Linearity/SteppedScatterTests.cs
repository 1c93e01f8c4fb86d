using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Linearity;

public sealed class SteppedScatterTests
{
    private const int Points = 24;

    // Sweeps that go up and down by 0, 0.1 and 0.25 dB: the quietest pair steps by 0.2 dB, which is 0.2/2Φ⁻¹(0.75).
    private const double Quietest = 0.1 / 0.6744897501960817;

    private static readonly double[] Swings = [0, 0.1, 0.25];

    // 10 dB below, what is added weighs √10 times as much as it does in the reference.
    [Fact]
    public void WithoutAFloorAllOfItMayBeNoise() =>
        Agreement.Relative(1e-10, Quietest / Math.Sqrt(10), SteppedScatter.LeastOfReferenceDb(Taken(-10), null, null));

    [Theory]
    [InlineData(-120, 1)]
    [InlineData(-20, 0.31622776601683794)]
    public void AFloorFarBelowShowsThatItIsNone(double floorDb, double share) => Agreement.Relative(
        1e-10, share * Quietest,
        SteppedScatter.LeastOfReferenceDb(Taken(-10), NoiseFloorEstimator.Declare(floorDb, Points, Averaging.Sample), null));

    [Fact]
    public void LevelsChangeNothingTheScaleCarriesOverAndTheClearestStepCounts()
    {
        Agreement.Relative(1e-10, Least(Taken(-10)), Least(Taken(-10, shift: -33)));
        Agreement.Relative(1e-10, 3 * Least(Taken(-10)), Least(Taken(-10, scale: 3)));
        AlignedCampaign both = Aligned([.. Sweeps(-10, 0, 1), .. Sweeps(-30, 0, 1, "low")]);
        Agreement.Relative(1e-10, Least(Taken(-10)), Least(both));
    }

    // One of two may be restless, and a ratio alone does not tell what arrived.
    [Fact]
    public void TooLittleTellsNothing()
    {
        Assert.Equal(0, Least(Aligned([.. Sweeps(-10, 0, 1).Take(2)])));
        Assert.Equal(0, Least(Aligned([.. Sweeps(-10, 0, 1).Select(OfScale)], LevelScale.DecibelRatio)));
        Assert.Equal(0, Least(Aligned([])));
    }

    private static double Least(AlignedCampaign campaign) => SteppedScatter.LeastOfReferenceDb(campaign, null, null);

    private static AlignedCampaign Taken(double stepDb, double shift = 0, double scale = 1) =>
        Aligned(Sweeps(stepDb, shift, scale), shift: shift);

    private static AlignedCampaign Aligned(IEnumerable<Sweep> linearity, LevelScale scale = LevelScale.DecibelMilliwatts,
        double shift = 0)
    {
        Sweep Flat(SweepRole role, double level, string name) =>
            new(name, role, Rehearsed.Grid(Points), [.. Enumerable.Repeat(level + shift, Points)], scale);
        return Aligner.Align(new Campaign("test",
            [Flat(SweepRole.Reference, 0, "r"), Flat(SweepRole.Covered, -40, "c"), .. linearity]), null);
    }

    private static IEnumerable<Sweep> Sweeps(double stepDb, double shift, double scale, string name = "l")
    {
        Sweep Of(double swing, int i)
        {
            ImmutableArray<double> levels = Levels(stepDb + shift, swing);
            return new(name + i, SweepRole.Linearity, Rehearsed.Grid(Points), levels, LevelScale.DecibelMilliwatts)
            {
                SourceDbm = stepDb,
            };
        }

        return Swings.Select((swing, i) => Of(scale * swing, i));
    }

    private static Sweep OfScale(Sweep sweep) =>
        new(sweep.Name, sweep.Role, sweep.Grid, sweep.Levels, LevelScale.DecibelRatio) { SourceDbm = sweep.SourceDbm };

    private static ImmutableArray<double> Levels(double level, double swing) =>
        [.. Enumerable.Range(0, Points).Select(f => level + (f % 2 == 0 ? swing : -swing))];
}
