using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class NearCopyTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { Placements = 3, CoveredSweeps = 4, ReferenceSweeps = 6 };

    [Theory]
    [InlineData(0.01, 0)]
    [InlineData(0, 0.05)]
    public void SweepsMadeFromOneAreTold(double jitterDb, double offsetDb)
    {
        Taken drawn = Taken.With(Plan);
        Sweep first = drawn.First(SweepRole.Covered);
        int place = 0;
        AnalysisResult result =
            drawn.But(s => s is { Role: SweepRole.Covered, Placement: "p1" }
                ? s.As(levels: Made(first, place++, jitterDb, offsetDb)) : s).Analysed();
        Finding told = Assert.Single(result.Findings, f => f.Code == "near-copy");
        Assert.Equal((Severity.Warning, SweepRole.Covered), (told.Severity, told.Role));
        Assert.StartsWith("4 covered sweeps of A/A01 are nearly copies", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TwoOfSixReferencesMadeFromOneAreNamed()
    {
        Taken drawn = Taken.With(Plan);
        Sweep[] two = [.. drawn.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).Take(2)];
        Finding told = Assert.Single(drawn.But(s => s == two[1] ? s.As(levels: Made(two[0], 1, 0.01, 0.1)) : s)
            .Analysed().Findings, f => f.Code == "near-copy");
        Assert.Contains($"({two[0].Name}, {two[1].Name})", told.Message, StringComparison.Ordinal);
    }

    // Noise that is the same in every sweep is no noise, though no other sweep shows how it should scatter.
    [Fact]
    public void FloorsMadeFromOneAreToldByTheNoiseItself()
    {
        Taken drawn = Taken.With(Plan);
        Sweep first = drawn.First(SweepRole.Floor);
        int place = 0;
        Finding told = Assert.Single(
            drawn.But(s => s.Role == SweepRole.Floor ? s.As(levels: Made(first, place++, 0.01, 0)) : s).Analysed().Findings,
            f => f.Code == "near-copy");
        Assert.Contains("from frequency to frequency", told.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.2, 0, 20)]
    [InlineData(0.02, 0.01, 1000)]
    [InlineData(0.2, 0.1, 10_000)]
    [InlineData(0.05, 1, 5)]
    public void RealRepeatsAreLeftAlone(double scatterDb, double stepDb, double looks)
    {
        RehearsalPlan plan = Plan with
        {
            ScatterDb = scatterDb,
            QuantisationDb = stepDb,
            Looks = looks,
            SweepDeviationDb = 0.1,
            SpecimensPerLot = 3,
            SpecimenDeviationDb = 3,
        };
        Assert.Equal(0, Draws.Seeds(60)
            .Count(seed => Rehearsed.Analysed(plan with { Seed = seed }).Findings.Any(f => f.Code == "near-copy")));
    }

    // One restless sweep among quiet ones accuses nobody else.
    [Fact]
    public void QuietSweepsBesideARestlessOneAreLeftAlone()
    {
        Taken drawn = Taken.With(Plan with { ScatterDb = 0.02, Placements = 0, CoveredSweeps = 4 });
        var random = new RandomSource(3);
        Sweep odd = drawn.First(SweepRole.Reference);
        Assert.DoesNotContain(
            drawn.But(s => s == odd ? s.As(levels: [.. s.Levels.Select(l => l + random.Normal())]) : s).Analysed().Findings,
            f => f.Code == "near-copy");
    }

    private static System.Collections.Immutable.ImmutableArray<double> Made(Sweep first, int place, double jitterDb,
        double offsetDb)
    {
        var random = new RandomSource((ulong)(9 + place));
        return place == 0 ? first.Levels
            : [.. first.Levels.Select(l => l + (place * offsetDb) + (jitterDb * ((2 * random.Uniform()) - 1)))];
    }
}
