using System.Text.Json;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>What was drawn is never taken for what was measured.</summary>
public sealed class RehearsedMarkTests
{
    private const string Mark = "Drawn by rehearse, not measured.";

    [Theory]
    [InlineData("run")]
    [InlineData("check")]
    [InlineData("lots")]
    [InlineData("choose")]
    [InlineData("plan")]
    public void EveryCommandSaysSo(string command)
    {
        using var scratch = new ScratchFolder();
        string folder = Drawn(scratch);
        string[] more = command == "run" ? ["--out", Path.Combine(scratch.Path, "report")] : [];
        Assert.Contains(Mark, Shell.Run([command, folder, .. more]).Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void PageAndSummarySaySoWhereItIsSo(bool rehearsed)
    {
        using var scratch = new ScratchFolder();
        string folder = Drawn(scratch);
        string settings = Path.Combine(folder, "campaign.toml");
        Assert.Contains("rehearsed = true", File.ReadAllText(settings), StringComparison.Ordinal);
        if (!rehearsed)
        {
            File.WriteAllText(settings,
                File.ReadAllText(settings).Replace("rehearsed = true", string.Empty, StringComparison.Ordinal));
        }

        string report = Path.Combine(scratch.Path, "report");
        Assert.Equal(0, Shell.Run("run", folder, "--out", report).Code);
        Assert.Equal(rehearsed, File.ReadAllText(Path.Combine(report, "index.html")).Contains(Mark, StringComparison.Ordinal));
        using var summary = JsonDocument.Parse(File.ReadAllText(Path.Combine(report, "summary.json")));
        Assert.Equal(rehearsed, summary.RootElement.GetProperty("rehearsed").GetBoolean());
    }

    private static string Drawn(ScratchFolder scratch)
    {
        string folder = Path.Combine(scratch.Path, "drawn");
        Assert.Equal(0, Shell.Run("rehearse", folder, "--points", "11", "--lots", "2", "--specimens", "2").Code);
        return folder;
    }
}
