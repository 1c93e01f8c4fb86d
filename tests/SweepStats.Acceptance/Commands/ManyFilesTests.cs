using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>
/// What the same is wrong with is said once, with the exact number of files and all that has to be stated for them.
/// </summary>
public sealed class ManyFilesTests : IDisposable
{
    private const int Files = 126;

    private readonly ScratchFolder _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void AMissingUnitIsOneMessageWithTheCountAndThreeFiles()
    {
        Write("frequency_hz,level\n30000000,-40\n40000000,-41\n");
        Assert.Equal(
            $"{Files} files, such as covered/A/A1/c1.csv, covered/A/A1/c2.csv, covered/A/A1/c3.csv: the file does not say the "
            + "unit of level; "
            + "use dBm, dBµV, dBmV, dB, dBµV/m, V, mV, µV, W, mW or linear in the header, or set level_unit under [setup] in "
            + "campaign.toml "
            + "(and impedance_ohm, if voltages are not across 50 Ω)",
            Assert.Single(Errors()));
    }

    [Fact]
    public void AllMissingUnitsAreAskedForAtOnceAndNothingIsAskedForAfterThem()
    {
        Write("frequency,level\n30,-40\n40,-41\n");
        string line = Assert.Single(Errors());
        Assert.StartsWith($"{Files} files, such as ", line, StringComparison.Ordinal);
        Assert.Contains("neither the unit of frequency nor that of level; set both under [setup] in campaign.toml: "
            + "frequency_unit (Hz, kHz, MHz or GHz) and level_unit", line, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(_scratch.Path, "campaign.toml"),
            "[setup]\nfrequency_unit = \"MHz\"\nlevel_unit = \"dBm\"\n");
        Assert.Empty(Errors());
    }

    [Fact]
    public void AUnitThatTheSettingsStateIsNotAskedFor()
    {
        Write("frequency,level\n30,-40\n40,-41\n");
        File.WriteAllText(Path.Combine(_scratch.Path, "campaign.toml"), "[setup]\nlevel_unit = \"dBm\"\n");
        string line = Assert.Single(Errors());
        Assert.Contains("does not say the unit of frequency; ", line, StringComparison.Ordinal);
        Assert.DoesNotContain("level_unit", line, StringComparison.Ordinal);
    }

    [Fact]
    public void ColumnsOfOtherNamesLackTheSameUnit()
    {
        Write("frequency_hz,level\n30000000,-40\n40000000,-41\n");
        _scratch.With("floor/f1.csv", "frequency_hz,noise trace\n30000000,-90\n40000000,-91\n");
        Assert.StartsWith($"{Files} files, such as ", Assert.Single(Errors()), StringComparison.Ordinal);
    }

    [Fact]
    public void OtherFaultsOfOneRemedyAreOneMessageTooAndDifferentOnesAreNot()
    {
        Write("frequency_hz,level_dbm\n30000000,-40\n40000000,NaN\n50000000,-41\n");
        _scratch.With("floor/f1.csv", "");
        string[] lines = Errors();
        Assert.Equal(2, lines.Length);
        Assert.Contains($"{Files - 1} files, such as covered/A/A1/c1.csv:3, covered/A/A1/c2.csv:3, covered/A/A1/c3.csv:3: 'NaN' "
            + "is not a finite number; correct the row", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("floor/f1.csv: the file is empty", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void RowsOfOneListAreCountedToo()
    {
        _scratch.With("sweeps.csv",
            "file,role\n" + string.Concat(Enumerable.Range(1, 30).Select(i => $"reference/r{i}.csv,reference\n")));
        Assert.StartsWith("30 lines, such as sweeps.csv:2, sweeps.csv:3, sweeps.csv:4: reference/r1.csv is not there",
            Errors()[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void AProgramIsGivenEveryFile()
    {
        Write("frequency_hz,level\n30000000,-40\n40000000,-41\n");
        string[] lines = Shell.Run("run", _scratch.Path, "--format", "json", "--out",
            Path.Combine(_scratch.Path, "..", "none")).Error.TrimEnd().Split(Environment.NewLine);
        Assert.Equal(Files, lines.Length);
        Assert.All(lines,
            line => Assert.Contains(".csv: the file does not say the unit of level", line, StringComparison.Ordinal));
    }

    private void Write(string text)
    {
        for (int i = 1; i <= 120; i++)
        {
            _scratch.With($"covered/A/A1/c{i}.csv", text);
        }

        for (int i = 1; i <= 3; i++)
        {
            _scratch.With($"floor/f{i}.csv", text).With($"reference/r{i}.csv", text);
        }
    }

    private string[] Errors() =>
        Shell.Run("check", _scratch.Path).Error.Split(Environment.NewLine, StringSplitOptions.RemoveEmptyEntries);
}
