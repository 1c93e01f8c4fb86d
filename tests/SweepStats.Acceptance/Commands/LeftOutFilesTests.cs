using System.Text.Json;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>A file that --keep-going leaves out is told of by every command, in text and in JSON.</summary>
public sealed class LeftOutFilesTests : IDisposable
{
    private readonly ScratchFolder _scratch = new();

    public LeftOutFilesTests()
    {
        Shell.Run("rehearse", Folder, "--points", "21", "--sweeps", "3", "--placements", "3", "--specimens", "2");
        File.WriteAllText(Path.Combine(Folder, "floor", "broken.csv"), "nothing\n");
    }

    private string Folder => Path.Combine(_scratch.Path, "c");

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("plan")]
    [InlineData("choose")]
    [InlineData("lots")]
    public void TextAndJsonTellOfIt(string command)
    {
        Assert.Contains("Left out: floor/broken.csv", Shell.Run(command, Folder, "--keep-going").Out, StringComparison.Ordinal);
        JsonElement root = JsonDocument.Parse(Shell.Run(command, Folder, "--keep-going", "--format", "json").Out).RootElement;
        JsonElement told = command == "lots" ? root.GetProperty("campaigns")[0] : root;
        Assert.StartsWith("floor/broken.csv: ", Assert.Single(told.GetProperty("left_out").EnumerateArray()).GetString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void ASingleSweepOfARehearsalWasTakenOnce()
    {
        string folder = Path.Combine(_scratch.Path, "single");
        Assert.Equal(0, Shell.Run("rehearse", folder, "--points", "21", "--floor-sweeps", "1").Code);
        string settings = File.ReadAllText(Path.Combine(folder, "campaign.toml"));
        Assert.Contains("[floor]\ntaken = \"once\"\n", settings, StringComparison.Ordinal);
        Assert.Contains("[reference]\ntaken = \"before-and-after\"\n", settings, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("99999999999999", "this number is too large")]
    [InlineData("1.5", "this is not a whole number")]
    public void ANumberThatIsTooLargeIsWholeAllTheSame(string points, string said) =>
        Assert.Contains($"--points {points}: {said}", Shell.Run("rehearse", Folder + "x", "--points", points).Error,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("run")]
    [InlineData("init")]
    [InlineData("look")]
    [InlineData("plan")]
    [InlineData("rehearse")]
    public void AnEmptyWordIsNoInternalError(string command)
    {
        (int code, _, string error) = Shell.Run(command, "");
        Assert.Equal(2, code);
        Assert.Contains("empty word", error, StringComparison.Ordinal);
    }

    [Fact]
    public void BesideAYardstickItTakesTwoSpecimens()
    {
        File.Delete(Path.Combine(Folder, "floor", "broken.csv"));
        string specimen = Path.GetFileName(Directory.GetDirectories(Path.Combine(Folder, "covered", "A"))
            .Order(StringComparer.Ordinal).First());
        File.AppendAllText(Path.Combine(Folder, "campaign.toml"), $"\n[choice]\nyardstick = \"A/{specimen}\"\n");
        (int code, _, string error) = Shell.Run("choose", Folder);
        Assert.Equal(2, code);
        Assert.Contains("that takes two specimens beside the yardstick.", error, StringComparison.Ordinal);
    }
}
