namespace SweepStats.Files.Traces;

/// <summary>Units that a person states of a file and that the file contradicts: neither is taken for the right one.</summary>
internal static class OtherUnit
{
    /// <summary>The file states another unit of frequency.</summary>
    /// <param name="file">The file.</param>
    /// <param name="found">What it states.</param>
    /// <param name="said">What the person states.</param>
    public static ReadFault OfFrequency(string file, FrequencyUnit found, TraceReadOptions said) => new(
        file, null, $"the file gives frequencies in {found.Symbol()}, and {said.StatedIn} says {said.FrequencyUnit?.Symbol()}",
        "correct frequency_unit, or take it away");

    /// <summary>The reading with a doubt in each trace whose unit the file states otherwise.</summary>
    /// <param name="reading">What was read.</param>
    /// <param name="file">The file.</param>
    /// <param name="said">What the person states.</param>
    public static TraceReading OfLevels(TraceReading reading, string file, TraceReadOptions said)
    {
        return said is not { IsOwnLevelUnit: true, LevelUnit: { } told }
            || reading.Traces.All(t => (t.Unit ?? told) == told) ? reading
            : reading with
            {
                Traces =
                [.. reading.Traces.Select(
                    t => (t.Unit ?? told) == told ? t : t with { Doubts = t.Doubts.Add(Doubt(t, file, said)) })],
            };
    }

    private static ReadFault Doubt(Trace trace, string file, TraceReadOptions said) => new(
        file, null, $"the file gives trace {trace.Column} in {trace.Unit?.Symbol()}, and {said.StatedIn} says "
            + $"{said.LevelUnit?.Symbol()}",
        "correct level_unit, or take it away");
}
