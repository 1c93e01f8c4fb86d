using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Leakage;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Checks;

/// <summary>A check looks on: whatever it finds, levels, floor, curves and bands stay as they were, to the last bit.</summary>
public sealed class NumbersUntouchedTests
{
    [Fact]
    public void NoCheckChangesABitOfWhatItLooksAt()
    {
        foreach (BenchStep step in BenchSteps.All)
        {
            AnalysisResult result = step.Before.Analysed();
            Evidence seen = EvidenceOf(result);
            string before = Numbers(result, BandsOf(result));
            foreach (ICheck check in Checklist.All)
            {
                _ = check.Inspect(seen).ToList();
                _ = check.UntestedBecause(seen);
            }

            // Once after all of them: writing every number down takes far longer than the checks do.
            Assert.True(before == Numbers(result, BandsOf(result)), $"A check changed a number ({step.Name}).");
        }
    }

    [Fact]
    public void WithoutAnyCheckTheNumbersAreTheSame()
    {
        foreach (BenchStep step in BenchSteps.All)
        {
            AnalysisResult result = step.Before.Analysed();
            AnalysisPlan plan = step.Before.Stated;
            var estimator = new ShieldingEstimator(
                result.Campaign, result.Floor, plan.Confidence,
                [.. plan.Uncertainties, .. new[] { result.Doubts.Drift }.OfType<UncertaintyEntry>()],
                FloorAndLeakage.Of(Aligner.Align(step.Before.Campaign, plan.Band), result.Averaging.Averaging, result.History,
                    plan.SameLeakage).Levels, result.SerialCorrelation);
            AnalysisResult bare =
                result with { Curves = [.. result.Campaign.Covered.Zip(result.Doubts.Specimens, estimator.Estimate)] };
            Assert.True(Numbers(result, result.Bands) == Numbers(bare, BandsOf(bare)), step.Name);
        }
    }

    [Fact]
    public void TheSameFindingsComeASecondTime()
    {
        foreach (BenchStep step in BenchSteps.All)
        {
            AnalysisResult result = step.Before.Analysed();
            Assert.Equal(result.Findings.Select(Words), Checklist.Inspect(EvidenceOf(result)).Select(Words));
        }
    }

    private static Evidence EvidenceOf(AnalysisResult result) => new()
    {
        Campaign = result.Campaign,
        Floor = result.Floor,
        History = result.History,
        FloorLife = result.FloorLife,
        Doubts = result.Doubts,
        Leakages = result.Leakages,
        Repeats = result.Repeats,
        OddRepeats = result.OddRepeats,
        Drifts = result.Drifts,
        Clipping = result.Clipping,
        Timing = result.Timing,
        SerialCorrelation = result.SerialCorrelation,
        Linearity = result.Linearity,
        Curves = result.Curves,
        Averaging = result.Averaging,
        Rule = result.Plan.Rule,
        Margin = result.Plan.Margin,
        Setup = result.Plan.Setup,
        SourceDbm = result.Plan.SourceDbm,
        MaximumInputDbm = result.Plan.MaximumInputDbm,
    };

    private static BandStatement[] BandsOf(AnalysisResult result) =>
        [.. result.Curves.Select(c => BandEstimator.State(c, result.Campaign.Grid, result.Plan.Rule, result.Plan.Confidence))];

    private static string Words(Finding finding) => $"{finding.Severity} {finding.Code} {finding.Message} {finding.Basis} "
        + $"{finding.NextStep} {finding.Size} {string.Join(' ', finding.Where)}";

    // Doubles are written so that they read back to the same bits; records write all their numbers.
    private static string Numbers(AnalysisResult result, IEnumerable<BandStatement> bands)
    {
        SweepBlock[] blocks = [.. new[] { result.Campaign.Floor, result.Campaign.Reference }.OfType<SweepBlock>(),
            .. result.Campaign.Covered.Select(c => c.Block)];
        IEnumerable<double> levels = blocks.SelectMany(b => Enumerable.Range(0, b.SweepCount).SelectMany(j => b[j].ToArray()));
        IEnumerable<double> floor = result.Floor is { } f
            ? [.. f.LevelDb, .. f.StandardErrorDb, .. f.DegreesOfFreedom, .. f.Ambient.Select(a => a ? 1.0 : 0),
                f.ReadingDeviationDb] : [];
        IEnumerable<double> repeats =
            result.Repeats.SelectMany((RepeatGroup g) => g.Sweeps).SelectMany(s => s.RestDb.Prepend(s.Offset.Value));
        return string.Join('\n',
        [
            .. levels.Concat(floor).Concat(repeats).Concat(result.Campaign.SetAside.SelectMany(s => s.Levels))
                .Select(v => v.ToString("R", CultureInfo.InvariantCulture)),
            .. result.Curves.SelectMany(c => c.Readings).Select(r => r.ToString()),
            .. bands.Select(b => b.ToString()),
        ]);
    }
}
