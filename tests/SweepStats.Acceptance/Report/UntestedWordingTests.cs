using SweepStats.Acceptance.Commands;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class UntestedWordingTests
{
    // The demo has plate sweeps: what their noise may hide stands in the intervals, so that nobody may say that it was not
    // tested.
    [Fact]
    public void WhatAPlateMayHideIsNotSaidToBeUntested()
    {
        string output = Shell.Run("check", Shell.Demo).Out;
        Assert.DoesNotContain("Not tested:", output, StringComparison.Ordinal);
        Assert.Contains("the plate shows nothing but noise", Shell.Run("check", Shell.Demo, "--verbose").Out,
            StringComparison.Ordinal);
    }
}
