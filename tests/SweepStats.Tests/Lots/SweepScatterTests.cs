using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Lots;

public sealed class SweepScatterTests
{
    // Sweeps in placements of specimens in lots; specimens alone in lots; nothing but sweeps.
    [Theory]
    [InlineData(2, 3, 2, 2)]
    [InlineData(3, 4, 0, 1)]
    [InlineData(1, 1, 0, 5)]
    public void AStretchSaysOfEachFrequencyWhatItsValuesSay(int lots, int specimens, int placements, int sweeps)
    {
        AnalysisResult result = Analysis.Run(
            Rehearser.Draw(new RehearsalPlan
            {
                Points = 11,
                Lots = lots,
                SpecimensPerLot = specimens,
                Placements = placements,
                CoveredSweeps = sweeps,
            }).Campaign, new AnalysisPlan());
        ImmutableArray<SpecimenSweeps> all = [.. result.Campaign.Covered.Zip(result.Curves, SpecimenSweeps.Of)];
        var pieces = new LotSpecimens(result.Campaign.Grid, all);
        var stretch = new SweepScatter(pieces, 4, 7);
        for (int f = 4; f < 11; f++)
        {
            var weights = new double[11];
            weights[f] = 1;
            double[] values = pieces.BySweep(weights, threads: 1);
            NestedValues found = stretch.At(f);
            double[][] groups = GroupRows.Of<double>(values, pieces.Design.GroupOf);
            Assert.Equal(groups.Select(g => Sample.Mean(g)), found.Means.Select(m => m + found.Centre),
                (a, b) => Math.Abs(a - b) < 1e-10);
            Assert.Equal(groups.Sum(g => Sample.SquaredDeviations(g, Sample.Mean(g))), found.Within, 1e-10);
            Assert.Equal(LevelScatter.Of(pieces.Design, values).Select(d => d.DeviationDb),
                LevelScatter.Of(pieces.Design, found).Select(d => d.DeviationDb), (a, b) => Math.Abs(a - b) < 1e-6);
        }
    }
}
