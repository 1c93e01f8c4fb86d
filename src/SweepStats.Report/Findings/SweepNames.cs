using System.Globalization;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using SweepStats.Sweeps;

namespace SweepStats.Report.Findings;

/// <summary>
/// Names of sweeps as short as a chart needs them: without folder and extension, the middle cut out of long ones, for numbers
/// stand at the end.
/// </summary>
internal static class SweepNames
{
    private const int Longest = 20;
    private const int Tail = 12;
    private const int LongestExtension = 4;

    /// <summary>The name, 20 characters at most, as a chart prints it.</summary>
    public static string Short(Sweep sweep)
    {
        string name = PlainText.Of(sweep.Name).Trim();
        string file = name[(name.LastIndexOf('/') + 1)..];
        int dot = file.LastIndexOf('.');
        bool extension = dot > 0 && file.Length - dot - 1 <= LongestExtension && file[(dot + 1)..].All(char.IsAsciiLetterOrDigit);
        return Frame.Literal(Cut(extension ? file[..dot] : file));
    }

    private static string Cut(string name)
    {
        int[] starts = StringInfo.ParseCombiningCharacters(name);
        return starts.Length <= Longest ? name
            : name[..starts[Longest - Tail - 1]].TrimEnd() + "…" + name[starts[^Tail]..].TrimStart();
    }
}
