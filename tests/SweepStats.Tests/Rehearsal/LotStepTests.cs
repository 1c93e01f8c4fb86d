using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Rehearsal;

/// <summary>
/// A lot's step against the same campaign without it: the draws are the same, so truth and levels differ by the step alone.
/// </summary>
public sealed class LotStepTests
{
    private static readonly RehearsalPlan Plain = new()
    {
        Points = 101,
        Lots = 3,
        SpecimensPerLot = 2,
        LotDeviationDb = 1,
        SpecimenDeviationDb = 0.5,
        ShieldingStopDb = 30,
    };

    private static readonly FrequencyGrid Grid = Rehearser.Draw(Plain).Grid;

    [Fact]
    public void TheTruthOfItsLotChangesWithinAndNothingElse()
    {
        // From just above the point 39 to just below the point 61; that points at the very ends belong to it, the next test
        // shows.
        RehearsedCampaign drawn =
            Rehearser.Draw(Plain with { LotSteps = [Step("B", -6, Grid[39].Value + 1, Grid[61].Value - 1)] });
        RehearsedCampaign plain = Rehearser.Draw(Plain);
        Assert.Equal(6, drawn.Truth.Length);
        foreach ((TrueShielding with, TrueShielding without) in drawn.Truth.Zip(plain.Truth))
        {
            for (int f = 0; f < Grid.Count; f++)
            {
                Assert.Equal(without.ShieldingDb[f] + (with.Name.Lot == "B" && f is >= 40 and <= 60 ? -6 : 0),
                    with.ShieldingDb[f], 12);
            }
        }
    }

    [Fact]
    public void TheSweepsFollowTheTruth()
    {
        // The signal stands 30 dB and more over the noise, where a reading follows it to a few tenths at the worst draw and to
        // hundredths on average.
        Campaign drawn = Rehearser.Draw(Plain with { LotSteps = [Step("B", -6, Grid[40].Value, Grid[60].Value)] }).Campaign;
        foreach ((Sweep with, Sweep without) in drawn.Sweeps.Zip(Rehearser.Draw(Plain).Campaign.Sweeps))
        {
            double[] change = [.. with.Levels.Zip(without.Levels, (a, b) => a - b)];
            if (with.Lot == "B")
            {
                Assert.All(change[40..61], c => Assert.Equal(6, c, 0.3));
                Assert.Equal(6, change[40..61].Average(), 0.03);
                Assert.All((double[])[.. change[..40], .. change[61..]], c => Assert.Equal(0, c));
            }
            else
            {
                Assert.Equal(without.Levels.AsEnumerable(), with.Levels);
            }
        }
    }

    [Fact]
    public void StepsThatOverlapAddUp()
    {
        RehearsedCampaign drawn =
            Rehearser.Draw(Plain with { LotSteps = [Step("A", 2, 30e6, 1e9), Step("A", -5, Grid[7].Value, Grid[7].Value)] });
        double[] change = [.. drawn.Truth[0].ShieldingDb.Zip(Rehearser.Draw(Plain).Truth[0].ShieldingDb, (a, b) => a - b)];
        Assert.Equal(-3, change[7], 12);
        Assert.All(change.Where((_, f) => f != 7), c => Assert.Equal(2, c, 12));
    }

    [Fact]
    public void AStepThatCannotBeIsRefused()
    {
        string Refused(LotStep step) =>
            Assert.Throws<ArgumentException>(() => Rehearser.Draw(Plain with { LotSteps = [step] })).Message;
        Assert.Equal("A rehearsal needs the lot D that is to have a step, and there are only A, B, C.",
            Refused(Step("D", 1, 30e6, 1e9)));
        Assert.Equal("A rehearsal needs a swept frequency for the step of lot A, and none lies from 2000000000 to 3000000000 Hz.",
            Refused(Step("A", 1, 2e9, 3e9)));
        Assert.StartsWith("A rehearsal needs a step of lot A", Refused(Step("A", double.NaN, 30e6, 1e9)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void SpecimensOfALotMayScatterMore()
    {
        RehearsedCampaign plain = Rehearser.Draw(Plain with { LotDeviationDb = 0 }),
            drawn = Rehearser.Draw(Plain with { LotDeviationDb = 0, LotSpreads = [1, 3] });
        foreach ((TrueShielding with, TrueShielding without) in drawn.Truth.Zip(plain.Truth))
        {
            Assert.Equal((with.Name.Lot == "B" ? 3 : 1) * (without.ShieldingDb[0] - Plain.ShieldingStartDb),
                with.ShieldingDb[0] - Plain.ShieldingStartDb, 1e-9);
        }

        Assert.Throws<ArgumentException>(() => Rehearser.Draw(Plain with { LotSpreads = [1, -1] }));
    }

    private static LotStep Step(string lot, double db, double start, double stop) =>
        new(lot, new Decibels(db), new FrequencyBand(new Hertz(start), new Hertz(stop)));
}
