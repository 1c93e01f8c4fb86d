using System.Text.Json;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>
/// Sweeps that were taken and could not be read are not called missing: the unit is to be mended, and nothing to be measured
/// anew.
/// </summary>
public sealed class UnreadFilesTests : IDisposable
{
    private readonly ScratchFolder _scratch = new();

    public UnreadFilesTests() =>
        Shell.Run("rehearse", Folder, "--points", "21", "--linearity", "0", "--linearity", "-10", "--plate-sweeps", "3");

    private string Folder => Path.Combine(_scratch.Path, "c");

    public void Dispose() => _scratch.Dispose();

    [Theory]
    [InlineData("reference", "5 reference files")]
    [InlineData("covered", "5 covered files")]
    public void WithoutReferenceOrCoveredTheReasonIsTheTrueOne(string role, string files)
    {
        Spoil(role);
        (int code, string output, string error) = Shell.Run("check", Folder, "--keep-going");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains($"There is no {role} sweep to use: {files} could not be read (the file does not say the unit of level). "
            + $"Mend the {files}", error, StringComparison.Ordinal);
        Assert.Contains("set level_unit under [setup] in campaign.toml", error, StringComparison.Ordinal);
        Assert.DoesNotContain("put sweeps", error, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void WithoutFloorHeadlineFindingAndStepNameTheUnit()
    {
        Spoil("floor");
        string output = Shell.Run("check", Folder, "--keep-going", "--verbose").Out;
        string headline = output.Split(Environment.NewLine)[1];
        Assert.Contains("; 5 floor files could not be read (the file does not say the unit of level), so nobody can tell",
            headline, StringComparison.Ordinal);
        Assert.Contains("Warning (files-unread)", output, StringComparison.Ordinal);
        Assert.Contains("No floor sweep is in use, since 5 floor files could not be read", output, StringComparison.Ordinal);
        Assert.DoesNotContain("three floor sweeps", output, StringComparison.Ordinal);
        Assert.DoesNotContain("there are no floor sweeps", output, StringComparison.Ordinal);
        Assert.DoesNotContain("no floor was measured", output, StringComparison.Ordinal);
        Assert.Contains("Left out: 5 files, such as floor/floor-01.csv, floor/floor-02.csv, floor/floor-03.csv: ", output,
            StringComparison.Ordinal);
    }

    [Fact]
    public void APartOfARoleIsNamedAndNoNewSweepsAreAskedFor()
    {
        Spoil("reference", 4);
        string output = Shell.Run("check", Folder, "--keep-going", "--verbose").Out;
        Assert.Contains("4 reference files could not be read", output, StringComparison.Ordinal);
        Assert.Contains("Next: Mend the 4 reference files that could not be read, as files-unread says", output,
            StringComparison.Ordinal);
        Assert.DoesNotContain("Take at least three sweeps", output, StringComparison.Ordinal);
    }

    // Nothing is dropped in silence: a file beside those that sweeps.csv lists is named on the screen.
    [Theory]
    [InlineData("check")]
    [InlineData("run", "--charts", "none")]
    [InlineData("check", "--verbose")]
    public void AFileThatTheListDoesNotNameIsSaid(string command, params string[] options)
    {
        string[] copied = ["floor/x1.csv", "floor/x2.csv", "floor/x3.csv"];
        string first = Path.Combine(Folder, "floor/floor-01.csv");
        File.Copy(first, Path.Combine(Folder, copied[0]));
        Assert.Contains("Not read, since sweeps.csv does not list it: floor/x1.csv.", Said("one"), StringComparison.Ordinal);
        Array.ForEach(copied[1..], c => File.Copy(first, Path.Combine(Folder, c)));
        Assert.Contains("Not read, since sweeps.csv does not list them: floor/x1.csv, floor/x2.csv and 1 more.", Said("all"),
            StringComparison.Ordinal);

        string Said(string folder) => Shell.Run([command, Folder, .. options,
            .. command == "run" ? ["--out", Path.Combine(_scratch.Path, folder)] : Array.Empty<string>()]).Out;
    }

    [Theory]
    [InlineData("plate", "leakage")]
    [InlineData("linearity", "saturation-step")]
    public void WhatCouldNotBeTestedForThemSaysSo(string role, string check)
    {
        Spoil(role);
        string output = Shell.Run("check", Folder, "--keep-going", "--verbose").Out;
        Assert.Matches($@"\({check}\): \d+ {role} files? could not be read \(the file does not say the unit of level\)", output);
        Assert.DoesNotContain($"there are no {role} sweeps", output, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryFileStandsInTheSummaryAndNothingIsTrustworthyThatLeftSomeOut()
    {
        Spoil("covered", 1);
        JsonElement summary = JsonDocument.Parse(Shell.Run("check", Folder, "--keep-going", "--format", "json").Out).RootElement;
        Assert.Equal(1, summary.GetProperty("left_out").GetArrayLength());
        Assert.NotEqual("trustworthy", summary.GetProperty("trust").GetString());
    }

    [Fact]
    public void WhereAllCouldBeReadNothingIsSaid()
    {
        string output = Shell.Run("check", Folder, "--keep-going").Out;
        Assert.DoesNotContain("could not be read", output.Replace("Files that could not be read and were left out", "",
            StringComparison.Ordinal), StringComparison.Ordinal);
    }

    private void Spoil(string role, int most = int.MaxValue)
    {
        foreach (string file in Directory.GetFiles(Path.Combine(Folder, role), "*.csv", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal).Take(most))
        {
            File.WriteAllText(file, File.ReadAllText(file).Replace("level_dbm", "level", StringComparison.Ordinal));
        }
    }
}
