using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>Reads what stands above the data: the option line, and in version 2 the keywords.</summary>
/// <param name="text">The file.</param>
/// <param name="ports">Number of ports that the file's name tells.</param>
/// <param name="faults">Takes what is wrong.</param>
internal sealed class TouchstoneHeaderReader(TraceText text, int ports, FaultList faults)
{
    private readonly TouchstoneKeywords _keywords = new(ports, faults);
    private TouchstoneOptions? _options;

    /// <summary>The header; null where there are faults.</summary>
    public TouchstoneHeader? Read()
    {
        int end = 0;
        while (end < text.LineCount && !faults.Any && Take(TouchstoneLine.Bare(text.Line(end)), end))
        {
            end++;
        }

        if (!faults.Any && _options is null)
        {
            faults.Add(end < text.LineCount && !_keywords.Any ? end + 1 : null, "the option line is missing",
                TouchstoneOptions.Remedy);
        }

        if (faults.Any || !_keywords.IsComplete())
        {
            return null;
        }

        return _keywords.Any
            ? _keywords.Header(_options!, end + 1)
            : new TouchstoneHeader(ports, _options!, end) { ColumnByColumn = ports == 2 };
    }

    // False at the line that ends the header: [Network Data] in version 2, the first numbers in version 1.
    private bool Take(ReadOnlySpan<byte> bare, int index)
    {
        if (_keywords.InInformation)
        {
            _keywords.Information(bare);
            return true;
        }

        if (bare.IsEmpty)
        {
            return true;
        }

        switch (bare[0])
        {
            case (byte)'#' when _options is null:
                return (_options = TouchstoneOptions.Parse(bare, index + 1, faults)) is not null;
            case (byte)'#':
                faults.Assume(IgnoredOptionLine(index));
                return true;
            case (byte)'[':
                return _keywords.Take(bare, index);
            default:
                return _keywords.Any && _keywords.TakeValues(bare, index);
        }
    }

    /// <summary>What is said of an option line that does not count.</summary>
    public static string IgnoredOptionLine(int index) =>
        FormattableString.Invariant($"line {index + 1} is a second option line; only the first counts");
}
