using System.Text;
using SweepStats.Acceptance.Commands;
using Xunit;

namespace SweepStats.Acceptance.BadInput;

/// <summary>
/// Every bad input ends with exit code 2, a message that says where, what and what to do, and nothing written. The messages stand
/// in fixtures/bad-inputs.md.
/// </summary>
public sealed class BadInputTests
{
    private const string Table = "fixtures/bad-inputs.md";

    private static readonly BadInput[] All = [.. BadTables.All, .. BadTouchstone.All, .. BadCampaigns.All];

    public static TheoryData<string> Names => [.. All.Select(b => b.What)];

    [Theory]
    [MemberData(nameof(Names))]
    public void ItIsRefusedWithAMessageAndNothingIsWritten(string what)
    {
        BadInput bad = All.Single(b => b.What == what);
        using var campaign = new CampaignToSpoil();
        bad.Arrange(campaign);
        (int code, string output, string error) = Shell.Run(["run", campaign.Folder, "--out", campaign.Report, .. bad.Words]);
        Assert.Equal((2, ""), (code, output));
        Assert.False(Directory.Exists(campaign.Report));
        Assert.DoesNotContain("internal error", error, StringComparison.Ordinal);
        Assert.All(Lines(error, campaign), l => Assert.Matches("^[^:]+(:[0-9]+)?: .+[;.:] .+$", l));
    }

    [Fact]
    public void TheTableOfMessagesIsUpToDate()
    {
        var table = new StringBuilder("# Bad inputs and what the program says of them\n\nEach was put into a campaign that is "
            + "good otherwise, and `sweepstats run` ended with exit code 2 and wrote nothing.\nMade by the tests in "
            + "tests/SweepStats.Acceptance/BadInput; a failing test leaves the new table beside its program.\n\n| what is bad | "
            + "what is said |\n|---|---|\n");
        foreach (BadInput bad in All)
        {
            using var campaign = new CampaignToSpoil();
            bad.Arrange(campaign);
            string error = Shell.Run(["run", campaign.Folder, "--out", campaign.Report, .. bad.Words]).Error;
            string cell =
                string.Join("<br>", Lines(error, campaign).Select(l => l.Replace("|", "\\|", StringComparison.Ordinal)));
            table.Append("| ").Append(bad.What).Append(" | ").Append(cell).Append(" |\n");
        }

        File.WriteAllText(Path.Combine(AppContext.BaseDirectory, "bad-inputs.md"), table.ToString());
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Root, Table)), table.ToString());
        Assert.True(All.Length >= 60);
    }

    private static IEnumerable<string> Lines(string error, CampaignToSpoil campaign) =>
        error.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.Replace(campaign.Root + "/", "", StringComparison.Ordinal));
}
