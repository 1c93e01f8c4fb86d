using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>
/// Knows the lists of markers, peaks and limits that stand above or below a trace: far shorter than it, and titled as such.
/// </summary>
internal sealed class MarkerTables(TraceText text, NumericRows rows, NumericRun trace)
{
    private const int MostRows = 60;
    private const int LongestTitle = 200;
    private const int LinesAbove = 3;
    private const int LongestShown = 60;

    private static readonly HashSet<string> Words =
    [
        "marker", "markers", "marken", "mkr", "peak", "peaks", "peaklist", "maxima", "spitze", "spitzen", "spitzenwerte", "pics",
        "crêtes", "marqueur", "marqueurs", "picchi", "marcatori", "picos", "marcadores", "marcador", "limit", "limits",
        "grenzwert", "grenzwerte", "limite", "limites", "límites", "limiti",
    ];

    /// <summary>The line that titles a table as such a list; null for any other table.</summary>
    public string? Title(NumericRun table)
    {
        if (table == trace || table.Rows > MostRows || table.Rows * 2 > trace.Rows)
        {
            return null;
        }

        int first = rows.Line(table, 0);
        int looked = 0;
        for (int i = first - 1; i >= 0 && looked < LinesAbove && !IsRow(i); i--)
        {
            string line = text.Line(i).Length <= LongestTitle ? text.LineText(i).Trim() : "";
            looked += line.Length > 0 ? 1 : 0;
            if (IsTitle(line))
            {
                return new string(
                    [.. (line.Length <= LongestShown ? line : line[..LongestShown] + "…").Where(c => !char.IsControl(c))]);
            }
        }

        return null;
    }

    // "Detector: Peak" and "Trace 2 Peak" tell how a trace was taken.
    private static bool IsTitle(string line)
    {
        string[] words = line.ToLowerInvariant().Split(
            [' ', '\t', ',', ';', ':', '!', '#', '%', '"', '(', ')', '[', ']', '=', '/', '-', '_', '.'],
            StringSplitOptions.RemoveEmptyEntries);
        return words.Any(Words.Contains) && !words.Any(
            w => w.StartsWith("dete", StringComparison.Ordinal) || w.StartsWith("trace", StringComparison.Ordinal)
                || w == "hold");
    }

    private bool IsRow(int line)
    {
        ReadOnlySpan<byte> bare = text.Line(line).TrimStart(" \t\""u8);
        return !bare.IsEmpty && (char.IsAsciiDigit((char)bare[0]) || bare[0] is (byte)'-' or (byte)'+')
            && bare.IndexOfAnyInRange((byte)'A', (byte)'z') < 0;
    }
}
