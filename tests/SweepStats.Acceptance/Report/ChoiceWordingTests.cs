using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Choice;
using SweepStats.Quantities;
using SweepStats.Report.Choice;
using SweepStats.Report.Text;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>Sentences on the choice say no more than was computed.</summary>
public sealed class ChoiceWordingTests
{
    private static readonly Lazy<AnalysisResult> Drawn =
        new(() => Samples.Run(Samples.Lots with { Lots = 1, SpecimensPerLot = 4 }, Samples.Power));

    [Theory]
    [InlineData("A/A01 shields best (95 %).", 1, 2, 2)]
    [InlineData("2 of 3 specimens cannot be told from the best (95 %): A/A01, A/A02.", 1, 1, 2)]
    [InlineData("None of 3 specimens can be told from the best.", 1, 1, 1)]
    public void TheAnswerIsWhoIsInTheFirstGroup(string sentence, params int[] groups)
    {
        string[] said = Said([.. groups.Select((g, i) => Ranked($"A0{i + 1}", 42 - i) with { Group = g })]);
        Assert.Equal(sentence, said[0]);
        Assert.Equal(groups.Max() > 1, said.Any(s => s.StartsWith("3 specimens make 2 groups", StringComparison.Ordinal)));
    }

    // With the source off, or a cable loose, it would read so too.
    [Theory]
    [InlineData("nothing-heard", "nothing is heard behind it, as with the source off: open it once before you choose it.")]
    [InlineData("odd-sweep", "a sweep of it is unlike those that repeat it: settle that before you choose it.")]
    [InlineData("odd-specimen",
        "far better than the rest of its lot, as with a loose cable: sweep it once more before you choose it.")]
    public void ADoubtfulWinnerIsToBeTriedOnceMore(string code, string doubt)
    {
        var silent = new Finding
        {
            Code = code,
            Severity = Severity.Note,
            Specimen = new SpecimenName("A", "A01"),
            Message = "A finding.",
            Basis = "A rule.",
            NextStep = "Open it.",
        };
        AnalysisResult result = Drawn.Value with { Findings = [silent] };
        Assert.Equal($"A/A01 reads best (95 %), but {doubt}", Answer(result, 1, 2));
        Assert.Equal("A/A02 shields best (95 %).", Answer(result, 2, 1));

        static string Answer(AnalysisResult result, params int[] groups) => ChoiceWords.ChoiceAnswer(
            result, Of([.. groups.Select((g, i) => Ranked($"A0{i + 1}", 42 - i) with { Group = g })])).First();
    }

    [Fact]
    public void WhatIsHiddenStaysAmongTheBestAndTheReasonIsSaid()
    {
        RankedSpecimen open = Ranked("A02", 42) with { Group = 1, Open = true };
        Assert.Contains("How much A/A02 shields is known from below only over much of the band: it stays among the best until "
            + "more dynamic range tells.", Said(Ranked("A01", 42) with { Group = 1 }, open));
        Assert.DoesNotContain(Said(Ranked("A01", 42) with { Group = 1 }),
            s => s.Contains("from below only", StringComparison.Ordinal));
    }

    // What may be wrong with a specimen may be wrong with who is best.
    [Fact]
    public void WhatMisleadsIsNoGroundToNameTheBest()
    {
        Assert.Contains("best (95 %)", string.Join('\n', ChoiceWords.ChoiceText(Drawn.Value)), StringComparison.Ordinal);
        AnalysisResult misled = Drawn.Value with { Choice = Drawn.Value.Choice!.Until(["near-copy", "not-in-place", "drift"]) };
        Assert.Equal(["Settle first what 'sweepstats check' tells: sweeps too alike to be two, a specimen that shields nothing, "
            + "as if it was not in place and 1 more. Until then no winner is named."],
            ChoiceWords.ChoiceAnswer(misled, misled.Choice!.Bands[0]));
        Assert.Equal("The order of the table is no ranking.", RankingWords.ChoiceRemarks(misled).First());
        Assert.All(RankingWords.RankingRows(misled, misled.Choice.Bands[0]),
            row => Assert.Equal([Printed.Nothing, Printed.Nothing, Printed.Nothing], [row[0], row[2], row[6]]));
    }

    [Fact]
    public void WithoutGroupsNobodyIsTheBest() => Assert.Equal(
        ["Only bounds are known, and bounds do not scatter, so how far two specimens differ by chance cannot be told: the order "
            + "is that of the values alone."], Said(Ranked("A01", 42), Ranked("A02", 41)));

    [Fact]
    public void LimitsOfARowAreRoundedAwayFromTheClaim()
    {
        RankedSpecimen specimen = Ranked("A01", 41.24) with
        {
            MeanDb = new BandFigure(41.24, 40.19, 42.01),
            AtLeast = new Decibels(38.99),
            Group = 1,
            ProbabilityBest = new Interval(0, 0.621),
        };
        Assert.Equal(["1", "A/A01", "1", "", "41.2 dB (40.1 to 42.1 dB)", "≥ 38.9 dB", "≤ 63 %"], Row(specimen));
        Assert.Equal("≥ 40.1 dB", Row(specimen with { MeanDb = new BandFigure(null, 40.19, null) })[4]);
        Assert.Equal("no claim", Row(specimen with { AtLeast = null })[5]);
        Assert.StartsWith("capped at 3 of ", Row(specimen with { CappedCount = 3 })[3], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(8.04, 7.19, 8.81, "8.0 dB less (7.1 to 8.9 dB)")]
    [InlineData(-8.04, -8.81, -7.19, "8.0 dB more (7.1 to 8.9 dB)")]
    [InlineData(null, 7.19, null, "≥ 7.1 dB less")]
    [InlineData(null, null, 8.81, "≤ 8.9 dB less")]
    [InlineData(null, null, null, "cannot be told")]
    public void TheDistanceToTheYardstickHasTheSidesThatAreKnown(double? value, double? low, double? high, string printed)
    {
        BandRanking band = Of(Ranked("A01", 42) with { BelowYardstickDb = new BandFigure(value, low, high) }) with
        {
            Yardstick =
            Ranked("A04", 50),
        };
        IReadOnlyList<string>[] rows = [.. RankingWords.RankingRows(Drawn.Value, band)];
        Assert.Equal(printed, rows[0][7]);
        Assert.Equal(("yardstick", "A/A04", Printed.Nothing), (rows[1][0], rows[1][1], rows[1][7]));
        Assert.Contains("Against A/A04", RankingWords.RankingColumns(Drawn.Value, band));
    }

    [Fact]
    public void TheHeadingSaysWhatWasLeftOut()
    {
        BandRanking band = Of(Ranked("A01", 42)) with { Name = "upper", PointCount = 28, LeftOut = 1, CappedLeftOut = 2 };
        Assert.Equal(
            "upper, 30 MHz to 1 GHz, compared at 28 frequencies; left out for all: 2 where some specimen is known from below "
                + "only, 1 where something else transmits or the reference hardly rises over the floor",
            ChoiceWords.RankingHeading(band));
        Assert.Equal("Whole band, 30 MHz to 1 GHz, compared at 1 frequency",
            ChoiceWords.RankingHeading(band with { Name = null, PointCount = 1, LeftOut = 0, CappedLeftOut = 0 }));
    }

    [Fact]
    public void TheUsersColumnsStandAsTypedAndHarmless()
    {
        AnalysisResult result = Drawn.Value with
        {
            Plan = Samples.Power with { Choice = new ChoiceQuestion { LowerIsBetter = ["price"], Shown = ["colour"] } },
            Choice = Drawn.Value.Choice! with
            {
                Properties = [new SpecimenProperty(new SpecimenName("A", "A01"), "price", "34.50", 34.5),
                    new SpecimenProperty(new SpecimenName("A", "A01"), "colour", "grey\u001b[31m", null)],
                Dominated = [new DominatedSpecimen(new SpecimenName("A", "A02"), new SpecimenName("A", "A01"))],
            },
        };
        IReadOnlyList<string>[] rows = [.. RankingWords.RankingRows(result, Of(Ranked("A01", 42), Ranked("A02", 41)))];
        Assert.Equal(["price", "colour"], RankingWords.RankingColumns(result, Of(Ranked("A01", 42))).TakeLast(2));
        Assert.Equal("34.50", rows[0][7]);
        Assert.DoesNotContain('\u001b', rows[0][8]);
        Assert.Equal(("no better than A/A01", Printed.Nothing, Printed.Nothing), (rows[1][3], rows[1][7], rows[1][8]));
    }

    private static RankedSpecimen Ranked(string name, double mean) => new()
    {
        Name = new SpecimenName("A", name),
        Rank = 1,
        MeanDb = new BandFigure(mean, mean - 0.5, mean + 0.5),
        AtLeast = new Decibels(mean - 1),
        CappedCount = 0,
        Open = false,
        DeviationDb = 0.3,
    };

    private static BandRanking Of(params ImmutableArray<RankedSpecimen> ranking) =>
        Drawn.Value.Choice!.Bands[0] with { Ranking = ranking };

    private static string[] Said(params ImmutableArray<RankedSpecimen> ranking) =>
        [.. ChoiceWords.ChoiceAnswer(Drawn.Value, Of(ranking))];

    private static IReadOnlyList<string> Row(RankedSpecimen specimen) =>
        RankingWords.RankingRows(Drawn.Value, Of(specimen)).Single();
}
