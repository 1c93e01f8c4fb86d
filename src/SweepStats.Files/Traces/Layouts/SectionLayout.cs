using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Tables;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// Sections with headings in square brackets, a <c>[Trace]</c> for each trace: a line with its name and unit, lines with its
/// range, then rows of level and frequency in either order.
/// </summary>
internal sealed class SectionLayout : ITraceLayout
{
    private static readonly Separator Commas = new((byte)',', (byte)'.');

    /// <inheritdoc/>
    public bool Recognises(TraceText text) => Headings(text).Any();

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        Separator separator = SeparatorSearch.Find(text) ?? Commas;
        using var rows = new NumericRows(text, separator);
        int[] headings = [.. Headings(text)];
        Preamble file = Preamble.Read(text, headings[0]);
        faults.AssumeAll(file.Remarks);
        var sections = new TraceSections(text, rows, separator, new(file, options, faults));
        var traces = ImmutableArray.CreateBuilder<Trace>();
        for (int i = 0; i < headings.Length && !faults.Any; i++)
        {
            traces.AddRange(sections.Read(headings[i], i + 1 < headings.Length ? headings[i + 1] : text.LineCount));
        }

        bool isStacked = (faults.Any ? headings.Length : traces.Count) > 1;
        return TraceReading.Of(traces.ToImmutable(), file.Settings, faults) with { IsStacked = isStacked };
    }

    private static IEnumerable<int> Headings(TraceText text)
    {
        for (int i = 0; i < text.LineCount; i++)
        {
            // Most lines of a file are rows, which begin with a digit: they must cost nothing here.
            ReadOnlySpan<byte> line = text.Line(i);
            if (!line.IsEmpty && line[0] is (byte)'[' or (byte)' ' or (byte)'\t'
                && line.Trim(" \t,;"u8).SequenceEqual("[Trace]"u8))
            {
                yield return i;
            }
        }
    }
}
