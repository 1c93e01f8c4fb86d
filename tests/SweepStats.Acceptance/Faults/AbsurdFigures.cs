using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>
/// Figures that no bench has are refused at once, with the limit named, and never end as a defect of the program.
/// </summary>
public sealed class AbsurdFigures
{
    [Theory]
    [InlineData("no more than 50000000 points", "--points", "2147483647")]
    [InlineData("no more than 100000 sweeps", "--lots", "100000", "--specimens", "100000")]
    [InlineData("no more than 100000 sweeps", "--lots", "2147483647", "--specimens", "2147483647", "--placements", "2147483647",
        "--sweeps", "2147483647")]
    [InlineData("no more than 100000 sweeps", "--sweeps", "2000000000")]
    [InlineData("no more than 100000 sweeps", "--floor-sweeps", "2147483647")]
    [InlineData("no more than 1000000 looks", "--looks", "1e308")]
    [InlineData("no more than 500000000 looks", "--looks", "1e6", "--averaging", "log")]
    [InlineData("a band below", "--stop", "1e308")]
    [InlineData("dB of wear", "--wear", "10", "--cycles", "0,1e300")]
    [InlineData("figures between", "--odd", "reference:1:1e308")]
    [InlineData("figures between", "--ambient", "433MHz:1e308")]
    [InlineData("figures between", "--lot-step", "A:1e308:300MHz-600MHz")]
    public void ARehearsalRefusesThem(string said, params string[] words)
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        (int code, string output, string error) = Shell.Run(["rehearse", folder, .. words]);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(said, error, StringComparison.Ordinal);
        Assert.False(Path.Exists(folder));
    }

    [Theory]
    [InlineData("se", "se-stop", "lot-spread", "specimen-spread", "placement-spread", "sweep-spread", "scatter", "floor",
        "floor-tilt", "reference", "reference-ripple")]
    [InlineData("drift", "jump", "compression", "limit", "quantised", "source", "linearity", "plate", "wear")]
    public void EachFigureOfARehearsalHasItsBounds(params string[] options)
    {
        using var scratch = new ScratchFolder();
        foreach (string option in options)
        {
            (int code, _, string error) =
                Shell.Run("rehearse", Path.Combine(scratch.Path, "c"), "--points", "3", "--" + option, "1e308");
            Assert.Equal(2, code);
            Assert.Contains("dB", error, StringComparison.Ordinal);
        }

        Assert.Empty(Directory.EnumerateFileSystemEntries(scratch.Path));
    }

    [Fact]
    public void ARehearsalDoesNotTakeTheRootOfTheDisk()
    {
        (int code, _, string error) = Shell.Run("rehearse", "/", "--points", "3");
        Assert.Equal(2, code);
        Assert.Contains("the folder is not empty", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--scatter", "0.3", "--half-width", "0.5", "--claim", "1", "--probability", "0.5")]
    [InlineData("--scatter", "2", "--placement-spread", "0.8", "--range", "2", "--claim", "6")]
    [InlineData("--scatter", "0", "--half-width", "0.001")]
    [InlineData("--scatter", "10", "--placement-spread", "10", "--half-width", "0.01")]
    [InlineData("--scatter", "50", "--placement-spread", "50", "--half-width", "0.001", "--range", "0.001",
        "--confidence", "0.9999")]
    [InlineData("--scatter", "10", "--placement-spread", "10", "--half-width", "0.01", "--claim", "100", "--range", "40",
        "--probability", "0.99")]
    public void APlanAnswersWhateverIsPlausible(params string[] words) =>
    Assert.Equal((0, ""), (Shell.Run(["plan", .. words]) is var run ? run.Code : 0, run.Error));

    [Fact]
    public void AThousandErrorsAreRefusedAtOnce()
    {
        using var scratch = new ScratchFolder();
        string blocks = string.Concat(Enumerable.Range(1, 1000)
            .Select(i => $"[[uncertainty]]\nname = \"u{i}\"\nhalf_width_db = 0.1\ndistribution = \"rectangular\"\n"));
        (int code, string output, string error) =
            Shell.Run("check", scratch.WithUsualSweeps().With("campaign.toml", blocks).Path);
        Assert.Equal((2, ""), (code, output));
        Assert.Equal("campaign.toml:401: there are more than 100 errors; join those that act alike\n", error);
    }
}
