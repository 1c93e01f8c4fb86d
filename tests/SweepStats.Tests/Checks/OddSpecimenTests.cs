using System.Globalization;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class OddSpecimenTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 5, 18, 0, 0, TimeSpan.Zero);

    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        Points = 41,
        Lots = 1,
        SpecimensPerLot = 3,
        Placements = 3,
        CoveredSweeps = 3,
        SpecimenDeviationDb = 0.5,
        PlacementDeviationDb = 0.3,
        ReferenceRippleDb = 3,
        StartsAt = Start,
    };

    // fixtures/oracles/wrong-campaigns.R: 39, 40 and 41 dB, and 12 dB less received behind the second.
    [Theory]
    [InlineData("loose-behind-one", true)]
    [InlineData("clean", false)]
    public void ACableThatRLeftLooseIsAskedAbout(string drawn, bool isAsked)
    {
        AnalysisResult result = Analysis.Run(DrawnByR.Campaign(drawn), new AnalysisPlan { Averaging = Averaging.Power });
        Finding? told = result.Findings.SingleOrDefault(f => f.Code == "odd-specimen");
        Assert.Equal(isAsked ? new SpecimenName("A", "s2") : null, told?.Specimen);
        Assert.Equal(isAsked, told?.Message.StartsWith("A/s2 shields 1", StringComparison.Ordinal) == true);
    }

    // fixtures/oracles/odd-specimen.R: gap and limit of lots of given levels, swept without scatter.
    [Fact]
    public void GapAndLimitAreThoseOfR()
    {
        foreach (string[] row in Fixtures.Cells("oracles/odd-specimen.csv"))
        {
            Campaign campaign = Rehearsed.Campaign(
                Flat(SweepRole.Floor, -200), Flat(SweepRole.Reference, 0), OfLot("A", row[0]), OfLot("B", row[1]));
            Finding[] told = [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power }).Findings
                .Where(f => f.Code == "odd-specimen")];
            Assert.Equal(Number(row[2]), told.Count(f => f.Specimen!.Value.Lot == "A"));
            Assert.All(told.Where(f => f.Specimen!.Value.Lot == "A"), f =>
            {
                Assert.True(f.Size!.Value.Value >= Number(row[3]) - 0.01);
                Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"; told from {Number(row[4]):0.0} dB on"), f.Basis,
                    StringComparison.Ordinal);
            });
        }
    }

    private static IEnumerable<Sweep> OfLot(string lot, string levels) =>
        levels.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany((level, i) => Flat(SweepRole.Covered, -Number(level))
            .Select(s => new Sweep($"{lot}{i}{s.Name}", s.Role, s.Grid, s.Levels, s.Scale)
            {
                Lot = lot,
                Specimen = $"{lot}{i}",
            }));

    // Two sweeps that repeat each other but for a hundredth of a decibel up and down.
    private static IEnumerable<Sweep> Flat(SweepRole role, double level)
    {
        double[] Swept(int sign) => [.. Enumerable.Range(0, 7).Select(f => level + (sign * 0.01 * Math.Cos(2.4 * f)))];
        return Rehearsed.Sweeps(role, Swept(1), Swept(-1));
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    // What it seems to meet is not relied on further than the others go; what it meets without the difference stands.
    [Theory]
    [InlineData(45, RequirementOutcome.CannotTell)]
    [InlineData(30, RequirementOutcome.Meets)]
    public void WhatItMeetsByTheDifferenceAloneIsNotReliedOn(double askedDb, RequirementOutcome outcome)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken taken = Loose(Plan with { Seed = seed }, 12, "A02");
            AnalysisResult result = Analysis.Run(
                taken.Campaign, taken.Stated with { Requirement = Requirement.Constant(new Decibels(askedDb)) });
            Finding told = Assert.Single(result.Findings, f => f.Code == "odd-specimen");
            Assert.Equal((Severity.Warning, new SpecimenName("A", "A02")), (told.Severity, told.Specimen));
            Assert.InRange(told.Size!.Value.Value, 10, 14);
            Assert.Equal((outcome, Trust.Limited), (result.Verdict.Specimens[1].Outcome, result.Verdict.Trust));
        }
    }

    // By hand: of three lots of three with a deviation of 0.5 dB a gap of 5 dB is told; of one lot ten are asked for.
    [Theory]
    [InlineData(1, 3, 12, true)]
    [InlineData(1, 3, 7, false)]
    [InlineData(3, 3, 7, true)]
    [InlineData(3, 3, 3, false)]
    [InlineData(1, 2, 15, false)]
    public void HowFarApartItHasToLieIsDecidedByHowEvenTheLotsAre(int lots, int specimens, double looseDb, bool isAsked)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            RehearsalPlan plan = Plan with { Seed = seed, Lots = lots, SpecimensPerLot = specimens };
            Assert.Equal(isAsked, IsAsked(Loose(plan, looseDb, "A02").Analysed()));
        }
    }

    [Fact]
    public void TwoOfFiveAreAskedAboutEach() => Assert.Equal(["A02", "A04"],
        Taken.With(Plan with { SpecimensPerLot = 5 }).But(s => s.Specimen is "A02" or "A04" ? s.Shifted(-12) : s).Analysed()
            .Findings.Where(f => f.Code == "odd-specimen").Select(f => f.Specimen!.Value.Specimen).Order());

    // Its placements lie before and after another specimen, or the reference right beside it: the cloth it is.
    [Theory]
    [InlineData("again", false)]
    [InlineData("reference", false)]
    [InlineData("as drawn", true)]
    [InlineData("without times", true)]
    public void SweptAgainAfterAnotherItIsTheCloth(string how, bool isAsked)
    {
        Taken taken = Loose(Plan, 12, "A02");
        Sweep[] own = [.. taken.Campaign.Sweeps.Where(s => s.Specimen == "A02")];
        DateTimeOffset first = own.Min(s => s.TakenAt)!.Value, last = own.Max(s => s.TakenAt)!.Value;
        Sweep[] references = [.. taken.Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference)];
        Taken ordered = taken.But(s => how switch
        {
            "again" when s.Specimen == "A02" && s.Placement == "p3" => s.As(takenAt: last.AddHours(5)),
            "reference" when s == references[0] => s.As(takenAt: first.AddSeconds(-1)),
            "reference" when s == references[^1] => s.As(takenAt: last.AddSeconds(1)),
            _ => s,
        });
        Assert.Equal(isAsked, IsAsked(how == "without times" ? Loose(Plan with { StartsAt = null }, 12, "A02").Analysed()
            : ordered.Analysed()));
    }

    // Another lot with an odd piece of its own hides none; and odd pieces do not settle each other by lying between.
    [Fact]
    public void OddPiecesNeitherHideNorSettleEachOther()
    {
        RehearsalPlan two = Plan with { Lots = 2 };
        Assert.Equal(["A02", "B02"], Taken.With(two).But(s => s.Specimen is "A02" or "B02" ? s.Shifted(-12) : s).Analysed()
            .Findings.Where(f => f.Code == "odd-specimen").Select(f => f.Specimen!.Value.Specimen).Order());
        Taken five = Taken.With(Plan with { SpecimensPerLot = 5 })
            .But(s => s.Specimen is "A02" or "A03" ? s.Shifted(-12) : s);
        Sweep[] between = [.. five.Campaign.Sweeps.Where(s => s.Specimen is "A02" or "A03")];
        DateTimeOffset begins = between.Min(s => s.TakenAt)!.Value;
        Taken mixed = five.But(s => between.Contains(s)
            ? s.As(takenAt: begins.AddMinutes(2 * Array.IndexOf(between, s) % 17)) : s);
        Assert.Equal(2, mixed.Analysed().Findings.Count(f => f.Code == "odd-specimen"));
    }

    // Beside pieces that were not in place the good one is not odd: those are asked about.
    [Fact]
    public void WhoIsBetterThanNothingInPlaceIsNotOdd() => Assert.False(IsAsked(
        Taken.With(Plan).But(s => s is { Role: SweepRole.Covered } && s.Specimen != "A02" ? s.Shifted(40) : s).Analysed()));

    // Uneven cloth, candidates of several kinds in one lot, and cloth that nears the floor.
    [Theory]
    [InlineData(3, 40, 2, 1)]
    [InlineData(5, 40, 3, 2)]
    [InlineData(3, 25, 4, 3)]
    [InlineData(6, 40, 8, 2)]
    [InlineData(4, 66, 3, 2)]
    public void CleanLotsAreHardlyAccused(int specimens, double shieldingDb, double deviationDb, int most) => Assert.InRange(
        Draws.Seeds(60).Count(seed => IsAsked(Rehearsed.Analysed(Plan with
        {
            Points = 21,
            Seed = seed,
            SpecimensPerLot = specimens,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            SpecimenDeviationDb = deviationDb,
        }))), 0, most);

    private static bool IsAsked(AnalysisResult result) => result.Findings.Any(f => f.Code == "odd-specimen");

    private static Taken Loose(RehearsalPlan plan, double looseDb, string specimen) =>
        Taken.With(plan).But(s => s.Role == SweepRole.Covered && s.Specimen == specimen ? s.Shifted(-looseDb) : s);
}
