namespace SweepStats.Files.Traces.Tables;

/// <summary>Tells where frequencies do not rise.</summary>
internal static class AxisDoubt
{
    /// <summary>What to do about a number that is no frequency.</summary>
    public const string Remedy = "correct the row or export the sweep again; a frequency is 0 Hz or more";

    // Rows that are sorted may be those of two sweeps, shuffled into one.
    private const string Falls = "export one sweep a file, its frequencies rising or falling throughout";
    private const string Repeated = "export again: each frequency may stand once in a trace. If the rows are those of several "
        + "traces, write the number of its sweep into a column of each row";

    /// <summary>
    /// Network analysers with extenders end at 1.5 THz (common practice, no source); the unit of higher frequencies is wrong.
    /// </summary>
    public const double HighestHertz = 1.5e12;

    /// <summary>The first place; null where they rise throughout.</summary>
    /// <param name="axis">The frequencies.</param>
    /// <param name="file">The file.</param>
    /// <param name="line">The line from 1 of a point.</param>
    public static ReadFault? Of(FrequencyAxis axis, string file, Func<int, int> line)
    {
        if (axis.Fall is not { } at)
        {
            return axis.Hertz[^1] > HighestHertz ? TooHigh(axis.Hertz[^1], file, line(axis.Hertz.Length - 1)) : null;
        }

        (double before, double here) = (axis.Hertz[at - 1], axis.Hertz[at]);
        return here == before
            ? new ReadFault(file, line(at), FormattableString.Invariant($"the frequency {here:R} Hz is repeated"), Repeated)
            : new ReadFault(
                file, line(at), FormattableString.Invariant($"the frequency falls from {before:R} Hz to {here:R} Hz"), Falls);
    }

    private static ReadFault TooHigh(double hertz, string file, int line) => new(
        file, line, FormattableString.Invariant($"the frequency {hertz:R} Hz is above 1.5 THz: is the unit wrong?"),
        "correct the unit of frequency where the file states it, or frequency_unit in campaign.toml where it does not");
}
