using SweepStats.Acceptance.Commands;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class UntestedWordingTests
{
    // The demo has plate sweeps, and they show too little: nobody may say that there are none.
    [Fact]
    public void APlateWithTooLittleRangeIsNotSaidToBeMissing()
    {
        string output = Shell.Run("check", Shell.Demo).Out;
        Assert.Contains("Not tested: leakage below the noise of the plate sweeps.", output, StringComparison.Ordinal);
        Assert.DoesNotContain("leakage round the specimen", output.Split('\n')[1], StringComparison.Ordinal);
    }
}
