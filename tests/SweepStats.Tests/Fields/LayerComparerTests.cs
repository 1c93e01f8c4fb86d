using System.Collections.Immutable;
using SweepStats.Fields;
using SweepStats.Quantities;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Fields;

/// <summary>What a further layer adds. The sweeps are drawn by the runtime's generator.</summary>
public sealed class LayerComparerTests
{
    private const int Points = 31;

    [Fact]
    public void WithoutScatterToSpeakOfItIsTheDifferenceOfTheMeans()
    {
        ImmutableArray<LayerStep> steps = Of(1, 0.002, 0, 3, (1, 20), (2, 27), (3, 31.5));
        Assert.Equal([(1, 2), (2, 3)], steps.Select(s => (s.From, s.To)));
        Agreement.Within(0.01, 7, steps[0].AddedDb.Value!.Value);
        Agreement.Within(0.01, 4.5, steps[1].AddedDb.Value!.Value);
        Agreement.Within(0.01, 27, steps[1].BeforeDb!.Value);
        Assert.All(steps, s => Assert.Equal((Points, 0), (s.PointCount, s.LeftOut)));
    }

    // The reference's offset is that of all specimens and drops out; each specimen's sweeps have their own.
    [Fact]
    public void TheIntervalHoldsTheTruth()
    {
        int all = Draws.Of(200), held = 0;
        for (int seed = 1; seed <= all; seed++)
        {
            LayerStep step = Assert.Single(Of(seed, 0.3, 0.5, 4, (1, 20), (2, 27)));
            held += step.AddedDb.Low <= 7 && 7 <= step.AddedDb.High ? 1 : 0;
        }

        Often.AtLeast(held, all, 0.95);
    }

    [Fact]
    public void SpecimensOfAsManyLayersAreTakenTogether()
    {
        LayerStep step = Assert.Single(Of(1, 0.05, 0, 3, (1, 20), (1, 22), (4, 30)));
        Assert.Equal((1, 4), (step.From, step.To));
        Agreement.Within(0.1, 9, step.AddedDb.Value!.Value);
    }

    [Fact]
    public void WhereTheFloorHidesASpecimenEverywhereNothingIsSaid()
    {
        LayerStep step = Assert.Single(Of(1, 0.1, 0, 3, (1, 20), (2, 130)));
        Assert.Equal((0, Points), (step.PointCount, step.LeftOut));
        Assert.Null(step.AddedDb.Value);
    }

    [Fact]
    public void SingleSweepsGiveNoLimits()
    {
        LayerStep step = Assert.Single(Of(1, 0.1, 0, 1, (1, 20), (2, 26)));
        Assert.Null(step.AddedDb.Low);
    }

    [Fact]
    public void WithoutStatedLayersThereAreNoSteps() => Assert.Empty(Rehearsed.Analysed(Rehearsed.Plan).Layers);

    private static ImmutableArray<LayerStep> Of(
        int seed, double scatter, double offset, int sweeps, params (int Layers, double Db)[] specimens)
    {
        var random = new Random(seed);
        IEnumerable<Sweep> covered = specimens.SelectMany(
            (s, i) => Sweeps(SweepRole.Covered, -s.Db, scatter, offset, $"A0{i + 1}"));
        Campaign campaign = Rehearsed.Campaign(
            Sweeps(SweepRole.Floor, -100, 0.45, 0, null), Sweeps(SweepRole.Reference, 0, scatter, offset, null), covered) with
        {
            Properties = [.. specimens.Select(
                (s, i) => new SpecimenProperty(new SpecimenName("A", $"A0{i + 1}"), "layers", $"{s.Layers}", s.Layers))],
        };
        return Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power }).Layers;

        IEnumerable<Sweep> Sweeps(SweepRole role, double level, double points, double whole, string? specimen) =>
            [.. Enumerable.Range(0, sweeps).Select(j =>
        {
            double moved = level + (whole * Normal(random));
            ImmutableArray<double> levels =
                [.. Enumerable.Range(0, Points)
                .Select(f => Math.Max(moved + (points * Normal(random)), role == SweepRole.Floor ? -200
                : -100 + (0.45 * Normal(random))))];
            return new Sweep($"{role}-{specimen}-{j + 1}", role, Rehearsed.Grid(Points), levels,
                LevelScale.DecibelMilliwatts) { Lot = specimen is null ? null : "A", Specimen = specimen };
        })];
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
