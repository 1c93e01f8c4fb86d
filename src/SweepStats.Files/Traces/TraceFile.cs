using System.Buffers;
using SweepStats.Files.Traces.Layouts;
using SweepStats.Files.Traces.Mending;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces;

/// <summary>Reads one trace file of any known layout.</summary>
public static class TraceFile
{
    private const int LongestLine = 1 << 20;

    /// <summary>File name extensions that trace files have, in lower case.</summary>
    public static IReadOnlyList<string> Extensions { get; } =
        [".csv", ".txt", ".tsv", ".dat", ".ts", ".s1p", ".s2p", ".s3p", ".s4p"];

    /// <summary>Whether a file's name ends as trace files do, in any case.</summary>
    public static bool HasTraceExtension(string path) => Extensions.Contains(Path.GetExtension(path).ToLowerInvariant());

    /// <summary>
    /// Reads the sweeps of a file. A trace of which no sweep can be made is a fault. Nothing is thrown for bad content.
    /// </summary>
    /// <param name="path">Where it is.</param>
    /// <param name="name">Its name in messages, such as the path within the campaign.</param>
    /// <param name="options">What is known beside its content.</param>
    public static TraceReading Read(string path, string name, TraceReadOptions options) =>
        SweepTraces.Of(name, Look(path, name, options), options);

    /// <summary>What a campaign takes of a file that was looked at: its sweeps, or why it cannot be used.</summary>
    /// <param name="seen">What <see cref="Look(string, string, TraceReadOptions)"/> gave.</param>
    /// <param name="name">The file's name in messages.</param>
    /// <param name="options">What is known beside its content.</param>
    public static TraceReading Taken(TraceReading seen, string name, TraceReadOptions options)
    {
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(options);
        return SweepTraces.Of(name, seen, options);
    }

    /// <summary>
    /// Reads every trace of a file, those included of which no sweep can be made; the doubts are with the trace. Faults are what
    /// kept the file from being read at all.
    /// </summary>
    /// <param name="path">Where it is.</param>
    /// <param name="name">Its name in messages.</param>
    /// <param name="options">What is known beside its content.</param>
    public static TraceReading Look(string path, string name, TraceReadOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var faults = new FaultList(name);
        return FileBytes.Read(path, faults) is { } bytes ? Look(bytes, name, options) : new TraceReading { Faults = faults.All };
    }

    /// <summary>The same for content that is already in memory.</summary>
    /// <param name="content">The bytes of the file.</param>
    /// <param name="name">Its name: the extension tells a Touchstone file.</param>
    /// <param name="options">What is known beside its content.</param>
    public static TraceReading Look(ReadOnlySpan<byte> content, string name, TraceReadOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return content.IsEmpty
            ? TraceReading.Refused(name, null, "the file is empty", "export the sweep again")
            : Look(FileBytes.Of(content), name, options);
    }

    private static TraceReading Look(FileBytes bytes, string name, TraceReadOptions options)
    {
        if (options.Twins?.Read(bytes, name, options) is { } twin)
        {
            ArrayPool<byte>.Shared.Return(bytes.Buffer);
            return twin;
        }

        using var text = new TraceText(name, bytes);
        TraceReading reading = text.HasTooManyLines
            ? TraceReading.Refused(name, TraceText.MostLines + 1, "the file has more than 4 million lines",
                "export fewer sweeps, or sweeps of fewer points, into one file")
            : text.OverlongLine(LongestLine) is { } line
            ? TraceReading.Refused(name, line + 1, "the line is longer than 1 MiB",
                "check that this is a trace file with one row a frequency")
            : OtherUnit.OfLevels(OtherMarks.Best(text, options, t => Read(t, options)), name, options);
        options.Twins?.Keep(text, reading, options);
        return reading with
        {
            Sha256 = text.Sha256,
            Assumptions = text.Assumption is { } assumption && reading.Faults.IsEmpty ? reading.Assumptions.Insert(0, assumption)
                : reading.Assumptions,
        };
    }

    private static TraceReading Read(TraceText text, TraceReadOptions options)
    {
        ITraceLayout layout = TraceLayouts.For(text);
        if (StatedInVain.Refusal(text.File, layout, options) is { } refusal)
        {
            return new TraceReading { Faults = [refusal] };
        }

        TraceReadOptions anyUnit = options with { FrequencyUnit = FrequencyUnit.Megahertz, Grids = new GridMemory() };
        TraceReading reading = UnlikeTraces.Doubted(
            UnstatedUnitFault.Completed(layout.Read(text, options),
                () => SweepTraces.Of(text.File, layout.Read(text, anyUnit), anyUnit)), text.File, options);
        // Tables below each other may hold no column of that name, but a trace.
        return !options.Columns.IsEmpty && (reading.IsStacked || !reading.Faults.IsEmpty)
            && layout.Read(text, options with { Columns = [] }) is { IsStacked: true } all
            ? Asked(all, text.File, options) : reading;
    }

    private static TraceReading Asked(TraceReading all, string file, TraceReadOptions options)
    {
        if (options.PhaseColumn is not null)
        {
            return TraceReading.Refused(file, null,
                $"{options.StatedIn} states phase_column, and this file holds tables below each other",
                "take phase_column away, or put one table into a file");
        }

        if (!all.Faults.IsEmpty)
        {
            return all;
        }

        var faults = new FaultList(file);
        ImmutableArray<Trace> asked = AskedTraces.Pick(all.Traces, options.Columns, faults);
        return faults.Any ? new TraceReading { Faults = faults.All } : all with { Traces = asked };
    }
}
