using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Commands;

public sealed class FailingWordsTests
{
    // A specimen of 40 dB asked for 90: it fails everywhere by 50 dB, and no more range mends that.
    [Fact]
    public void WhatFailsEverywhereIsSaidToAndByHowMuch()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c");
        Assert.Equal(0, Shell.Run("rehearse", folder, "--points", "21", "--requirement", "90").Code);
        string output = Shell.Run("run", folder, "--out", Path.Combine(scratch.Path, "report")).Out;
        Assert.Matches(
            @"The upper limit is below the requirement at 21 of 21 values; there up to (49|50|51)\.\d dB are missing", output);
        Assert.DoesNotContain("under-ranged", output, StringComparison.Ordinal);
    }

    // A mean of decibels is no share of the power that passes.
    [Fact]
    public void AMeanOfDecibelsHasNoPercentage()
    {
        using var scratch = new ScratchFolder();
        string folder = Path.Combine(scratch.Path, "c"), report = Path.Combine(scratch.Path, "report");
        Shell.Run("rehearse", folder, "--points", "21");
        Assert.Equal(0, Shell.Run("run", folder, "--out", report).Code);
        string page = File.ReadAllText(Path.Combine(report, "index.html"));
        string table = page[page.IndexOf("<th scope=\"col\">Nine tenths of the band reach</th>", StringComparison.Ordinal)..];
        string[] cells =
            table[..table.IndexOf("</tr>", table.IndexOf("scope=\"row\"", StringComparison.Ordinal),
                StringComparison.Ordinal)].Split("<td");
        Assert.Equal(2, cells.Count(c => c.Contains("%</td>", StringComparison.Ordinal)));
        Assert.DoesNotContain(cells[4..6], c => c.Contains('%', StringComparison.Ordinal));
    }
}
