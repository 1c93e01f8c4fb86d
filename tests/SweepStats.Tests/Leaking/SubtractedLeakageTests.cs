using SweepStats.Checks;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Tests.Checks;
using Xunit;

namespace SweepStats.Tests.Leaking;

/// <summary>What must not be lost where a leakage is taken out of all sweeps.</summary>
public sealed class SubtractedLeakageTests
{
    // Where the floor shows it with its phase it may be subtracted, once it is known to stay.
    [Fact]
    public void HowToSubtractItIsSaidWhereThatCanBeDone()
    {
        AnalysisResult result = Analysis.Run(new Analyser().Draw(), new AnalysisPlan());
        Finding[] told = [.. result.Findings.Where(
            f => f.Code == "leakage" && f.NextStep.StartsWith("Isolate better", StringComparison.Ordinal))];
        Assert.NotEmpty(told);
        Assert.All(told, f => Assert.Contains("leakage = \"same\"", f.NextStep, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void AClippedReferenceStaysOne(bool same)
    {
        Campaign drawn = new Analyser().Draw();
        double[] levels = [.. drawn.Sweeps.Where(s => s.Role == SweepRole.Reference).SelectMany(s => s.Levels).Order()];
        double top = levels[levels.Length / 2];
        Campaign clipped = drawn with
        {
            Sweeps =
            [
                .. drawn.Sweeps.Select(
                    s => s.Role == SweepRole.Reference ? s.As(levels: [.. s.Levels.Select(l => Math.Min(l, top))]) : s),
            ],
        };
        AnalysisResult result = Analysis.Run(clipped, new AnalysisPlan { SameLeakage = same });
        Assert.Contains(result.Findings, f => f.Code == "saturation-plateau");
        Assert.Contains(result.Curves[0].Readings, r => r.State == ShieldingState.Overloaded);
    }
}
