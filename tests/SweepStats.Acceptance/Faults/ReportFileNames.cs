using System.Text.RegularExpressions;
using SweepStats.Acceptance.Commands;
using SweepStats.Acceptance.Files;
using SweepStats.Report;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>
/// Names of charts come from names of specimens, and have to be files on every system that a report is copied to.
/// </summary>
public sealed partial class ReportFileNames
{
    private static readonly string[] Names =
        ["con", "CON", "nul", "aux", "prn", "com1", "lpt9", "A1", "a1", "Ä1", "ä1", "..", ".", "", " ", "a/b", "a\\b", "a:b",
            "trailing.", "trailing ", "\u202e", "é\u0301", new string('x', 4000), new string('x', 4001), "-", "--png",
            "~", "$(id)"];

    [Fact]
    public void EachIsAFileOnEverySystemAndNoTwoAreOneWhereCaseIsIgnored()
    {
        var names = new FileNames();
        string[] given = [.. Names.SelectMany(one => Names.Select(other => names.Next("levels", one, other) + ".svg"))];
        Assert.All(given, name => Assert.Matches(Portable(), name));
        Assert.All(given, name => Assert.InRange(name.Length, 1, 120));
        Assert.Equal(given.Length, given.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    /// <summary>
    /// The whole report of specimens whose names are devices of Windows, one name in two cases, or none that a file can have.
    /// </summary>
    [Fact]
    public void AReportOfAnySpecimensIsOneOnEverySystem()
    {
        using var scratch = new ScratchFolder();
        string[] specimens = ["CON", "con", "nul.txt", "a:b", "a*b?", "ends.", "..", "x/y", "\\\\x\\y", "é", "e\u0301"];
        foreach (string file in (string[])["floor/f1.csv", "floor/f2.csv", "reference/r1.csv", "reference/r2.csv"])
        {
            scratch.With(file, ScratchFolder.Traces.Plain);
        }

        scratch.With("sweeps.csv",
            "file,role,specimen\n" + string.Concat(Directory.GetFiles(scratch.Path, "*.csv", SearchOption.AllDirectories).Order()
                .Select(f => Path.GetRelativePath(scratch.Path, f)).Select(f => $"{f},{f.Split('/')[0]},\n"))
            + string.Concat(specimens.Select((s, i) => $"covered/{i}.csv,covered,\"{s}\"\n")));
        Array.ForEach([.. Enumerable.Range(0, specimens.Length)],
            i => scratch.With($"covered/{i}.csv", ScratchFolder.Traces.Plain.Replace("-4", "-8", StringComparison.Ordinal)));
        string report = Path.Combine(scratch.Path, "report");
        (int code, _, string error) = Shell.Run("run", scratch.Path, "--out", report, "--charts", "all", "--quiet");
        Assert.Equal((0, ""), (code, error));
        string[] paths =
            [.. Directory.GetFiles(report, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(report, f))];
        Assert.True(paths.Length > specimens.Length);
        Assert.All(paths, path => Assert.Matches("^[a-z0-9/._-]+$", path));
        Assert.All(paths, path => Assert.DoesNotMatch(@"(^|/)(con|prn|aux|nul|com\d|lpt\d)(\.|/|$)|[. ](/|$)", path));
        Assert.Equal(paths.Length, paths.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    // A name that begins with a word of the program's own is none that Windows keeps for devices.
    [GeneratedRegex("^levels-[a-z0-9]+(-[a-z0-9]+)*\\.svg$")]
    private static partial Regex Portable();
}
