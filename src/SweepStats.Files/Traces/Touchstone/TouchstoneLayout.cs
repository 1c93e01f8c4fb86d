using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Layouts;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>
/// Touchstone files of versions 1 and 2 with one to four ports. The number of ports is in the name, .s1p to .s4p, or under any
/// other name in the file itself.
/// </summary>
/// <remarks>Source: the Touchstone file format specification, versions 1.1 and 2.0 (EIA/IBIS, from memory).</remarks>
internal sealed partial class TouchstoneLayout : ITraceLayout
{
    /// <inheritdoc/>
    public bool Recognises(TraceText text) => Extension().IsMatch(text.File) || TouchstoneSight.Recognises(text);

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        if ((Extension().IsMatch(text.File) ? text.File[^2] - '0' : TouchstoneSight.Ports(text, faults)) is { } ports
            && new TouchstoneHeaderReader(text, ports, faults).Read() is { } header
            && Wanted(header, options, faults) is { } wanted)
        {
            if (options is { IsOwnFrequencyUnit: true, FrequencyUnit: { } own } && own != header.Options.FrequencyUnit)
            {
                return new TraceReading { Faults = [OtherUnit.OfFrequency(text.File, header.Options.FrequencyUnit, options)] };
            }

            using var traces = new TouchstoneTraces(text, header, wanted, faults);
            return traces.Read(options);
        }

        return new TraceReading { Faults = faults.All };
    }

    // One for each name in its place, since the rows of a campaign's list go by it; all where none is named; null at a fault.
    private static TouchstoneParameter[]? Wanted(TouchstoneHeader header, TraceReadOptions options, FaultList faults)
    {
        TouchstoneParameter[] all = TouchstoneParameter.All(header);
        if (options.Columns.IsEmpty)
        {
            return all;
        }

        foreach (string name in options.Columns.Where(name => !Array.Exists(all, p => Is(p, name))))
        {
            faults.Add(null, FormattableString.Invariant($"there is no column '{name}' in a file of {header.Ports} ports"),
                $"correct {options.ColumnsStatedIn}: an S parameter such as {all[0].Name}");
        }

        return faults.Any ? null : [.. options.Columns.Select(name => Array.Find(all, p => Is(p, name)))];
    }

    private static bool Is(TouchstoneParameter parameter, string name) =>
        string.Equals(parameter.Name, name.Trim(), StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"\.s[1-4]p$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Extension();
}
