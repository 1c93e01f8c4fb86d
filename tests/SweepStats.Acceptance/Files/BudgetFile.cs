using System.Globalization;
using SweepStats.Acceptance.Commands;
using SweepStats.Files.Results;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Acceptance.Files;

/// <summary>budget.csv, and what it has to agree with.</summary>
public sealed class BudgetFile
{
    [Fact]
    public void EveryLineOfEveryBudgetIsARow()
    {
        var entry = new UncertaintyEntry
        {
            Name = "=cable, \"long\"",
            HalfWidthDb = 0.5,
            Distribution = ErrorDistribution.Triangular,
            ActsOn = ErrorActsOn.Both,
        };
        AnalysisResult result = Analysis.Run(SomeResult.Campaign(), new AnalysisPlan { Uncertainties = [entry] });
        using var stream = new MemoryStream();
        BudgetCsv.Write(result, stream);
        string[] lines = System.Text.Encoding.UTF8.GetString(stream.ToArray()).TrimEnd('\n').Split('\n');
        Assert.Equal("lot,specimen,frequency_hz,source,kind,distribution,standard_uncertainty_db,sensitivity,contribution_db,"
            + "dof,share,dof_by", lines[0]);
        Assert.Equal(1 + (2 * 6), lines.Length);
        Assert.Contains(",combined,,,", lines[6], StringComparison.Ordinal);
        Assert.StartsWith("'=lot,\"A, \"\"1\"\"\",3", lines[1], StringComparison.Ordinal);
        Assert.Contains(",reference,A,student,", lines[1], StringComparison.Ordinal);
        Assert.Contains(",\"'=cable, \"\"long\"\" (reference)\",B,triangular,0.2041,1.0000,0.2041,inf,", lines[4],
            StringComparison.Ordinal);
        Assert.Contains("\",,reference,A,student,", lines[7], StringComparison.Ordinal);
    }

    [Fact]
    public void TheDemosBudgetsAddUpToTheUncertaintyOfItsShielding()
    {
        string[][] Rows(string file) => [.. File.ReadLines(Path.Combine(Repository.Root, "reports/receiver-cabin-curtain", file))
            .Skip(1).Select(l => l.Split(','))];
        var shielding = Rows("shielding.csv").ToDictionary(r => (r[1], r[2]));
        var budgets = Rows("budget.csv").Where(r => r[2].Length > 0 && r[3] != "combined").GroupBy(r => (r[1], r[2])).ToList();
        var combined = Rows("budget.csv").Where(r => r[2].Length > 0 && r[3] == "combined").ToDictionary(r => (r[1], r[2]));
        Assert.Equal(12, budgets.Count);
        Assert.Equal(["rows", "usual-scatter"], combined.Values.Select(r => r[11]).Distinct().Order(StringComparer.Ordinal));
        Assert.All(budgets, lines =>
        {
            double[] parts = [.. lines.Select(r => Number(r[8]))];
            double variance = parts.Sum(p => p * p);
            double weight = lines.Where(r => r[9] != "inf").Sum(r => Math.Pow(Number(r[8]), 4) / Number(r[9]));
            Assert.Equal(Number(shielding[lines.Key][12]), Math.Sqrt(variance), 0.0003);
            // Welch and Satterthwaite, or fewer where the scatter usual around the frequency gives fewer; the row says which.
            double welch = variance * variance / weight, stated = Number(shielding[lines.Key][13]);
            Assert.InRange(stated, combined[lines.Key][11] == "rows" ? welch - 0.2 : 1, welch + 0.2);
            Assert.Equal(stated, Number(combined[lines.Key][9]), 0.002);
            Assert.Equal(1, lines.Sum(r => Number(r[10])), 0.0005);
        });
    }

    [Fact]
    public void AnotherSeedChangesThePageButNoCsv()
    {
        using var scratch = new ScratchFolder();
        Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "11");
        string[] Report(string seed)
        {
            Assert.Equal(0, Shell.Run("run", Path.Combine(scratch.Path, "c"), "--out", Path.Combine(scratch.Path, seed), "--seed",
                seed, "--quiet").Code);
            return [.. new[] { "index.html", "budget.csv", "shielding.csv",
                "summary.json" }.Select(f => File.ReadAllText(Path.Combine(scratch.Path, seed, f)))];
        }

        (string[] one, string[] two) = (Report("5"), Report("6"));
        Assert.NotEqual(one[0], two[0]);
        Assert.Equal(one[1..3], two[1..3]);
        Assert.Contains("\"seed\": 5", one[3], StringComparison.Ordinal);
    }

    [Fact]
    public void ACheckDrawsNothingAndHasNoSeed()
    {
        Assert.Contains("\"seed\": null", Shell.Run("check", Shell.Demo, "--format", "json").Out, StringComparison.Ordinal);
        Assert.Equal(2, Shell.Run("run", Shell.Demo, "--seed", "-1").Code);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
