using System.Text.RegularExpressions;
using SweepStats.Report;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>Names of charts come from names of specimens, and have to be files on every system that a report is copied to.</summary>
public sealed partial class ReportFileNames
{
    private static readonly string[] Names =
        ["con", "CON", "nul", "aux", "prn", "com1", "lpt9", "A1", "a1", "Ä1", "ä1", "..", ".", "", " ", "a/b", "a\\b", "a:b", "trailing.", "trailing ", "\u202e", "é\u0301", new string('x', 4000), new string('x', 4001), "-", "--png", "~", "$(id)"];

    [Fact]
    public void EachIsAFileOnEverySystemAndNoTwoAreOneWhereCaseIsIgnored()
    {
        var names = new FileNames();
        string[] given = [.. Names.SelectMany(one => Names.Select(other => names.Next("levels", one, other) + ".svg"))];
        Assert.All(given, name => Assert.Matches(Portable(), name));
        Assert.All(given, name => Assert.InRange(name.Length, 1, 120));
        Assert.Equal(given.Length, given.Distinct(StringComparer.OrdinalIgnoreCase).Count());
    }

    // A name that begins with a word of the program's own is none that Windows keeps for devices.
    [GeneratedRegex("^levels-[a-z0-9]+(-[a-z0-9]+)*\\.svg$")]
    private static partial Regex Portable();
}
