using SweepStats.Checks;
using Xunit;

namespace SweepStats.Tests.Checks;

/// <summary>Doing at the bench what a next step says makes its finding go away, and brings no other.</summary>
public sealed class NextStepTests
{
    public static TheoryData<string, string> Cases
    {
        get
        {
            var cases = new TheoryData<string, string>();
            foreach (BenchStep step in BenchSteps.All)
            {
                cases.Add(step.Code, step.Name);
            }

            return cases;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void DoneWhatItSaysTheFindingIsGoneAndNoOtherCame(string code, string name)
    {
        BenchStep step = Step(code, name);
        AnalysisResult before = step.Before.Analysed();
        AnalysisResult after = step.After.Analysed();
        Finding found = before.Findings.First(f => f.Code == code && f.Severity == step.Severity);
        Assert.Contains(step.Done, found.NextStep, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(after.Findings, f => f.Code == code && f.Severity >= step.Severity);
        string[] known = Grave(before);
        Assert.Empty(Grave(after).Except(known));
        Assert.True(after.Verdict.Trust <= before.Verdict.Trust);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void EveryFindingSaysWhatItRestsOn(string code, string name)
    {
        foreach (Finding finding in Step(code, name).Before.Analysed().Findings)
        {
            Assert.EndsWith(".", finding.Basis, StringComparison.Ordinal);
            Assert.NotEqual(finding.Message, finding.Basis);
            Assert.DoesNotContain("NaN", finding.Basis, StringComparison.Ordinal);
            Assert.DoesNotContain("∞", finding.Basis, StringComparison.Ordinal);
            Assert.Contains(finding.Basis, char.IsAsciiDigit);
        }
    }

    [Fact]
    public void EveryCheckOfTheListHasItsCase() =>
        Assert.Equal(Checklist.All.Select(c => c.Code).Order(StringComparer.Ordinal),
            BenchSteps.All.Select(s => s.Code).Distinct().Order(StringComparer.Ordinal));

    private static BenchStep Step(string code, string name) => BenchSteps.All.Single(s => s.Code == code && s.Name == name);

    private static string[] Grave(AnalysisResult result) =>
        [.. result.Findings.Where(f => f.Severity > Severity.Note).Select(f => f.Code).Distinct()];
}
