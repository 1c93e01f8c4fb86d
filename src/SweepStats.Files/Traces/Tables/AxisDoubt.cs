namespace SweepStats.Files.Traces.Tables;

/// <summary>Tells where frequencies do not rise.</summary>
internal static class AxisDoubt
{
    /// <summary>What to do about it.</summary>
    public const string Remedy = "frequencies must rise from row to row; sort the rows or export the sweep again";

    /// <summary>The first place; null where they rise throughout.</summary>
    /// <param name="axis">The frequencies.</param>
    /// <param name="file">The file.</param>
    /// <param name="line">The line from 1 of a point.</param>
    public static ReadFault? Of(FrequencyAxis axis, string file, Func<int, int> line)
    {
        if (axis.Fall is not { } at)
        {
            return null;
        }

        (double before, double here) = (axis.Hertz[at - 1], axis.Hertz[at]);
        string problem = here == before
            ? FormattableString.Invariant($"the frequency {here:R} Hz is repeated")
            : FormattableString.Invariant($"the frequency falls from {before:R} Hz to {here:R} Hz");
        return new ReadFault(file, line(at), problem, Remedy);
    }
}
