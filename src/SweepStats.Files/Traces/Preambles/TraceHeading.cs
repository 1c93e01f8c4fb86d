using System.Globalization;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// A line such as <c>Trace 2</c> or <c>[Trace 2]</c> alone: what follows, up to a blank line or the next heading, is of that
/// trace.
/// </summary>
internal sealed class TraceHeading
{
    private const int LongestHeading = 24;

    private static readonly HashSet<string> Names =
        ["trace", "trc", "tr", "kurve", "messkurve", "spur", "courbe", "traza", "traccia"];

    /// <summary>Number of the trace whose lines these are; null where they are of none in particular.</summary>
    public int? Trace { get; private set; }

    /// <summary>Looks at the next line.</summary>
    public void Pass(string line)
    {
        ReadOnlySpan<char> bare = line.AsSpan().Trim("!#%*;,: \t\r\"");
        if (bare.IsEmpty || bare[0] == '[')
        {
            Trace = null;
        }

        if (bare.Length is > 0 and <= LongestHeading && Number(bare.Trim("[]: ")) is { } number)
        {
            Trace = number;
        }
    }

    private static int? Number(ReadOnlySpan<char> heading)
    {
        int digits = heading.IndexOfAnyInRange('0', '9');
        return digits > 0 && Names.Contains(PlainLetters.Of(heading[..digits].ToString()))
            && int.TryParse(heading[digits..], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? number : null;
    }
}
