using System.Numerics;
using SweepStats.Alignment;
using SweepStats.Fields;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Fields;

public sealed class MeasuredPhaseTests
{
    private const int Bin = 1000;

    private static readonly PulseGrid Bins = new(new PulseQuestion().Pulse, 30e6);

    // One frequency, that is one of the grid too: it has no reading above it.
    [Fact]
    public void TheOnlyReadingTurnsTheBinThatItLiesOn()
    {
        Complex[] turns = Turns(new FrequencyGrid([Bins.HertzAt(Bin)]), 40, 70);
        Assert.Equal(-30, turns[Bin].Phase * 180 / Math.PI, 1e-9);
        Assert.Equal(0, turns[Bin - 1].Magnitude + turns[Bin + 1].Magnitude);
    }

    // Between two readings of one turn it is that turn, of size 1.
    [Fact]
    public void BetweenTwoReadingsTheTurnIsTheirs()
    {
        Complex[] turns = Turns(new FrequencyGrid([Bins.HertzAt(Bin), Bins.HertzAt(Bin + 20)]), 40, 70);
        Assert.All(turns[Bin..(Bin + 20)], t => Assert.Equal((-30.0, 1.0),
            (Math.Round(t.Phase * 180 / Math.PI, 9), Math.Round(t.Magnitude, 9))));
    }

    private static Complex[] Turns(FrequencyGrid grid, double coveredDegrees, double referenceDegrees)
    {
        Sweep Phased(SweepRole role, double level, double degrees) =>
            new($"{role}", role, grid, [.. grid.Hertz.ToArray().Select(_ => level)], LevelScale.DecibelRatio)
            {
                Phases = [.. grid.Hertz.ToArray().Select(_ => degrees)],
            };
        AlignedCampaign campaign = Aligner.Align(Rehearsed.Campaign(
            [Phased(SweepRole.Reference, -30, referenceDegrees)], [Phased(SweepRole.Covered, -60, coveredDegrees)]), null);
        return MeasuredPhase.Of(campaign.Reference, campaign.Covered[0].Block, new MeasuredBand(grid, Bins));
    }
}
