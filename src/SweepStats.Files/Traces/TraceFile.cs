namespace SweepStats.Files.Traces;

/// <summary>Reads one trace file of any known layout.</summary>
public static class TraceFile
{
    private const int LongestLine = 1 << 20;

    /// <summary>File name extensions that trace files have, in lower case.</summary>
    public static IReadOnlyList<string> Extensions { get; } = [".csv", ".txt", ".tsv", ".dat", ".s1p", ".s2p", ".s3p", ".s4p"];

    /// <summary>Whether a file's name ends as trace files do, in any case.</summary>
    public static bool HasTraceExtension(string path) => Extensions.Contains(Path.GetExtension(path).ToLowerInvariant());

    /// <summary>Reads a file. Whatever is wrong with it is in the faults of the answer; nothing is thrown for bad content.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="name">Its name in messages, such as the path within the campaign.</param>
    /// <param name="options">What is known beside its content.</param>
    public static TraceReading Read(string path, string name, TraceReadOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var faults = new FaultList(name);
        if (FileBytes.Read(path, faults) is not { } bytes)
        {
            return new TraceReading { Faults = faults.All };
        }

        using var text = new TraceText(name, bytes);
        TraceReading reading = text.OverlongLine(LongestLine) is { } line
            ? TraceReading.Refused(name, line + 1, "the line is longer than 1 MiB", "check that this is a trace file with one row a frequency")
            : TraceLayouts.For(text).Read(text, options);
        return reading with
        {
            Sha256 = text.Sha256,
            Assumptions = text.Assumption is { } assumption && reading.Faults.IsEmpty ? reading.Assumptions.Insert(0, assumption) : reading.Assumptions,
        };
    }
}
