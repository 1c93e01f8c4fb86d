using System.Text;
using SweepStats.Files;
using SweepStats.Files.Traces;

namespace SweepStats.Studies.Fuzzing;

/// <summary>What must hold of every reading, whatever the file.</summary>
internal static class FuzzRules
{
    private const int LongestMessage = 2000;

    /// <summary>What is wrong with a reading; null where nothing is.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="content">From this.</param>
    /// <param name="strict">Whether a trace may not have doubts.</param>
    public static string? Broken(TraceReading reading, ReadOnlySpan<byte> content, bool strict)
    {
        if (reading.Faults.IsEmpty == reading.Traces.IsEmpty)
        {
            return reading.Faults.IsEmpty ? "neither traces nor faults" : "both traces and faults";
        }

        int lines = reading.Faults.IsEmpty && reading.Traces.All(t => t.Doubts.IsEmpty) ? 0 : Lines(content);
        foreach (ReadFault fault in reading.Faults.Concat(reading.Traces.SelectMany(t => t.Doubts)))
        {
            if (OfFault(fault, lines) is { } broken)
            {
                return broken;
            }
        }

        return reading.Sha256.Length != 64 ? "no hash"
            : strict && reading.Traces.Any(t => !t.Doubts.IsEmpty) ? "a doubtful trace in a strict reading"
            : reading.Assumptions.Any(string.IsNullOrWhiteSpace) ? "an empty assumption"
            : reading.Assumptions.Any(a => a.Length > LongestMessage) ? "an overlong assumption"
            : reading.Traces.Select(OfTrace).FirstOrDefault(b => b is not null);
    }

    private static string? OfFault(ReadFault fault, int lines) =>
        string.IsNullOrWhiteSpace(fault.Problem) ? "a fault without a problem"
        : string.IsNullOrWhiteSpace(fault.Remedy) ? "a fault without a remedy"
        : fault.Line is < 1 || fault.Line > lines ? $"a fault in a line outside of the file: {fault.Problem}"
        : fault.ToString().Length > LongestMessage ? $"an overlong fault: {fault.Problem[..Math.Min(fault.Problem.Length, 100)]}"
        : null;

    private static string? OfTrace(Trace trace)
    {
        if (trace.Levels.Length != trace.Axis.Hertz.Length || trace.Levels.IsEmpty)
        {
            return "other levels than frequencies";
        }

        return !trace.Doubts.IsEmpty ? null
            : trace.Axis.Grid is null || trace.Axis.Hertz.Any(f => !double.IsFinite(f) || f < 0) ? "frequencies that do not rise"
            : trace.Levels.Any(l => !double.IsFinite(l)) ? "a level that is not finite"
            : trace.Unit >= LevelUnit.Volts && trace.Levels.Any(l => l <= 0) ? "a linear level that is not positive"
            : null;
    }

    // Counted apart from the reader: a line feed, a carriage return and both together end a line. NUL bytes are passed over where
    // they are padding.
    private static int Lines(ReadOnlySpan<byte> content)
    {
        string text = content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) ? Encoding.Unicode.GetString(content)
            : content.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]) ? Encoding.BigEndianUnicode.GetString(content)
            : Encoding.Latin1.GetString(content).Replace("\0", "", StringComparison.Ordinal);
        text = text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        return text.Count(c => c == '\n') + (text.EndsWith('\n') ? 0 : 1);
    }
}
