using System.Buffers;
using System.Text.RegularExpressions;

namespace SweepStats.Files.Traces.Preambles;

/// <summary>
/// Settings within running text, such as "floor, taken with RBW 100 kHz and Att 10 dB": an abbreviation that can mean nothing
/// else, and behind it a number with its unit. A number that goes on ("10 kHz to 1 MHz") is none.
/// </summary>
internal static partial class RemarkReader
{
    // Looked for before the pattern is tried: most lines are titles and remarks on other things.
    private static readonly SearchValues<string> Mentioned =
        SearchValues.Create(["BW", "bandwidth", "bandbreite", "ATT", "SWT", "sweep time", "power"],
            StringComparison.OrdinalIgnoreCase);

    // Of another sweep, another device, or of what might be.
    private static readonly SearchValues<string> Elsewhere = SearchValues.Create(
        ["earlier", "previous", "next", "would", "was taken", "better", "cispr rbw", "min rbw", "max rbw", " max", "min ",
            "required", "cable", "antenna", "früher", "nächste", "wäre", "vorige"], StringComparison.OrdinalIgnoreCase);

    /// <summary>What a line says by the way; none where it says nothing.</summary>
    public static IEnumerable<Statement> Read(string line) =>
        line.AsSpan().ContainsAny(Mentioned) && !line.AsSpan().ContainsAny(Elsewhere)
        ? Spoken().Matches(line).Where(m => m.Groups["more"].Length == 0).Select(Said)
        : [];

    private static Statement Said(Match match)
    {
        string key = match.Groups["key"].Value;
        return new Statement(key.ToLowerInvariant(), "", [match.Groups["value"].Value + " " + match.Groups["unit"].Value])
        { Written = key };
    }

    private const string Between = @"\.?\s*(?:[:=]|is|was|of|set to)?\s*(?<value>[-+]?[0-9]{1,9}(?:[.,][0-9]{1,6})?)\s?";

    // Attenuators outside the receiver are not its attenuation.
    [GeneratedRegex(
        @"(?<!\p{L})(?:(?<key>RBW|VBW|IF ?BW|Res\.? ?BW|Vid\.? ?BW|(?:resolution|video|IF) bandwidth|Aufl(?:ö|oe)sebandbreite|"
        + @"Videobandbreite"
        + "|ZF-Bandbreite)" + Between + @"(?<unit>[kMG]?Hz)"
        + @"|(?<key>SWT|sweep time)" + Between + @"(?<unit>ms|µs|us|s)"
        + @"|(?<key>(?:RF |input )att(?:enuation|n)?|(?<!ext(?:ern(?:al|e|er)?)?\.? |fixed |in-?line )att(?!enu)n?)" + Between
            + @"(?<unit>dB)"
        + "|(?<key>(?:input|output|source|port|test port) power)" + Between + @"(?<unit>dBm)"
        + @")(?![\p{L}0-9µ/])(?<more>\s*(?:to|bis|or|oder|and|und|à|-|–|/|\.\.\.?)\s*[-+]?[0-9][0-9.,]*(?!\s*(?:deg|°|"
        + @"[0-9.,])))?",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Spoken();
}
