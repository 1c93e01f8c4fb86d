using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Layouts;

/// <summary>
/// One way in which trace files are laid out. A new one is a new file with this face and a line in <see cref="TraceLayouts"/>.
/// </summary>
internal interface ITraceLayout
{
    /// <summary>
    /// Whether the file is laid out this way, from its name and first lines. At most one layout before the last may say yes.
    /// </summary>
    bool Recognises(TraceText text);

    /// <summary>Reads it. Anything doubtful is a fault, never a guess.</summary>
    TraceReading Read(TraceText text, TraceReadOptions options);
}
