using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>The library that draws PNG is native code; who does not ask for PNG does not run it.</summary>
public sealed class DrawingLibrary
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ItIsLoadedWherePngIsAskedFor(bool png)
    {
        // The loader of glibc writes down what it loads; others do not.
        if (!OperatingSystem.IsLinux() || !File.Exists("/lib64/ld-linux-x86-64.so.2"))
        {
            return;
        }

        using var scratch = new ScratchFolder();
        var environment =
            new Dictionary<string, string> { ["LD_DEBUG"] = "files", ["LD_DEBUG_OUTPUT"] = Path.Combine(scratch.Path, "loaded") };
        string report = Path.Combine(scratch.Path, "report");
        string[] asked = png ? ["--png"] : [];
        using var run =
            new OwnProcess(environment, ["run", Shell.Demo, "--out", report, "--charts", "summary", "--quiet", .. asked]);
        Assert.Equal((0, ""), run.End());
        string loaded = string.Concat(Directory.GetFiles(scratch.Path, "loaded.*").Select(File.ReadAllText));
        Assert.Contains("libclrjit", loaded, StringComparison.Ordinal);
        Assert.Equal(png, loaded.Contains("Skia", StringComparison.OrdinalIgnoreCase));
    }
}
