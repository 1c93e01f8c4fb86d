using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;
using SweepStats.Files.Traces.Layouts;
using SweepStats.Files.Traces.Preambles;
using SweepStats.Files.Traces.Text;
using SweepStats.Sweeps;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>Touchstone files of version 1.0 and 1.1 with one to four ports. The number of ports is in the name: .s1p to .s4p.</summary>
/// <remarks>Source: the Touchstone file format specification, version 1.1 (EIA/IBIS, from memory).</remarks>
internal sealed partial class TouchstoneLayout : ITraceLayout
{
    /// <inheritdoc/>
    public bool Recognises(TraceText text) => Extension().IsMatch(text.File);

    /// <inheritdoc/>
    public TraceReading Read(TraceText text, TraceReadOptions options)
    {
        var faults = new FaultList(text.File);
        int ports = text.File[^2] - '0';
        List<(string Name, int Row, int Column)> wanted = Wanted(options, ports, faults);
        TouchstoneOptions? format = faults.Any ? null : Options(text, faults);
        if (format is null)
        {
            return new TraceReading { Faults = faults.All };
        }

        using var numbers = new TouchstoneNumbers(text, ports, format, faults);
        FrequencyAxis? grid = numbers.Grid(options.Grids);
        if (grid is null)
        {
            return new TraceReading { Faults = faults.All };
        }

        ReceiverSettings settings = Preamble.Read(text, Math.Min(numbers.FirstLine, text.LineCount)).Settings;
        ImmutableArray<Trace> traces =
        [
            .. wanted.Select(w => new Trace(w.Name, w.Name, LevelUnit.Decibels, grid, ImmutableCollectionsMarshal.AsImmutableArray(numbers.Decibels(w.Name, w.Row, w.Column)))
            { Settings = settings }),
        ];
        return faults.Any
            ? new TraceReading { Faults = faults.All }
            : new TraceReading { Traces = traces, Settings = settings };
    }

    private static List<(string Name, int Row, int Column)> Wanted(TraceReadOptions options, int ports, FaultList faults)
    {
        List<(string, int, int)> wanted = [];
        if (options.Columns.IsEmpty && ports == 1)
        {
            faults.Add(null, "a one-port file holds a reflection, not an attenuation", "use a two-port file, or name S11 in sweeps.csv (column = S11) where the reflection is meant");
            return wanted;
        }

        foreach (string name in options.Columns.IsEmpty ? ["S21"] : options.Columns)
        {
            string upper = name.Trim().ToUpperInvariant();
            if (upper.Length == 3 && upper[0] == 'S' && upper[1] - '0' is >= 1 and var row && row <= ports && upper[2] - '0' is >= 1 and var column && column <= ports)
            {
                wanted.Add((upper, row - 1, column - 1));
            }
            else
            {
                faults.Add(null, FormattableString.Invariant($"there is no column '{name}' in a file of {ports} ports"), "name an S parameter such as S21 in sweeps.csv");
            }
        }

        return wanted;
    }

    private static TouchstoneOptions? Options(TraceText text, FaultList faults)
    {
        for (int i = 0; i < text.LineCount; i++)
        {
            ReadOnlySpan<byte> line = text.Line(i).Trim(" \t"u8);
            if (line.IsEmpty || line[0] == (byte)'!')
            {
                continue;
            }

            if (line[0] == (byte)'[')
            {
                faults.Add(i + 1, "the file is of Touchstone version 2, which cannot be read yet", "export version 1 (.s2p with a '#' line and no keywords in square brackets)");
                return null;
            }

            if (line[0] != (byte)'#')
            {
                faults.Add(i + 1, "the option line is missing", "put a line such as '# MHz S DB R 50' above the data");
                return null;
            }

            return TouchstoneOptions.Parse(line, i + 1, faults);
        }

        faults.Add(null, "the option line is missing", "put a line such as '# MHz S DB R 50' above the data");
        return null;
    }

    [GeneratedRegex(@"\.s[1-4]p$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Extension();
}
