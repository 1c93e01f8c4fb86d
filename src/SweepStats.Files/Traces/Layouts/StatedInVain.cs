namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// Columns that a person states of a file whose layout has none to choose: to pass over the statement in silence would let it
/// look obeyed.
/// </summary>
internal static class StatedInVain
{
    /// <summary>What is stated in vain; null where the layout is a table, or nothing is stated.</summary>
    /// <param name="file">The file.</param>
    /// <param name="layout">Its layout.</param>
    /// <param name="said">What is stated.</param>
    public static ReadFault? Refusal(string file, ITraceLayout layout, TraceReadOptions said)
    {
        string? key = said.FrequencyColumn is not null ? "frequency_column" : said.PhaseColumn is not null ? "phase_column"
            : said.RealColumn is not null ? "real_column" : null;
        return key is null || layout is DelimitedLayout or SectionLayout ? null : new ReadFault(
            file, null, $"{said.StatedIn} states {key}, and the layout of this file leaves no choice of it",
            $"take {key} away for this file; a level_column is named as 'sweepstats look' lists the traces");
    }
}
