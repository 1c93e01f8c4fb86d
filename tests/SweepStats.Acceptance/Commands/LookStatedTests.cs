using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>What look is told of a file is what a campaign is told: its lines, pasted, give the same reading.</summary>
public sealed class LookStatedTests : IDisposable
{
    private const string Bare = "1\t100\t-40\t0.5\n2\t200\t-41\t0.6\n3\t300\t-42\t0.9\n4\t400\t-43\t1.2\n";

    private readonly ScratchFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void ItsLinesPastedIntoCampaignTomlAreReadAsLookRead()
    {
        string[] options = ["--frequency-column", "2", "--frequency-unit", "MHz", "--column", "3", "--level-unit", "dBm",
            "--phase-column", "4", "--phase-unit", "deg"];
        (int code, string output, _) = Look("floor/odd \"name\" [1].csv", options);
        Assert.Equal(0, code);
        _folder.WithUsualSweeps().With("campaign.toml", Pasted(output));
        Assert.Empty(_folder.Read().Faults);
        Assert.Contains(_folder.Read().Campaign!.Sweeps, s => s.Levels[0] == -40 && s.Grid.Hertz[0] == 1e8 && s.Phases[3] == 1.2);
    }

    [Fact]
    public void OfAFileInDoubtItPrintsTheLinesToFillIn()
    {
        (int code, string output, _) = Look("x.txt", []);
        Assert.Equal(2, code);
        Assert.Contains("level_columns = [\"\"]   # one or more of 3, 4", output, StringComparison.Ordinal);
        Assert.Contains("frequency_unit = \"\"", output, StringComparison.Ordinal);
        string filled = Pasted(output).Replace("level_columns = [\"\"]", "level_columns = [\"3\"]", StringComparison.Ordinal)
            .Replace("frequency_unit = \"\"", "frequency_unit = \"MHz\"", StringComparison.Ordinal)
            .Replace("level_unit = \"\"", "level_unit = \"dBm\"", StringComparison.Ordinal);
        _folder.WithUsualSweeps().With("floor/x.txt", Bare).With("campaign.toml", filled);
        File.Delete(Path.Combine(_folder.Path, "x.txt"));
        Assert.Empty(_folder.Read().Faults);
    }

    [Theory]
    [InlineData("--real-column 3", "--real-column stands without --imaginary-column")]
    [InlineData("--phase-column 3", "--phase-column does not tell whose phase it is")]
    [InlineData("--phase-unit deg", "--phase-unit stands without --phase-column")]
    [InlineData("--column 3 --real-column 3 --imaginary-column 4", "--real-column and a column of levels are both stated")]
    [InlineData("--level-unit furlong", "the level units are")]
    public void OptionsThatDoNotGoTogetherAreRefused(string options, string said)
    {
        (int code, _, string error) = Look("x.txt", options.Split(' '));
        Assert.Equal(2, code);
        Assert.Contains(said, error, StringComparison.Ordinal);
    }

    private static string Pasted(string output) => string.Join('\n',
        output.ReplaceLineEndings("\n").Split('\n').SkipWhile(l => !l.Contains("[[files]]", StringComparison.Ordinal))
            .Select(l => l.Trim())) + "\n";

    private (int Code, string Out, string Error) Look(string file, string[] options) =>
        Shell.Run(["look", "--no-plot", Path.Combine(_folder.With(file, Bare).Path, file), .. options]);
}
