using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class NearCopyTests
{
    private static readonly AnalysisPlan Power = new() { Averaging = Averaging.Power };

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

    // Their own pairs show nothing else then; fixtures/oracles/wrong-campaigns.R.
    [Fact]
    public void ReferencesThatRMadeFromOneAreToldByTheLinearitySweeps()
    {
        Finding told = Assert.Single(
            Analysis.Run(DrawnByR.Campaign("alike-references"), Power).Findings, f => f.Code == "near-copy");
        Assert.Equal((Severity.Warning, SweepRole.Reference, true), (told.Severity, told.Role, told.Misleads));
        Assert.StartsWith("4 reference sweeps are nearly copies", told.Message, StringComparison.Ordinal);
        Assert.Matches(@"a reading differs by 0\.00\d dB between them, ", told.Message);
        Assert.Matches(@"and from sweep to sweep with less source power by 0\.[23]\d* dB\.", told.Message);
        Assert.DoesNotContain(Analysis.Run(DrawnByR.Campaign("clean"), Power).Findings, f => f.Code == "near-copy");
    }

    // Noise is louder beside less power, a cloth may move, and a restless linearity sweep or a transmitter is no measure.
    [Theory]
    [InlineData(0, 10, 20)]
    [InlineData(0, -50, 20)]
    [InlineData(0.005, -50, 1)]
    [InlineData(0.02, -30, 20)]
    [InlineData(0.2, 0, 1000)]
    public void QuietReferencesAreLeftAlone(double scatterDb, double sourceDbm, double looks)
    {
        RehearsalPlan plan = Plan with
        {
            ScatterDb = scatterDb,
            Looks = looks,
            SourceDbm = 20,
            LinearitySourcesDbm = [sourceDbm, -20],
            SpecimensPerLot = 2,
        };
        foreach (ulong seed in Draws.Seeds(60))
        {
            var random = new RandomSource(seed);
            Taken drawn = Taken.With(plan with { Seed = seed });
            Sweep restless = drawn.First(SweepRole.Linearity);
            Taken taken = drawn.But(s => s == restless || s.Role == SweepRole.Covered
                ? s.As(levels: [.. s.Levels.Select(l => l + random.Normal())]) : s)
                .But(s => s.Role == SweepRole.Linearity
                    ? s.As(levels: [.. s.Levels.Select((l, f) => f % 12 == 3 ? l + (9 * random.Uniform()) : l)]) : s);
            Assert.DoesNotContain(taken.Analysed().Findings, f => f.Code == "near-copy");
        }
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

    // The same sweeps, or one of them, given out for another specimen; single sweeps are held against the reference.
    [Theory]
    [InlineData(3, 2, false)]
    [InlineData(3, 2, true)]
    [InlineData(0, 1, false)]
    [InlineData(0, 5, true)]
    public void ASpecimenMadeFromAnotherIsAFault(int placements, int sweeps, bool fromOne)
    {
        RehearsalPlan plan = Plan with { Placements = placements, CoveredSweeps = sweeps, SpecimensPerLot = 3, Points = 41 };
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken drawn = Taken.With(plan with { Seed = seed, SpecimenDeviationDb = 1 });
            ILookup<string?, Sweep> ofA01 = drawn.Campaign.Sweeps.Where(s => s.Specimen == "A01").ToLookup(s => s.Placement);
            int place = 0;
            Sweep Original(Sweep s) => fromOne ? drawn.First(SweepRole.Covered)
                : ofA01[s.Placement].ElementAt(place % ofA01[s.Placement].Count());
            AnalysisResult result = drawn.But(s => s.Specimen == "A02"
                ? s.As(levels: Made(Original(s), ++place, 0.01, 0.002)) : s).Analysed();
            Finding told = result.Findings[0];
            Assert.Equal(("near-copy", Severity.Fault, true), (told.Code, told.Severity, told.Misleads));
            Assert.Contains("covered sweeps of A/A01, A/A02 are nearly copies of another specimen's", told.Message,
                StringComparison.Ordinal);
            Assert.False(result.MayPrefer);
        }
    }

    // One trace saved five times: its own pairs show nothing else, the reference does.
    [Theory]
    [InlineData(5)]
    [InlineData(0)]
    public void AllSweepsMadeFromOneAreToldByTheReference(int floorSweeps)
    {
        Taken drawn = Taken.With(Plan with { FloorSweeps = floorSweeps });
        Sweep first = drawn.First(SweepRole.Covered);
        int place = 0;
        Finding told = Assert.Single(
            drawn.But(s => s.Role == SweepRole.Covered ? s.As(levels: Made(first, place++, 0.005, 0)) : s).Analysed().Findings,
            f => f.Code == "near-copy");
        Assert.Contains("between reference sweeps by 0.", told.Message, StringComparison.Ordinal);
        Assert.Equal((Severity.Warning, true), (told.Severity, told.Misleads));
    }

    // Pieces of one cloth, steady or in the wind, near the floor or far over it, averaged or not.
    [Theory]
    [InlineData(0.2, 0, 40, 0)]
    [InlineData(0.02, 0, 40, 0.3)]
    [InlineData(0.02, 0.01, 65, 0)]
    [InlineData(0.005, 0.1, 20, 0)]
    [InlineData(0.2, 0, 100, 0.05)]
    public void PiecesOfOneClothAreLeftAlone(double scatterDb, double stepDb, double shieldingDb, double windDb)
    {
        RehearsalPlan plan = Plan with
        {
            ScatterDb = scatterDb,
            QuantisationDb = stepDb,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            Lots = 2,
            SpecimensPerLot = 4,
            Placements = 2,
            CoveredSweeps = 2,
        };
        foreach (ulong seed in Draws.Seeds(40))
        {
            var random = new RandomSource(seed);
            Taken still = Taken.With(plan with { Seed = seed });
            Taken taken = still.But(s => s.Specimen is "A01" or "B02"
                ? s.As(levels: [.. s.Levels.Select(l => l + (windDb * random.Normal()))]) : s);
            Assert.DoesNotContain(taken.Analysed().Findings, f => f.Code == "near-copy");
        }
    }

    // In gusts, every second or third sweep is quiet, in each specimen alike.
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void QuietSweepsBetweenGustsAreNoCopies(int every)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            var random = new RandomSource(seed);
            Taken still = Taken.With(Plan with
            {
                Seed = seed,
                SpecimensPerLot = 3,
                Placements = 0,
                CoveredSweeps = 7,
                ScatterDb = 0.02,
            });
            int place = 0;
            Taken gusty = still.But(s => s.Role == SweepRole.Covered && place++ % 7 % every > 0
                ? s.As(levels: [.. s.Levels.Select(l => l + random.Normal())]) : s);
            Assert.DoesNotContain(gusty.Analysed().Findings, f => f.Code == "near-copy" && f.Severity == Severity.Fault);
        }
    }

    // What moves the reference does not move the noise, and long averages leave little of that.
    [Theory]
    [InlineData(130)]
    [InlineData(75)]
    public void AveragedNoiseBesideARestlessReferenceIsLeftAlone(double shieldingDb)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            AnalysisResult result = Rehearsed.Analysed(Plan with
            {
                Seed = seed,
                SpecimensPerLot = 3,
                ScatterDb = 1.5,
                Looks = 10_000,
                ShieldingStartDb = shieldingDb,
                ShieldingStopDb = 130,
            });
            Assert.DoesNotContain(result.Findings, f => f.Code == "near-copy");
        }
    }

    // What could not be looked at is said, and what was looked at is not called untested.
    [Theory]
    [InlineData(6, 4, 61, null, null)]
    [InlineData(6, 4, 19, "it takes 20 frequencies", null)]
    [InlineData(3, 4, 61, null, "without linearity sweeps nothing shows how fewer than four reference sweeps should differ")]
    [InlineData(3, 1, 61, null, "without linearity sweeps nothing shows how fewer than four reference sweeps should differ")]
    [InlineData(6, 2, 61, null, null)]
    [InlineData(1, 2, 61, null, "without linearity sweeps nothing shows how fewer than four reference sweeps should differ; "
        + "with a single reference sweep nothing shows how so few covered sweeps should differ")]
    public void ItSaysWhatItCouldNotLookAt(int references, int covered, int points, string? untested, string? left)
    {
        CheckRun Run(double shieldingDb) => Rehearsed.Analysed(Plan with
        {
            Points = points,
            ReferenceSweeps = references,
            CoveredSweeps = covered,
            Placements = 0,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
        }).Checks.Single(c => c.Code == "near-copy");
        Assert.Equal((untested, left), (Run(40).UntestedBecause, Run(40).LeftBecause));
        const string Noise = "nothing shows how so few covered sweeps should differ where they may be noise";
        Assert.Equal(references > 1 && covered == 2 ? Noise : left, Run(130).LeftBecause);
    }

    // Without linearity sweeps nothing tells copies from a cloth that moves: it is said, and nobody is accused.
    [Theory]
    [InlineData(0.005, 0)]
    [InlineData(0.2, 0.005)]
    public void AReferenceFarQuieterThanTheClothIsSaidWhereNothingTells(double scatterDb, double copiesDb)
    {
        Taken drawn = Taken.With(Plan with { ScatterDb = scatterDb, CoveredSweeps = 5, Placements = 0 });
        var random = new RandomSource(2);
        Sweep first = drawn.First(SweepRole.Reference);
        int place = 0;
        AnalysisResult result = drawn.But(s => s.Role == SweepRole.Covered && copiesDb == 0
            ? s.As(levels: [.. s.Levels.Select(l => l + (0.3 * random.Normal()))])
            : s.Role == SweepRole.Reference && copiesDb > 0 ? s.As(levels: Made(first, place++, copiesDb, 0)) : s).Analysed();
        Finding said = Assert.Single(result.Findings, f => f.Code == "near-copy");
        Assert.Equal((Severity.Note, false, null), (said.Severity, said.Misleads, said.Bias));
        Assert.Contains("Nothing here tells whether the cloth moves", said.Message, StringComparison.Ordinal);
    }

    private static System.Collections.Immutable.ImmutableArray<double> Made(Sweep first, int place, double jitterDb,
        double offsetDb)
    {
        var random = new RandomSource((ulong)(9 + place));
        return place == 0 ? first.Levels
            : [.. first.Levels.Select(l => l + (place * offsetDb) + (jitterDb * ((2 * random.Uniform()) - 1)))];
    }
}
