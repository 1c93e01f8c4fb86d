using SweepStats.Alignment;
using SweepStats.Planning;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.StudyRuns.Lasting;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Planning;

public sealed class PilotComponentsTests
{
    [Fact]
    public void VariancesAreTakenApartAsByHand()
    {
        // Placement means −40.5 and −43.5: mean squares 9 between, 0.5 within, so (9 − 0.5)/2 = 4.25 dB² between placements.
        PlanBasis basis = Basis([-10, -11, -12], ("p1", -40), ("p1", -41), ("p2", -43), ("p2", -44))!;
        Assert.Equal(Math.Sqrt(4.25), basis.PlacementDeviationDb!.Value, 1e-12);
        Assert.Equal(Math.Sqrt(0.5), basis.SweepDeviationDb, 1e-12);
        Assert.Equal(1, basis.ReferenceDeviationDb, 1e-12);
        Assert.Null(basis.RangeDb);
    }

    [Fact]
    public void PlacementsOfOneSweepAreTakenToHoldTheScatterOfTheReference()
    {
        // Variance 4.5 between −40 and −43, of which the reference explains 1.
        PlanBasis basis = Basis([-10, -11, -12], ("p1", -40), ("p2", -43))!;
        Assert.Equal(Math.Sqrt(3.5), basis.PlacementDeviationDb!.Value, 1e-12);
        Assert.Equal(1, basis.SweepDeviationDb, 1e-12);
    }

    [Fact]
    public void WithoutPlacementsTheirSpreadIsNotKnown() =>
    Assert.Null(Basis([-10, -11], (null, -40), (null, -41))!.PlacementDeviationDb);

    [Fact]
    public void ASingleReferenceSweepTellsNothing() => Assert.Null(Basis([-10], ("p1", -40), ("p1", -41)));

    [Fact]
    public void AReferenceInTheNoiseTellsNothing() =>
        Assert.Null(
            Of(new RehearsalPlan { Seed = 3, ReferenceDbm = -90, FloorDbm = -100, ShieldingStartDb = 3, ShieldingStopDb = 3 }));

    [Fact]
    public void PlacementsInTheNoiseAreSaidToBeHidden()
    {
        PlanBasis basis =
            Of(new RehearsalPlan
            {
                Seed = 3,
                Placements = 3,
                PlacementDeviationDb = 1,
                ShieldingStartDb = 65,
                ShieldingStopDb = 65,
            })!;
        Assert.Null(basis.PlacementDeviationDb);
        Assert.True(basis.PlacementsHidden);
    }

    [Fact]
    public void ARehearsedPilotShowsWhatItWasDrawnWith()
    {
        // 16 dB over single looks noise adds 0.9 dB² to each reading, more than the scatter drawn: it has to come out again.
        var drawn = new RehearsalPlan
        {
            Seed = 4,
            ScatterDb = 0.5,
            PlacementDeviationDb = 1,
            Placements = 40,
            CoveredSweeps = 4,
            ReferenceSweeps = 20,
            Looks = 1,
            ShieldingStartDb = 52,
            ShieldingStopDb = 52,
        };
        AnalysisResult pilot = Rehearsed.Analysed(drawn);
        PlanBasis basis = PilotComponents.Of(pilot.Campaign, pilot.Floor, [])!;
        Assert.InRange(basis.ReferenceDeviationDb, 0.47, 0.53);
        Assert.InRange(basis.SweepDeviationDb, 0.4, 0.6);
        // 40 placements: their standard deviation is known to 1/√78.
        Assert.InRange(basis.PlacementDeviationDb!.Value, 1 - (3 / Math.Sqrt(78)), 1 + (3 / Math.Sqrt(78)));
        Assert.InRange(basis.RangeDb!.Value, 71.5, 73);
    }

    [Fact]
    public void SweepsOfAPlacementThatLastAreNotTakenForPlacementsThatDiffer()
    {
        // One placement after the other without a pause in the scatter: nothing but the sweeps differs.
        LastingCell cell = new(LastingKind.EachFrequency, 12, 0.7) { Points = 80 };
        double[] independent = new double[12], told = new double[12];
        for (int seed = 0; seed < 12; seed++)
        {
            int j = 0;
            Campaign drawn = LastingStudy.Draw(cell, 60 + (ulong)seed);
            AnalysisResult pilot =
                Analysis.Run(
                drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Covered ? Placed(s, j++ / 4) : s)] },
                new AnalysisPlan { Averaging = Averaging.Power });
            independent[seed] = PilotComponents.Of(pilot.Campaign, pilot.Floor, [])!.PlacementDeviationDb!.Value;
            told[seed] = PilotComponents.Of(pilot.Campaign, pilot.Floor, [],
                pilot.SerialCorrelation)!.PlacementDeviationDb!.Value;
        }

        Assert.InRange(independent.Average(), 0.25, 0.5);
        Assert.InRange(told.Average(), 0, 0.15);
    }

    [Fact]
    public void ThePilotsNumbersAreThoseOfItsFirstSpecimen() =>
        Assert.Equal(new SweepNumbers(2, 2, 3),
            UsualNumbers.OfPilot(Aligned([-10, -11, -12], ("p1", -40), ("p1", -41), ("p2", -43), ("p2", -44))));

    private static Sweep Placed(Sweep sweep, int placement) =>
        new(sweep.Name, sweep.Role, sweep.Grid, sweep.Levels, sweep.Scale)
        {
            Lot = sweep.Lot,
            Specimen = sweep.Specimen,
            Placement = $"p{placement}",
        };

    private static PlanBasis? Of(RehearsalPlan plan)
    {
        AnalysisResult pilot = Rehearsed.Analysed(plan);
        return PilotComponents.Of(pilot.Campaign, pilot.Floor, []);
    }

    private static PlanBasis? Basis(double[] reference, params (string? Placement, double Level)[] covered) =>
        PilotComponents.Of(Aligned(reference, covered), null, []);

    private static AlignedCampaign Aligned(double[] reference, params (string? Placement, double Level)[] covered)
    {
        // Levels that no display would show: the steps of a display would add to the error.
        IEnumerable<Sweep> Of(SweepRole role, IEnumerable<(string? Placement, double Level)> levels) => levels.Select((l, i) =>
            new Sweep($"{role}-{i}", role, Rehearsed.Grid(2), [l.Level, l.Level - Math.PI],
                LevelScale.DecibelMilliwatts)
            { Specimen = "A01", Lot = "A", Placement = l.Placement });
        return Aligner.Align(new Campaign("test",
            [.. Of(SweepRole.Reference, reference.Select(l => ((string?)null, l))), .. Of(SweepRole.Covered, covered)]), null);
    }
}
