using System.Globalization;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>Tells a Touchstone file whose name does not: version 2 by its first keyword, version 1 by its option line.</summary>
internal static class TouchstoneSight
{
    private const int LinesLookedAt = 5000;
    private const int MostPorts = 4;

    /// <summary>Whether the first line that is no comment can only be that of a Touchstone file.</summary>
    public static bool Recognises(TraceText text) =>
        First(text, 0) is { } line && TouchstoneLine.Bare(text.Line(line)) is var bare && (IsVersion(bare) || IsOptionLine(bare));

    /// <summary>The number of ports; null, with the reason among the faults, where nothing tells it.</summary>
    public static int? Ports(TraceText text, FaultList faults)
    {
        int first = First(text, 0)!.Value;
        return IsVersion(TouchstoneLine.Bare(text.Line(first))) ? Stated(text, first, faults) : OfRow(text, first, faults);
    }

    private static bool IsVersion(ReadOnlySpan<byte> bare) =>
        bare[0] == (byte)'[' && TouchstoneKeyword.Parse(bare)?.Name == "version";

    // "# Hz S RI R 50": S, and a unit or a format, and no other word. A remark may begin with the same sign.
    private static bool IsOptionLine(ReadOnlySpan<byte> bare)
    {
        if (bare[0] != (byte)'#' || bare.Length > 200)
        {
            return false;
        }

        string[] words = TouchstoneLine.Words(bare[1..]);
        bool parameter = Array.Exists(words, w => w is "S" or "s");
        bool known =
            Array.Exists(words, w => FrequencyUnits.Parse(w) is not null || w.ToUpperInvariant() is "DB" or "MA" or "RI");
        return parameter && known && TouchstoneOptions.Parse(bare, 1, new FaultList("")) is not null;
    }

    private static int? Stated(TraceText text, int first, FaultList faults)
    {
        for (int i = first; i < Math.Min(text.LineCount, LinesLookedAt); i++)
        {
            ReadOnlySpan<byte> bare = TouchstoneLine.Bare(text.Line(i));
            if (bare.IsEmpty || bare[0] != (byte)'[' || TouchstoneKeyword.Parse(bare) is not { Name: "numberofports" } keyword)
            {
                continue;
            }

            if (keyword.Values is [var word] && int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out int ports)
                && ports is >= 1 and <= MostPorts)
            {
                return ports;
            }

            faults.Add(i + 1, $"[Number of Ports] holds '{TouchstoneValueList.Short(keyword.Values)}'",
                FormattableString.Invariant($"files of 1 to {MostPorts} ports are read"));
            return null;
        }

        faults.Add(null, "the keyword [Number of Ports] is missing", "export the file again; it is cut off or incomplete");
        return null;
    }

    // Rows of one port hold three numbers and those of two ports nine; of more ports a row is broken over lines.
    private static int? OfRow(TraceText text, int optionLine, FaultList faults)
    {
        int? row = First(text, optionLine + 1);
        int numbers = row is { } line ? TouchstoneLine.Numbers(TouchstoneLine.Bare(text.Line(line))) : 0;
        if (numbers is 3 or 9)
        {
            int ports = numbers == 3 ? 1 : 2;
            faults.Assume(FormattableString.Invariant($"the option line is that of a Touchstone file, and {numbers} numbers a ")
                + FormattableString.Invariant($"row are those of {(ports == 1 ? "one port" : "two ports")}"));
            return ports;
        }

        faults.Add((row ?? optionLine) + 1, "the option line is that of a Touchstone file, and the row below does not tell the "
            + "number of ports", "rename the file so that its extension tells it: .s1p, .s2p, .s3p or .s4p");
        return null;
    }

    private static int? First(TraceText text, int from)
    {
        for (int i = from; i < Math.Min(text.LineCount, LinesLookedAt); i++)
        {
            if (!TouchstoneLine.Bare(text.Line(i)).IsEmpty)
            {
                return i;
            }
        }

        return null;
    }
}
