using Xunit;

namespace SweepStats.Acceptance.Commands;

/// <summary>What a shell is told that completes words.</summary>
public sealed class CompletionTests
{
    [Theory]
    [InlineData("sweepstats ch", "check", "choose")]
    [InlineData("sweepstats run x --char", "--charts")]
    [InlineData("sweepstats run x --charts s", "summary")]
    public void WhatFitsAtTheCursorIsTold(string line, params string[] fits)
    {
        (int code, string told, string error) = Shell.Run($"[suggest:{line.Length}]", line);
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(fits, told.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    public void EachShellGetsItsOwnLines(string shell)
    {
        (int code, string told, string error) = Shell.Run("completion", shell);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("[suggest:", told, StringComparison.Ordinal);
    }

    [Fact]
    public void AnotherShellIsRefused() => Assert.Equal(2, Shell.Run("completion", "tcsh").Code);
}
