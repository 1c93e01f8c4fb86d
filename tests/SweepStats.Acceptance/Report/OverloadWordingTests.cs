using System.Globalization;
using System.Xml.Linq;
using SweepStats.Bands;
using SweepStats.Budgets;
using SweepStats.Choice;
using SweepStats.Files.Results;
using SweepStats.Planning;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Report.Answer;
using SweepStats.Report.Budgets;
using SweepStats.Report.Choice;
using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Report.Pages;
using SweepStats.Report.Plans;
using SweepStats.Report.Screens;
using SweepStats.Report.Specimens;
using SweepStats.Shielding;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>An overloaded receiver leaves bounds as the floor does, but what is said of them and what helps is another.</summary>
public sealed class OverloadWordingTests
{
    private static readonly RehearsalPlan Plan = Samples.Small with { Lots = 2, SpecimensPerLot = 2, ReferenceRippleDb = 6 };

    private static readonly AnalysisPlan Asking = Samples.Power with { Requirement = Requirement.Constant(new Decibels(60)) };

    /// <summary>The reference is clipped everywhere.</summary>
    private static readonly AnalysisResult Everywhere = Samples.Run(Plan with { LimitDbm = -40 }, Asking);

    /// <summary>Clipped in the upper half of its swing; the end of the band lies in the floor.</summary>
    private static readonly AnalysisResult Partly = Samples.Run(Plan with { LimitDbm = -30, ShieldingStopDb = 100 }, Asking);

    [Fact]
    public void NowhereIsAnythingSaidOfTheFloorOrOfMoreRangeWhereTheReceiverAloneIsToBlame()
    {
        Assert.All(Everywhere.Curves.SelectMany(c => c.Readings),
            r => Assert.Equal(ShieldingState.Overloaded, Assert.IsType<ShieldingReading.AtLeast>(r).State));
        var page = new Page(Everywhere);
        string[] said =
        [
            .. SummaryWords.Summary(Everywhere), .. FindingWords.Check(Everywhere), .. ChoiceWords.ChoiceText(Everywhere),
            .. LotWords.LotsText(Everywhere), .. page.Tree.Descendants("p").Concat(page.Tree.Descendants("caption"))
                .Concat(page.Tree.Descendants("li")).Select(e => e.Value),
            .. new[] { "shielding", "shielding-a-a01" }.SelectMany(page.Labels),
        ];
        Assert.DoesNotContain(said, s => s.Contains("floor hides", StringComparison.Ordinal));
        Assert.DoesNotContain(said, s => s.Contains("more range", StringComparison.OrdinalIgnoreCase)
            || s.Contains("more dynamic range", StringComparison.OrdinalIgnoreCase));
        Assert.DoesNotContain(said, s => s.Contains("more source power", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("overload of the receiver hides", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("Take sweeps without overload", StringComparison.Ordinal));
        Assert.Contains(SummaryWords.Summary(Everywhere),
            l => l.Contains($"Overloaded at {Everywhere.Campaign.Grid.Count} of {Everywhere.Campaign.Grid.Count} frequencies",
                StringComparison.Ordinal));
    }

    [Fact]
    public void WhereBothHideSomethingBothAreNamed()
    {
        BoundCauses causes = BoundCauses.Of(Partly.Curves);
        Assert.Equal(new BoundCauses(Floor: true, Overload: true), causes);
        Assert.Equal("the floor or overload of the receiver", causes.What);
        Assert.Equal("more dynamic range and sweeps without overload tell", causes.Tells);
        Assert.Equal("More dynamic range and sweeps without overload would tell.", causes.WouldTell);
        Assert.Contains(new Page(Partly).Labels("shielding-a-a01"),
            l => l.EndsWith("arrows: the floor or overload of the receiver hides how much more", StringComparison.Ordinal));
        Assert.Contains("the receiver was overloaded, and the bound that is left", VerdictWords.OutcomeReason(Everywhere),
            StringComparison.Ordinal);
    }

    [Fact]
    public void TheFloorAloneIsSaidAsBefore()
    {
        var floor = new BoundCauses(Floor: true, Overload: false);
        Assert.Equal(("the floor", "more dynamic range tells", "More dynamic range would tell."),
            (floor.What, floor.Tells, floor.WouldTell));
        var overload = new BoundCauses(Floor: false, Overload: true);
        Assert.Equal(("overload of the receiver", "sweeps without overload tell", "Sweeps without overload would tell."),
            (overload.What, overload.Tells, overload.WouldTell));
    }

    [Fact]
    public void TheReadingGuideExplainsTheWordWhereItIsUsed()
    {
        Assert.Contains(PageWords.Guide(Everywhere), g => g.Term == "Overloaded");
        Assert.DoesNotContain(PageWords.Guide(Samples.ThreeLots), g => g.Term == "Overloaded");
    }

    [Fact]
    public void ABudgetMakesNoValueOfAnOverloadedReading()
    {
        ShieldingBudget budget = Everywhere.Budgets[0].Frequencies[0];
        Assert.Null(budget.Linear);
        Assert.Contains("no estimate, the receiver was overloaded", BudgetWords.BudgetCaption(budget), StringComparison.Ordinal);
        Assert.Contains("Less level at the receiver helps; more sweeps do not.", BudgetAdviceWords.Dominates(budget),
            StringComparison.Ordinal);
        Assert.Equal(double.PositiveInfinity, budget.Reported.High);
    }

    [Fact]
    public void TheTableOfShieldingHasBoundsAndTheState()
    {
        using var to = new MemoryStream();
        ShieldingCsv.Write(Everywhere, to);
        string[][] rows = [.. System.Text.Encoding.UTF8.GetString(to.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.TrimEnd('\r').Split(','))];
        int Column(string name) => Array.IndexOf(rows[0], name);
        Assert.All(rows.Skip(1), row =>
        {
            Assert.Equal(("overloaded", "", ""), (row[Column("state")], row[Column("se_db")], row[Column("se_high_db")]));
            Assert.True(double.Parse(row[Column("se_low_db")], CultureInfo.InvariantCulture) > 0);
            Assert.Contains("saturation-plateau", row[Column("flags")], StringComparison.Ordinal);
        });
    }

    [Fact]
    public void ARankingSaysWhatItLeftOutForWhichReason()
    {
        AnalysisResult some = Samples.Run(Plan with { LimitDbm = -28 }, Samples.Power);
        BandRanking band = some.Choice!.Bands[0];
        Assert.InRange(band.OverloadedLeftOut, 3, 20);
        Assert.Equal(band.OverloadedLeftOut, band.CappedLeftOut);
        Assert.Contains($"left out for all: {band.OverloadedLeftOut} where the receiver was overloaded",
            ChoiceWords.RankingHeading(band), StringComparison.Ordinal);
        Assert.All(band.Ranking, r => Assert.Equal((band.OverloadedLeftOut, 0), (r.OverloadedCount, r.CappedCount)));
        Assert.Contains(RankingWords.RankingRows(some, band),
            row => row[3].StartsWith("overloaded at ", StringComparison.Ordinal));
    }

    [Fact]
    public void APlanFromAnOverloadedPilotAsksForLessLevelFirst()
    {
        AnalysisResult pilot = Samples.Run(Plan with { LimitDbm = -30 }, Asking);
        PlanBasis basis = PilotComponents.Of(pilot.Campaign, pilot.Floor, [])!;
        var question =
            new PlanQuestion { Confidence = Statistics.Confidence.NinetyFive, Numbers = new SweepNumbers(1, 5, 5), ClaimDb = 75 };
        IReadOnlyList<string> lines = PlanWords.Plan(SweepPlanner.Of(basis, question), pilot);
        Assert.Contains(lines, l => l.StartsWith("The pilot's receiver was overloaded", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains("more source power", StringComparison.Ordinal));
        Assert.Contains(lines, l =>
            l.Contains("without more level at a receiver that is overloaded: a resolution bandwidth", StringComparison.Ordinal));

        // Readings that all stand at the limit show no scatter: the others do, as if nothing were clipped.
        PlanBasis clean = PilotComponents.Of(Samples.Run(Plan, Asking).Campaign, pilot.Floor, [])!;
        Assert.InRange(basis.ReferenceDeviationDb / clean.ReferenceDeviationDb, 0.8, 1.2);
    }

    [Fact]
    public void TheChartOfLinearityShowsTheReferenceItself()
    {
        AnalysisResult result = Samples.Run(Samples.Overloaded, Samples.Power);
        Assert.Contains("the reference sweeps themselves", new Page(result).Labels("linearity"));
        AnalysisResult single = Samples.Run(Samples.Overloaded with { LinearitySourcesDbm = [0] }, Samples.Power);
        XElement chart = new Page(single).Chart("linearity").Root!;
        Assert.Contains("linearity and reference sweeps at 2 source levels", chart.Value, StringComparison.Ordinal);
        Assert.Contains("10 dBm (reference): ", chart.Value, StringComparison.Ordinal);
    }
}
