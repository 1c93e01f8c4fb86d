using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Rehearsal;

public sealed class LinearityAndPlateTests
{
    private const double Slack = 4.5;

    private static readonly RehearsalPlan Clean =
        new() { Points = 401, ShieldingStartDb = 40, ShieldingStopDb = 40, ScatterDb = 0, Looks = 1000 };

    [Fact]
    public void LinearitySweepsFollowTheSourceAsFarAsTheReceiverDoes()
    {
        // The reference is −30 dBm at a source of 10 dBm. 1 dB short at −30 dBm input is 10·lg(1 + 0.2589·10^(x/10)) dB short x
        // dB over it: 1 dB at a source of 10 dBm, 0.1110 dB at 0 dBm, 0.0112 dB at −10 dBm, by hand.
        Campaign drawn = Draw(Clean with { CompressionDbm = -30, LinearitySourcesDbm = [-10, 0, 10], LinearitySweeps = 5 });
        foreach ((double source, double shortfall) in new[] { (10, 1.0), (0, 0.1110), (-10, 0.0112) })
        {
            Sweep[] sweeps = [.. drawn.Sweeps.Where(s => s.Role == SweepRole.Linearity && s.SourceDbm == source)];
            Assert.Equal(5, sweeps.Length);
            Assert.All(sweeps, s => Assert.Equal(-40 + source - shortfall, Sample.Mean([.. s.Levels]), 0.005));
        }

        Assert.All(drawn.Sweeps.Where(s => s.Role is SweepRole.Reference or SweepRole.Covered),
            s => Assert.Equal(10, s.SourceDbm));
        Assert.All(drawn.Sweeps.Where(s => s.Role == SweepRole.Floor), s => Assert.Null(s.SourceDbm));
        Assert.All(Draw(Clean).Sweeps, s => Assert.Null(s.SourceDbm));
    }

    [Fact]
    public void ThePlateShowsTheLeakAlone()
    {
        // −75 dBm over −100 dBm of noise: the noise adds 10·lg(1 + 10^−2.5) = 0.0137 dB.
        Assert.All(Draw(Clean with { PlateDb = 45, PlateSweeps = 3 }).Sweeps.Where(s => s.Role == SweepRole.Plate),
            s => Assert.Equal(-74.9863, Sample.Mean([.. s.Levels]), 0.01));
        Assert.All(Draw(Clean with { PlateSweeps = 3 }).Sweeps.Where(s => s.Role == SweepRole.Plate),
            s => Assert.Equal(-100, Sample.Mean([.. s.Levels]), 0.05));
    }

    [Fact]
    public void TheLeakAddsToTheSpecimenAsAVoltageOfRandomPhase()
    {
        // Leak as strong as the signal: the power is 2 + 2·cos φ times that of the signal alone, of mean 2 and standard deviation
        // √2 over phases.
        Sweep[] covered = [.. Draw(Clean with { PlateDb = 40, PlateSweeps = 1 }).Sweeps.Where(s => s.Role == SweepRole.Covered)];
        double[] power = [.. covered[0].Levels.Select(level => Math.Pow(10, (level + 70) / 10))];
        Agreement.Within(Slack * Math.Sqrt(2.0 / 401), 2, Sample.Mean(power), 401);
        Agreement.Within(0.15, Math.Sqrt(2), Sample.StandardDeviation(power), 401);
        Assert.All(power, p => Assert.InRange(p, 0, 4.2));
    }

    [Fact]
    public void ThePhasesStayOverTheCampaign()
    {
        Sweep[] covered = [.. Draw(Clean with { PlateDb = 50 }).Sweeps.Where(s => s.Role == SweepRole.Covered)];
        double[] difference = [.. covered[0].Levels.Zip(covered[4].Levels, (a, b) => a - b)];
        // 10 dB apart the leak moves the level by 2.2 dB root mean square over phases; 1000 looks, 30 dB over the noise, leave
        // less than 0.1 dB between sweeps.
        Assert.InRange(Sample.StandardDeviation([.. covered[0].Levels]), 1.8, 2.3);
        Assert.InRange(Sample.StandardDeviation(difference), 0, 0.1);
    }

    private static Campaign Draw(RehearsalPlan plan) => Rehearser.Draw(plan).Campaign;
}
