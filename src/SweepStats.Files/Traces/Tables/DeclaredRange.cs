using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Tables;

/// <summary>Holds the rows against what the lines above state of them. Rows are believed, except where both the count and the end say that some are missing.</summary>
internal static class DeclaredRange
{
    /// <summary>Adds what does not agree, as an assumption or as a fault.</summary>
    public static void Check(Preamble preamble, FrequencyAxis axis, (TraceText Text, DataBlock Block, FaultList Faults) file)
    {
        int rows = axis.Hertz.Length;
        bool fewer = preamble.Points is { } least && rows < least;
        bool endsEarly = preamble.Stop is { } end && Hertz(end) is { } last && axis.Hertz[^1] < last * (1 - 1e-6);
        if (fewer && endsEarly && file.Block.LastLine == file.Text.LineCount - 1)
        {
            file.Faults.Add(
                file.Block.LastLine + 1, FormattableString.Invariant($"the file states {preamble.Points} points and ends after {rows}, short of its stop frequency: it was cut off"), "export the sweep again");
            return;
        }

        if (preamble.Points is { } points && points != rows)
        {
            file.Faults.Assume(FormattableString.Invariant($"the file states {points} points and holds {rows}; the rows were believed"));
        }

        Compare("start", preamble.Start, axis.Hertz[0], file.Faults);
        Compare("stop", preamble.Stop, axis.Hertz[^1], file.Faults);
    }

    private static void Compare(string what, StatedNumber? stated, double hertz, FaultList faults)
    {
        if (stated is { } number && Hertz(number) is { } declared && Math.Abs(declared - hertz) > 1e-6 * Math.Max(declared, hertz))
        {
            faults.Assume(FormattableString.Invariant($"the file states a {what} frequency of {declared:R} Hz and the rows {(what == "start" ? "begin" : "end")} at {hertz:R} Hz; the rows were believed"));
        }
    }

    // A number without unit is compared where it can only be Hz.
    private static double? Hertz(StatedNumber number) => number.Hertz() ?? (number.Unit.Length == 0 && number.Value() is >= 1e5 and var hertz ? hertz : null);
}
