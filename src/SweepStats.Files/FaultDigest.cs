using System.Text.RegularExpressions;
using SweepStats.Files.Traces;

namespace SweepStats.Files;

/// <summary>Says once what is wrong with many files in the same way, with their exact number and three of them.</summary>
public static partial class FaultDigest
{
    private const int Examples = 3;

    // Within one file, each of a few lines is worth a message of its own.
    private const int FewLines = 6;

    /// <summary>
    /// One line for faults that the same remedy mends in several files, or in many lines of one; in the order of the first of
    /// each.
    /// </summary>
    /// <param name="faults">All faults.</param>
    public static IEnumerable<string> Of(IEnumerable<ReadFault> faults)
    {
        ArgumentNullException.ThrowIfNull(faults);
        foreach (IGrouping<(string, string), ReadFault> alike in faults.GroupBy(f => (Gist(f), f.Remedy)))
        {
            foreach (string line in Told([.. alike]))
            {
                yield return line;
            }
        }
    }

    /// <summary>What is wrong, without what is a single file's own; the same for all files that lack the same.</summary>
    /// <param name="fault">The fault.</param>
    public static string Common(ReadFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return fault.Unstated == UnstatedUnits.Level ? UnstatedUnitFault.LevelProblem : fault.Problem;
    }

    private static string Gist(ReadFault fault) =>
        Common(fault) is var problem && fault.Unstated != UnstatedUnits.None ? problem
            : OwnToTheFile().Replace(problem.Replace(fault.File, "", StringComparison.Ordinal), "#");

    private static IEnumerable<string> Told(ImmutableArray<ReadFault> alike)
    {
        ReadFault[] files = [.. alike.DistinctBy(f => f.File)];
        if (files.Length == 1 && alike.Length <= FewLines)
        {
            return alike.Select(f => f.ToString());
        }

        ReadFault[] places = files.Length > 1 ? files : [.. alike];
        string first = string.Join(", ", places.Take(Examples).Select(p => p.Place));
        string count = FormattableString.Invariant($"{places.Length} {(files.Length > 1 ? "files" : "lines")}");
        string same = alike.Select(Common).Distinct().Count() == 1 ? "" : " (the first of them; the others are of the kind)";
        return [new ReadFault($"{count}, {(places.Length > Examples ? "such as " : "")}{first}", null, Common(alike[0]) + same,
            alike[0].Remedy).ToString()];
    }

    // Numbers, quoted texts and paths.
    [GeneratedRegex(@"'[^']*'|\S*[/\\]\S*|-?\d+(?:[.,]\d+)*(?:[eE][+-]?\d+)?")]
    private static partial Regex OwnToTheFile();
}
