using System.Text.RegularExpressions;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// The detector or the mode that the name of a trace tells, such as "RMS" of "Level RMS (dBm)", kept in the words of the file.
/// </summary>
internal static partial class NamedDetector
{
    /// <summary>Settings with what the name tells where nothing else states it.</summary>
    /// <param name="stated">What is stated otherwise.</param>
    /// <param name="name">The name of the trace or of its table.</param>
    public static ReceiverSettings Beside(ReceiverSettings stated, ColumnName name)
    {
        if (name.Statistic is null)
        {
            return stated;
        }

        string detector = Detector().Match(name.Text).Value;
        string rest = detector.Length == 0 ? name.Text : name.Text.Replace(detector, " ", StringComparison.Ordinal);
        string mode = Mode().Match(rest).Value;
        return stated with
        {
            Detector = stated.Detector ?? (detector.Length == 0 ? null : detector),
            TraceMode = stated.TraceMode ?? (mode.Length == 0 ? null : mode),
        };
    }

    [GeneratedRegex(
        @"(?<!\p{L})(?:quasi[ _-]?peak|qp|(?:max|min|pos(?:itive)?|neg(?:ative)?)[ _-]?(?:peak|pk)|rms|(?:peak|pk)(?![ _-]?hold))"
        + @"(?!\p{L})",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Detector();

    [GeneratedRegex(
        @"(?<!\p{L})(?:(?:max(?:imum)?|min(?:imum)?|peak)[ _-]?hold|maxh|minh|max(?:imum)?|min(?:imum)?|highest|lowest"
        + @"|c?average|avg|c?av|mean|median|mittelwert|moyenne)(?!\p{L})",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Mode();
}
